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
from wirecheck.language.load import load_path
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
    sources: tuple[str, ...] = ()


def grade(submission: Submission, keys: Sequence[Key], rubric: Rubric) -> Result:
    """Read and mark a submission; what cannot be read or marked is told in its record."""
    file, name, stem = submission
    try:
        built = load_path(Path(file))
    except (OSError, ValueError) as error:
        why = getattr(error, "strerror", None) or str(error) or "it failed"
        return Result(
            Record(file, name, stem, "unreadable", f"it cannot be read: {why.lower()}"), None
        )
    problems = problems_told(built.problems)
    had_slips, built = bool(built.problems), read_as_meant(built)
    sources = tuple(source.name for source in built.diagram.sources)
    if not built.diagram.leads:
        reason = "no lead could be read" if built.problems else "no lead is typed"
        record = Record(file, name, stem, "unreadable", reason, problems)
        return Result(record, None, sources)
    if too_large(built.diagram, keys):
        reason = f"it is too large to be an answer: {len(built.diagram.leads):,} leads"
        return Result(Record(file, name, stem, "not marked", reason, problems), None, sources)
    found = marked(keys, built.diagram, rubric, unread=bool(built.problems))
    status: Status = "mended" if had_slips else "marked"
    status = "partly read" if built.problems else status
    record = Record(file, name, stem, status, problems=problems).with_mark(found)
    return Result(record, found, sources)


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
