"""The language's front door: a file or a text in, a diagram and its problems out."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from wirecheck.language.build import Built, build
from wirecheck.language.read import read_bytes, read_path, read_text


def load_path(path: Path) -> Built:
    """Read a file and what it includes.

    Raises:
        OSError: the file itself cannot be read.
    """
    with _collector_paused():
        return build(read_path(path))


def load_text(text: str, name: str) -> Built:
    """Read a text; ``name`` stands in front of its messages."""
    with _collector_paused():
        return build(read_text(text, name))


def load_bytes(data: bytes, name: str) -> Built:
    """Read the bytes of a file that lies nowhere, such as standard input."""
    with _collector_paused():
        return build(read_bytes(data, name))


@contextmanager
def _collector_paused() -> Iterator[None]:
    """Reading makes a great many objects that stay, and no rings of them to be collected."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()
