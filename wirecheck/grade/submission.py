"""One submission from its file to its mark, whatever the file holds."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Sequence
from pathlib import Path, PurePath
from typing import NamedTuple

from wirecheck.grade.key import Key
from wirecheck.grade.marked import Marked
from wirecheck.grade.marking import marked
from wirecheck.grade.record import Record, Status, problems_told
from wirecheck.grade.rubric import Rubric
from wirecheck.grade.slips import read_as_meant
from wirecheck.language.load import load_bytes
from wirecheck.language.read import LARGEST_FILE_BYTES
from wirecheck.model.diagram import Diagram

#: A drawing with so many times the leads and parts of the largest key, and no fewer than so many,
#: is no answer to the exercise.
TIMES_THE_KEY, AT_LEAST = 20, 400


#: Names of files that a batch writes besides those of submissions.
_TAKEN = frozenset({"gradebook", "grades", "summary"})


class Submission(NamedTuple):
    """A file to be marked.

    Attributes:
        file: its name as given.
        name: of the apprentice.
        stem: the beginning of the names of files made for it.
    """

    file: str
    name: str
    stem: str


class Result(NamedTuple):
    """What became of a submission; ``marked`` is None where it has no mark."""

    record: Record
    marked: Marked | None


def read(submission: Submission) -> bytes:
    """Read a submission as it stands.

    Raises:
        OSError: it cannot be read, is no plain file, or is larger than any drawing.
    """
    path = Path(submission.file)
    if path.exists() and not path.is_file():
        raise OSError(0, "it is no plain file")
    with path.open("rb") as file:
        data = file.read(LARGEST_FILE_BYTES + 1)
    if len(data) > LARGEST_FILE_BYTES:
        raise OSError(0, f"it has more than {LARGEST_FILE_BYTES / 1e6:.0f} MB")
    return data


def unreadable(submission: Submission, error: OSError | ValueError) -> Record:
    """The record of a submission that cannot be read at all."""
    why = getattr(error, "strerror", None) or str(error) or "it failed"
    return Record(*submission, "unreadable", f"it cannot be read: {why.lower()}")


def grade(submission: Submission, data: bytes, keys: Sequence[Key], rubric: Rubric) -> Result:
    """Mark a submission; what cannot be read or marked is told in its record.

    It stands alone: nothing that it includes is read, be it a neighbour's drawing or the key.

    Args:
        submission: whose it is.
        data: what `read` gave.
        keys: what it is marked against.
        rubric: how much each circuit weighs.
    """
    built = load_bytes(data, submission.file)
    problems = problems_told(built.problems)
    had_slips, built = bool(built.problems), read_as_meant(built)
    if not built.diagram.leads:
        reason = "no lead could be read" if built.problems else "no lead is typed"
        return Result(Record(*submission, "unreadable", reason, problems), None)
    if too_large(built.diagram, keys):
        reason = f"it is too large to be an answer: {len(built.diagram.leads):,} leads"
        return Result(Record(*submission, "not marked", reason, problems), None)
    found = marked(keys, built.diagram, rubric, unread=bool(built.problems))
    status: Status = "mended" if had_slips else "marked"
    status = "partly read" if built.problems else status
    return Result(Record(*submission, status, problems=problems).with_mark(found), found)


def too_large(diagram: Diagram, keys: Sequence[Key]) -> bool:
    """Whether a drawing is so large that it cannot be meant as an answer."""
    most = max(_size(key.diagram) for key in keys)
    return _size(diagram) > max(AT_LEAST, TIMES_THE_KEY * most)


def _size(diagram: Diagram) -> int:
    return len(diagram.leads) + len(diagram.parts)


def submissions(files: Sequence[str], name_of: Callable[[str], str]) -> list[Submission]:
    """Files to be marked, each with its apprentice and a stem of its own for what is made of it.

    Args:
        files: their names, each once.
        name_of: gives the apprentice of a file.
    """
    counted: Counter[str] = Counter()
    found = []
    for file in files:
        path = PurePath(file)
        plain = re.sub(r"[^\w-]+", "-", path.stem, flags=re.ASCII).strip("-")[:60] or "submission"
        stem = plain if plain.lower() not in _TAKEN else f"{plain}-submission"
        counted[stem.lower()] += 1
        number = counted[stem.lower()]
        found.append(Submission(file, name_of(file), stem if number == 1 else f"{stem}~{number}"))
    return found
