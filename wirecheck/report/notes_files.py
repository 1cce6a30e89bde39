"""Checked documents of notes: a record a document, and what they come to together."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Final, Literal, NamedTuple

from wirecheck.model.finding import Breaks, Finding, Problem
from wirecheck.notes.build import label_of
from wirecheck.report.baseline import Baseline, hold_against
from wirecheck.report.checks import (
    FINDINGS,
    NOTHING_FOUND,
    OUR_ERROR,
    UNUSABLE,
    CheckedFile,
    counted,
    finding_key,
    found_words,
    tally,
    worst_first,
)

if TYPE_CHECKING:
    from wirecheck.notes.checked import CheckedDiagram, CheckedDocument
    from wirecheck.notes.drawings import Wanted

#: What became of a sheet: ``drawn`` anew, ``current`` as it was; where nothing is written,
#: ``stale`` or ``missing`` say that it is not what the document says now.
State = Literal["drawn", "current", "stale", "missing"]
STALE: Final[tuple[State, ...]] = ("stale", "missing")


class NoteDrawing(NamedTuple):
    """A sheet that a block asks for, the path of its file, and what became of it."""

    wanted: Wanted
    path: str
    state: State


class NoteDiagram(NamedTuple):
    """A diagram of a document, and what is left of its check besides what was known."""

    diagram: CheckedDiagram
    check: CheckedFile

    @property
    def label(self) -> str:
        """It as people look for it."""
        label, variant = label_of(self.diagram.block), self.diagram.variant
        return f"{label}, variant {variant}" if variant is not None else label


class NoteFile(NamedTuple):
    """What was found in one document.

    Attributes:
        file: its name as given.
        problems: what could not be used of it, or written.
        document: the document checked; None where it could not be read at all.
        diagrams: the diagrams in it.
        drawings: the sheets that were drawn or looked at.
    """

    file: str
    problems: tuple[Problem, ...]
    document: CheckedDocument | None
    diagrams: tuple[NoteDiagram, ...] = ()
    drawings: tuple[NoteDrawing, ...] = ()

    @property
    def checks(self) -> list[CheckedFile]:
        """The checks of its diagrams."""
        return [each.check for each in self.diagrams]


def note_file(file: str, document: CheckedDocument) -> NoteFile:
    """The record of a checked document; ``file`` is its name as given."""
    diagrams = tuple(
        NoteDiagram(each, CheckedFile(file, (), each.checked, each.variant, accepted=each.accepted))
        for each in document.diagrams
    )
    return NoteFile(file, document.problems, document, diagrams)


def with_known(file: NoteFile, baseline: Baseline, folder: Path) -> tuple[NoteFile, int]:
    """The record without what a baseline knows, and how much of that is not found any more."""
    held = hold_against(file.checks, baseline, folder)
    diagrams = tuple(
        each._replace(check=check) for each, check in zip(file.diagrams, held.files, strict=True)
    )
    return file._replace(diagrams=diagrams), held.gone


class ToldFinding(NamedTuple):
    """A finding, and every diagram of the document that has it."""

    finding: Finding
    diagrams: tuple[NoteDiagram, ...]


def told_once(diagrams: Iterable[NoteDiagram]) -> tuple[ToldFinding, ...]:
    """Each finding once, with the diagrams that have it, in the order of their first mention.

    Blocks that build on another and variants of a block repeat what that one says already.
    """
    found: dict[tuple[str, str, str, str], tuple[Finding, list[NoteDiagram]]] = {}
    for diagram in diagrams:
        for finding in diagram.check.findings:
            found.setdefault(finding_key(finding), (finding, []))[1].append(diagram)
    return tuple(ToldFinding(finding, tuple(those)) for finding, those in found.values())


class NoteTally(NamedTuple):
    """What one document comes to, in numbers.

    Attributes:
        file: its name as given.
        diagrams: the blocks that are diagrams and their variants.
        leads: in all of them.
        findings: each once, by what they break.
        claims: what the diagrams claim; ``proved``: how much of it was.
        problems: what could not be used.
        accepted: findings that comments accept; ``known`` those of the baseline.
        stale: drawings that are not what the document says now.
        drawn: drawings that were written anew.
        not_checked: what a diagram of it was not checked for, and why.
        read: whether it could be read; ``failed`` whether an error of ours spoiled it.
    """

    file: str
    diagrams: int = 0
    leads: int = 0
    findings: tuple[tuple[Breaks, int], ...] = ()
    claims: int = 0
    proved: int = 0
    problems: int = 0
    accepted: int = 0
    known: int = 0
    stale: int = 0
    drawn: int = 0
    not_checked: tuple[tuple[str, str], ...] = ()
    read: bool = True
    failed: bool = False

    def exit_code(self, fail_on: Breaks) -> int:
        """What the run would end with, were it the only document."""
        if self.failed:
            return OUR_ERROR
        if self.problems:
            return UNUSABLE
        grave = any(count for breaks, count in self.findings if breaks >= fail_on)
        return FINDINGS if grave or self.stale else NOTHING_FOUND

    @property
    def verdict(self) -> str:
        """What came of it in words."""
        if self.failed:
            return "not checked, by an error of ours"
        if not self.read:
            return "not read"
        if not self.diagrams and not self.problems:
            return "no wiring"
        words = [*self.found] or ["nothing else found" if self.set_aside else "nothing found"]
        words += [*self.set_aside, *([self.claims_words] if self.claims else [])]
        words += [f"{counted(self.drawn, 'drawing')} made"] if self.drawn else []
        return ", ".join(words)

    @property
    def set_aside(self) -> list[str]:
        """What of it is accepted or was known, in words."""
        accepted = f"{counted(self.accepted, 'finding')} accepted" if self.accepted else ""
        known = f"{counted(self.known, 'finding')} of the baseline" if self.known else ""
        return [word for word in (accepted, known) if word]

    @property
    def claims_words(self) -> str:
        """How many of the claims hold."""
        if self.proved == self.claims:
            return f"{counted(self.claims, 'claim')} proved"
        return f"{self.proved:,} of {counted(self.claims, 'claim')} proved"

    @property
    def found(self) -> list[str]:
        """What is wrong with it in words."""
        words = (
            found_words(dict(self.findings)),
            counted(self.problems, "problem") if self.problems else "",
            f"{counted(self.stale, 'drawing')} not up to date" if self.stale else "",
        )
        return [word for word in words if word]


def tally_note(file: NoteFile) -> NoteTally:
    """Count what was found in one document."""
    told = tally(file.checks, 0)
    return NoteTally(
        file=file.file,
        diagrams=len(file.diagrams),
        leads=told.leads,
        findings=tuple(told.findings.items()),
        claims=sum(told.claims.values()),
        proved=told.claims.get("proved", 0),
        problems=len(file.problems),
        accepted=told.accepted,
        known=told.known,
        stale=sum(each.state in STALE for each in file.drawings),
        drawn=sum(each.state == "drawn" for each in file.drawings),
        not_checked=tuple(dict.fromkeys(_not_checked(file.checks))),
        read=file.document is not None,
    )


def _not_checked(checks: Iterable[CheckedFile]) -> Iterator[tuple[str, str]]:
    for check in checks:
        for item in check.checked.not_checked if check.checked else ():
            if item.span is None:
                yield item.what, item.reason


def exit_code(tallies: Sequence[NoteTally], fail_on: Breaks = Breaks.WORKMANSHIP) -> int:
    """The worst that a document comes to."""
    return max((each.exit_code(fail_on) for each in tallies), default=NOTHING_FOUND)


def together(tallies: Sequence[NoteTally]) -> NoteTally:
    """The tallies of all documents as one."""
    found: Counter[Breaks] = Counter()
    for each in tallies:
        found.update(dict(each.findings))
    return NoteTally(
        file="",
        diagrams=sum(each.diagrams for each in tallies),
        leads=sum(each.leads for each in tallies),
        findings=tuple((breaks, found[breaks]) for breaks in worst_first()),
        claims=sum(each.claims for each in tallies),
        proved=sum(each.proved for each in tallies),
        problems=sum(each.problems for each in tallies),
        accepted=sum(each.accepted for each in tallies),
        known=sum(each.known for each in tallies),
        stale=sum(each.stale for each in tallies),
        drawn=sum(each.drawn for each in tallies),
    )


def summary(tallies: Sequence[NoteTally], rules: int) -> str:
    """The last line of a report: what was looked at, and what came of it."""
    total = together(tallies)
    counts = {
        "document": len(tallies),
        "diagram": total.diagrams,
        "lead": total.leads,
        "rule": rules,
    }
    looked = f"{', '.join(counted(count, thing) for thing, count in counts.items())} run"
    failed = sum(each.failed for each in tallies)
    spoiled = [f"{counted(failed, 'document')} not checked, by an error of ours"] if failed else []
    found = [*total.found, *spoiled]
    beside = [*total.set_aside, *([total.claims_words] if total.claims else [])]
    if found:
        return f"{looked}: {', '.join([*found, *beside])}"
    nothing = "nothing else was found" if total.set_aside else "none of them found a mistake"
    return (
        f"{looked}: {', '.join([nothing, *beside])}. This makes no unit safe: local codes, "
        "the appliance maker's instructions and licensed people decide"
    )
