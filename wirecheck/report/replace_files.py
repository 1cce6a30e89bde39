"""What a replacement comes to: its record, the exit code, and sentences for both reports."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, NamedTuple

from wirecheck.model.finding import Problem
from wirecheck.report.checks import FINDINGS, NOTHING_FOUND, UNUSABLE

if TYPE_CHECKING:
    from wirecheck.replace.replacement import Replacement


class ReplaceFile(NamedTuple):
    """The replacement in one file.

    Attributes:
        file: its name as given.
        title: of the diagram; "" where it could not be read.
        problems: what could not be used of the files, or written.
        refused: why the request cannot be met; empty if it can.
        replacement: None where it was refused or a file could not be read.
        does_before, does_after: what each control does on a call.
        written: where the new diagram was written, "" if nowhere.
        drawings: paths of the sheets.
    """

    file: str
    title: str
    problems: tuple[Problem, ...]
    refused: tuple[str, ...]
    replacement: Replacement | None
    does_before: tuple[str, ...] = ()
    does_after: tuple[str, ...] = ()
    written: str = ""
    drawings: tuple[str, ...] = ()


def exit_code(file: ReplaceFile) -> int:
    """2 if it was refused or something was not usable, 1 if the result has mistakes, else 0."""
    done = file.replacement
    if file.problems or file.refused or done is None or done.problems:
        return UNUSABLE
    if any(each.problems for each in done.variants):
        return UNUSABLE
    return NOTHING_FOUND if done.holds else FINDINGS


def difference(file: ReplaceFile) -> Iterator[str]:
    """Write how the text changes, as a unified diff."""
    from difflib import unified_diff

    done = file.replacement
    if done is not None:
        before, after = done.found.source.text.split("\n"), done.text.split("\n")
        yield from unified_diff(before, after, file.file, f"{file.file} (replaced)", lineterm="")


def verdict(file: ReplaceFile) -> str:
    """The last line of a report."""
    done = file.replacement
    if file.refused:
        return "refused: nothing was replaced"
    if done is None:
        return "nothing was replaced"
    safe = (
        "This does not make the unit safe: local codes, the makers' instructions and licensed"
        " people decide"
    )
    if done.problems or any(each.problems for each in done.variants):
        return "the new diagram cannot be read in full: nothing was written"
    if done.holds:
        return f"no rule finds a mistake of safety or operation in the new diagram. {safe}"
    proofs = (done.proof, *(each.proof for each in done.variants))
    left = sum(len(each.grave) or len(each.trouble) for each in proofs)
    if not left:
        return "the new diagram does not do all that its text claims: see which claim is mended"
    there = "mistakes" if left > 1 else "mistake"
    return f"{left} {there} of safety or operation in the new diagram: mend before it is used"
