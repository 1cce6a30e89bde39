"""The files a call names: files as they are, folders with every ``.wiring`` file below, ``-``."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

from wirecheck.model.finding import Problem
from wirecheck.model.text import SourceFile, Span

if TYPE_CHECKING:
    from wirecheck.language.build import Built

SUFFIX = ".wiring"
STANDARD_INPUT = "-"


class Input(NamedTuple):
    """One file to read, by its name as given; ``reason`` says why it cannot be read, if known."""

    name: str
    reason: str = ""

    @property
    def stem(self) -> str:
        """Its bare name, for files made from it."""
        return "stdin" if self.name == STANDARD_INPUT else Path(self.name).stem


class Read(NamedTuple):
    """What was read of an input: its diagram, unless it could not be read at all."""

    name: str
    built: Built | None
    problems: tuple[Problem, ...]


def find_inputs(names: Iterable[str]) -> list[Input]:
    """List the files that are meant, each once: files in the order given, a folder's sorted."""
    found: dict[str, Input] = {}
    for name in names:
        path = Path(name)
        for each in _below(path) if path.is_dir() else [Input(path.as_posix())]:
            found.setdefault(each.name, each)
    return list(found.values())


def _below(folder: Path) -> Iterator[Input]:
    """Every wiring file below a folder, and every folder in it that cannot be entered."""
    closed: list[OSError] = []
    files = sorted(
        Path(at, name).as_posix()
        for at, _folders, names in os.walk(folder, onerror=closed.append)
        for name in names
        if name.endswith(SUFFIX)
    )
    yield from (Input(file) for file in files)
    yield from (Input(Path(error.filename).as_posix(), _reason(error)) for error in closed)
    if not files and not closed:
        yield Input(folder.as_posix(), f"no {SUFFIX} file is in this folder")


def read_input(given: Input) -> Read:
    """Read an input and build its diagram; what cannot be read becomes a problem."""
    import wirecheck

    try:
        if given.reason:
            return _unreadable(given.name, given.reason)
        if given.name == STANDARD_INPUT:
            built = wirecheck.load_bytes(_standard_input(), STANDARD_INPUT)
        else:
            built = wirecheck.load(given.name)
    except OSError as error:
        return _unreadable(given.name, _reason(error))
    return Read(given.name, built, built.problems)


def _standard_input() -> bytes:
    if sys.stdin is None:
        raise OSError(0, "standard input is closed")
    return sys.stdin.buffer.read()


def _unreadable(name: str, reason: str) -> Read:
    place = Span(SourceFile(name, ""), 0, 0)
    return Read(name, None, (Problem(f"cannot be read: {reason}", place),))


def _reason(error: OSError) -> str:
    return (error.strerror or "it failed").lower()
