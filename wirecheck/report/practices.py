"""The exercises of one call: a record for each diagram that they were made from."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, NamedTuple

from wirecheck.model.finding import Problem
from wirecheck.report.checks import NOTHING_FOUND, UNUSABLE, counted

if TYPE_CHECKING:
    from wirecheck.practice.exercise import Exercise


class Made(NamedTuple):
    """An exercise and the files that were written for it."""

    exercise: Exercise
    hand_out: tuple[str, ...]
    key: tuple[str, ...]


class PracticeFile(NamedTuple):
    """What was made from one diagram.

    Attributes:
        file: its name as given.
        title: of the diagram; "" where it could not be read.
        problems: what could not be used or written, and wishes that could not be met.
        made: the exercises, in order.
        blank: the files of the blank exercise, if one was asked for.
    """

    file: str
    title: str
    problems: tuple[Problem, ...]
    made: tuple[Made, ...] = ()
    blank: tuple[str, ...] = ()


def exit_code(files: Sequence[PracticeFile]) -> int:
    """2 if something could not be used, made or written, else 0."""
    return UNUSABLE if any(file.problems for file in files) else NOTHING_FOUND


def summary(files: Sequence[PracticeFile]) -> str:
    """The last line of a report."""
    exercises = sum(len(file.made) for file in files)
    blanks = sum(bool(file.blank) for file in files)
    problems = sum(len(file.problems) for file in files)
    words = [counted(exercises, "exercise")]
    if blanks:
        words.append(f"{blanks} to be wired")
    if problems:
        words.append(counted(problems, "problem"))
    return f"{', '.join(words)}. Keep the folder with the key to yourself."
