"""What was troubleshot in one call: a record a file, and what they come to together."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, NamedTuple

from wirecheck.model.finding import Breaks, Finding, Problem
from wirecheck.report.checks import FINDINGS, NOTHING_FOUND, UNUSABLE, counted

if TYPE_CHECKING:
    from wirecheck.troubleshoot.chart import Step
    from wirecheck.troubleshoot.diagnosis import Diagnosis
    from wirecheck.troubleshoot.dictionary import Dictionary


class TroubleshootFile(NamedTuple):
    """The diagnosis of one file.

    Attributes:
        file: its name as given.
        problems: what could not be used of it, or of what was said to be seen.
        dictionary: its faults and readings; None where there is no diagnosis.
        diagnosis: what is known of it.
        findings: mistakes of the drawing itself.
        chart: the whole decision tree from there, if it was asked for.
        drawings: paths of the sheets that were drawn.
    """

    file: str
    problems: tuple[Problem, ...]
    dictionary: Dictionary | None = None
    diagnosis: Diagnosis | None = None
    findings: tuple[Finding, ...] = ()
    chart: Step | None = None
    drawings: tuple[str, ...] = ()

    @property
    def mistakes(self) -> tuple[Finding, ...]:
        """The mistakes of the drawing that matter: they come before any fault."""
        return tuple(each for each in self.findings if each.breaks > Breaks.WORKMANSHIP)

    @property
    def has_fault(self) -> bool:
        """Whether something is to be mended, or looked for: not where all is as it should be."""
        if self.diagnosis is None:
            return False
        groups, advice = self.diagnosis.groups, self.diagnosis.advice
        modes = {fault.mode for suspect in groups[0].suspects for fault in suspect.faults}
        return advice is not None or modes != {"as-drawn"} or bool(self.mistakes)


def exit_code(files: Sequence[TroubleshootFile]) -> int:
    """2 if something could not be used, else 1 if something may be broken, else 0."""
    if any(file.problems for file in files):
        return UNUSABLE
    return FINDINGS if any(file.has_fault for file in files) else NOTHING_FOUND


def summary(files: Sequence[TroubleshootFile]) -> str:
    """The last line of a report."""
    diagnoses = sum(file.diagnosis is not None for file in files)
    words = "1 diagnosis" if diagnoses == 1 else f"{diagnoses} diagnoses"
    problems = sum(len(file.problems) for file in files)
    if problems:
        words += f", {counted(problems, 'problem')}"
    return f"{words}. A unit that runs again is not thereby safe."
