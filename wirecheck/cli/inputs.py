"""The files a call names: files as they are, folders with every ``.wiring`` file below, ``-``."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Final, NamedTuple

from wirecheck.model.finding import Problem
from wirecheck.model.nearest import either
from wirecheck.model.text import SourceFile, Span

if TYPE_CHECKING:
    from wirecheck.language.build import Built

SUFFIX = ".wiring"
STANDARD_INPUT = "-"
#: An empty file passes no check: it may be the wrong one, or what was written is lost.
NOTHING_TYPED: Final = "nothing is typed here: no part, no lead"


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


def find_inputs(
    names: Iterable[str], suffixes: Sequence[str] = (SUFFIX,), *, hidden: bool = True
) -> list[Input]:
    """List the files that are meant, each once: files in the order given, a folder's sorted.

    Args:
        names: as typed.
        suffixes: those of the files that are meant in a folder, in small letters.
        hidden: whether folders whose names begin with a dot are entered.
    """
    found: dict[str, Input] = {}
    for name in names:
        path = Path(name)
        meant = _below(path, suffixes, hidden=hidden) if path.is_dir() else [Input(path.as_posix())]
        for each in meant:
            found.setdefault(each.name, each)
    return list(found.values())


def _below(folder: Path, suffixes: Sequence[str], *, hidden: bool) -> Iterator[Input]:
    """Every file that is meant below a folder, and every folder in it that cannot be entered."""
    closed: list[OSError] = []
    files: list[str] = []
    for at, folders, names in os.walk(folder, onerror=closed.append):
        if not hidden:
            folders[:] = [each for each in folders if not each.startswith(".")]
        files += [
            Path(at, name).as_posix() for name in names if name.lower().endswith(tuple(suffixes))
        ]
    yield from (Input(file) for file in sorted(files))
    yield from (Input(Path(error.filename).as_posix(), _reason(error)) for error in closed)
    if not files and not closed:
        yield Input(folder.as_posix(), f"no {either(suffixes)} file is in this folder")


def read_input(given: Input) -> Read:
    """Read an input and build its diagram; what cannot be read becomes a problem."""
    import wirecheck

    try:
        if given.reason or given.name == STANDARD_INPUT:
            built = wirecheck.load_bytes(read_bytes(given), given.name)
        else:
            built = wirecheck.load(given.name)
    except OSError as error:
        return Read(given.name, None, (unreadable(given.name, error),))
    problems = built.problems
    if not problems and not built.reading.says_anything:
        problems = (Problem(NOTHING_TYPED, Span(built.diagram.source, 0, 0)),)
    return Read(given.name, built, problems)


def read_bytes(given: Input) -> bytes:
    """Read an input as it stands.

    Raises:
        OSError: it cannot be read, or it is larger than any diagram.
    """
    from wirecheck.language.read import LARGEST_FILE_BYTES

    if given.reason:
        raise OSError(0, given.reason)
    if given.name != STANDARD_INPUT:
        with Path(given.name).open("rb") as file:
            data = file.read(LARGEST_FILE_BYTES + 1)
    elif sys.stdin is None:
        raise OSError(0, "standard input is closed")
    else:
        data = sys.stdin.buffer.read(LARGEST_FILE_BYTES + 1)
    if len(data) > LARGEST_FILE_BYTES:
        raise OSError(0, f"it has more than {LARGEST_FILE_BYTES / 1e6:.0f} MB")
    return data


def unreadable(name: str, error: OSError) -> Problem:
    """The problem of an input that cannot be read."""
    return problem_of(name, f"cannot be read: {_reason(error)}")


def problem_of(name: str, message: str) -> Problem:
    """A problem that is one of a file as a whole."""
    return Problem(message, Span(SourceFile(name, ""), 0, 0))


def _reason(error: OSError) -> str:
    return (error.strerror or "it failed").lower()
