"""wirecheck: a wiring-diagram checker for 24 V gas-burner controls.

The Python API is plain functions over plain data; the commands use nothing else.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from os import PathLike

    from wirecheck.check.engine import Checked
    from wirecheck.language.build import Built
    from wirecheck.model.diagram import Diagram

__all__ = ["check", "load", "load_text"]


def load(path: str | PathLike[str]) -> Built:
    """Read a ``.wiring`` file and what it includes: its diagram and the problems of its text.

    Raises:
        OSError: the file cannot be read.
    """
    from pathlib import Path

    from wirecheck.language.load import load_path

    return load_path(Path(path))


def load_text(text: str, name: str = "text") -> Built:
    """Read a text as `load` reads a file; ``name`` stands in front of its messages."""
    from wirecheck.language.load import load_text as load_named_text

    return load_named_text(text, name)


def check(diagram: Diagram) -> Checked:
    """Check a diagram by every rule."""
    from wirecheck.check.engine import check as run

    return run(diagram)
