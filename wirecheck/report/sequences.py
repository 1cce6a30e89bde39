"""The runs of one call: a record a file, and what they come to together."""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

from wirecheck.model.finding import Problem
from wirecheck.report.checks import FINDINGS, NOTHING_FOUND, UNUSABLE, counted
from wirecheck.sequence.dangers import Danger
from wirecheck.sequence.run import Run


class SequenceFile(NamedTuple):
    """What a call for heat does at one diagram.

    Attributes:
        file: its name as given.
        problems: what could not be used of it, or written.
        works: looked at for whether it works; None where the file could not be read at all.
        endangers: looked at for danger.
        picture: path of the timeline that was drawn, or None.
        variant: name of the variant; None for the base diagram.
    """

    file: str
    problems: tuple[Problem, ...]
    works: Run | None
    endangers: Run | None
    picture: str | None = None
    variant: str | None = None

    @property
    def dangers(self) -> tuple[Danger, ...]:
        """What is dangerous in either run."""
        return (*(self.works.dangers if self.works else ()), *self.only_looked_for())

    def only_looked_for(self) -> tuple[Danger, ...]:
        """What is dangerous only if metal conducts and coils act that may not."""
        known = {danger.sentence for danger in self.works.dangers} if self.works else set()
        found = self.endangers.dangers if self.endangers else ()
        return tuple(danger for danger in found if danger.sentence not in known)


def exit_code(files: Sequence[SequenceFile]) -> int:
    """2 if something could not be used, else 1 if something dangerous was seen, else 0."""
    if any(file.problems for file in files):
        return UNUSABLE
    return FINDINGS if any(file.dangers for file in files) else NOTHING_FOUND


def summary(files: Sequence[SequenceFile]) -> str:
    """The last line of a report."""
    dangers = sum(len(file.dangers) for file in files)
    problems = sum(len(file.problems) for file in files)
    seen = counted(dangers, "danger") if dangers else "no danger"
    run = sum(file.works is not None for file in files)
    words = [f"{counted(run, 'diagram')} run: {seen} seen"]
    if problems:
        words.append(counted(problems, "problem"))
    return f"{', '.join(words)}. What a run does not show is not thereby safe."
