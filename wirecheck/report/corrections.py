"""What corrections come to: a record a file, the exit code, and sentences for both reports."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from wirecheck.correct.answer import Correction, Tried
from wirecheck.correct.rewrite import Mended
from wirecheck.model.finding import Problem
from wirecheck.report.checks import FINDINGS, NOTHING_FOUND, UNUSABLE, counted
from wirecheck.report.drawings import Drawing

VOCABULARY = (
    "An edit moves one end of a lead, exchanges two, adds a lead, takes one out, or fits or takes "
    "out a link; of terminals that are one conductor, those that suit best stand for the others. "
    "No edit takes out, bypasses or loses a safety, an earth or a burner ground."
)


class CorrectedFile(NamedTuple):
    """What was found for one diagram.

    Attributes:
        file: its name as given.
        title: of the diagram; "" where it could not be read.
        problems: what could not be used of it, or written.
        before_text: as found.
        correction: None where it could not be read at all.
        mended: each answer written out, the likelier mistake first.
        does_before, does_after: what each control does on a call, as found and with the first
            answer.
        written: whether the first answer was written to the file.
        drawings: sheets of the first answer.
    """

    file: str
    title: str
    problems: tuple[Problem, ...]
    before_text: str
    correction: Correction | None
    mended: tuple[Mended, ...] = ()
    does_before: tuple[str, ...] = ()
    does_after: tuple[str, ...] = ()
    written: bool = False
    drawings: tuple[Drawing, ...] = ()


def exit_code(files: Sequence[CorrectedFile]) -> int:
    """2 if something could not be used, else 1 if something was to correct, else 0."""
    if any(file.problems or file.correction is None for file in files):
        return UNUSABLE
    wrong = any(file.correction and not file.correction.nothing_to_do for file in files)
    return FINDINGS if wrong else NOTHING_FOUND


def difference(file: CorrectedFile) -> Iterator[str]:
    """Write how the first answer changes the text, as a unified diff."""
    from difflib import unified_diff

    if file.mended and file.mended[0].text is not None:
        before, after = file.before_text.split("\n"), file.mended[0].text.split("\n")
        yield from unified_diff(before, after, file.file, f"{file.file} (corrected)", lineterm="")


def proved(correction: Correction) -> Iterator[str]:
    """Say what was tried, and what follows."""
    if correction.answers:
        fewest = len(correction.answers[0].changes)
        ways = counted(len(correction.answers), "way")
        yield f"mended with {counted(fewest, 'edit')}: {ways} found to do so"
    else:
        fewest = correction.bound.edits + 1
        yield f"not mended within {counted(correction.bound.edits, 'edit')}"
    for tried in correction.tried:
        if tried.edits < fewest:
            yield _none_mends(tried)
        elif tried.out_of is not None:
            yield f"{tried.number:,} of {tried.out_of:,} single edits tried: those at the findings"
    if not correction.in_time:
        yield f"the {correction.bound.seconds:g} s were over before all was tried"


def _none_mends(tried: Tried) -> str:
    if tried.edits == 1:
        if tried.all:
            return f"no single edit mends it: all {tried.number:,} single edits were tried"
        return f"no single edit was found: {tried.number:,} of {tried.out_of:,} were tried"
    return (
        f"{tried.number:,} ways to make {tried.edits} edits were tried, those that the findings "
        "point to; that no other does it is not proved"
    )


def summary(files: Sequence[CorrectedFile]) -> str:
    """The last line of a report."""
    looked = [file.correction for file in files if file.correction]
    right = sum(each.nothing_to_do for each in looked)
    mends = sum(bool(each.answers) for each in looked)
    words = [f"{counted(len(looked), 'diagram')} looked at"]
    words += [f"{right} with nothing to correct"] if right else []
    words += [f"{mends} with a correction"] if mends else []
    left = len(looked) - right - mends
    words += [f"{left} not mended"] if left else []
    problems = sum(len(file.problems) for file in files)
    words += [counted(problems, "problem")] if problems else []
    return (
        f"{', '.join(words)}. A correction that holds here does not make the unit safe: local "
        "codes, the appliance maker's instructions and licensed people decide"
    )
