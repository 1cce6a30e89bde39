"""The language's front door: a file or a text in, a diagram and its problems out."""

from __future__ import annotations

from pathlib import Path

from wirecheck.language.build import Built, build
from wirecheck.language.read import read_bytes, read_path, read_text
from wirecheck.model.collector import collector_paused


def load_path(path: Path) -> Built:
    """Read a file and what it includes.

    Raises:
        OSError: the file itself cannot be read.
    """
    with collector_paused():
        return build(read_path(path))


def load_text(text: str, name: str) -> Built:
    """Read a text; ``name`` stands in front of its messages."""
    with collector_paused():
        return build(read_text(text, name))


def load_bytes(data: bytes, name: str) -> Built:
    """Read the bytes of a file that lies nowhere, such as standard input."""
    with collector_paused():
        return build(read_bytes(data, name))
