"""The meter sheets of one call: a record a file, and what they come to together."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, NamedTuple

from wirecheck.model.finding import Problem
from wirecheck.report.checks import FINDINGS, NOTHING_FOUND, UNUSABLE, counted

if TYPE_CHECKING:
    from wirecheck.meter.reading import MeterSheet


class MeterFile(NamedTuple):
    """The meter sheet of one file.

    Attributes:
        file: its name as given.
        problems: what could not be used of it, or written.
        sheet: its sheet; None where the file could not be read at all.
        pictures: paths of the pages that were drawn.
        variant: name of the variant; None for the base diagram.
    """

    file: str
    problems: tuple[Problem, ...]
    sheet: MeterSheet | None
    pictures: tuple[str, ...] = ()
    variant: str | None = None

    @property
    def readings(self) -> int:
        """How many readings it has."""
        return len(self.sheet.readings) if self.sheet else 0


def exit_code(files: Sequence[MeterFile]) -> int:
    """2 if something could not be used, else 1 if a unit is not good as drawn, else 0."""
    if any(file.problems for file in files):
        return UNUSABLE
    good = all(file.sheet.is_good for file in files if file.sheet)
    return NOTHING_FOUND if good else FINDINGS


def summary(files: Sequence[MeterFile]) -> str:
    """The last line of a report."""
    sheets = sum(file.sheet is not None for file in files)
    readings = counted(sum(file.readings for file in files), "reading")
    words = [f"{counted(sheets, 'meter sheet')}, {readings}"]
    problems = sum(len(file.problems) for file in files)
    if problems:
        words.append(counted(problems, "problem"))
    return f"{', '.join(words)}. A unit that reads right is not thereby safe."
