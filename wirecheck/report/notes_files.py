"""Checked documents of notes: a record a document, and what they come to together."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from typing import TYPE_CHECKING, Final, Literal, NamedTuple

from wirecheck.model.finding import Breaks, Finding, Problem
from wirecheck.report.checks import (
    FINDINGS,
    NOTHING_FOUND,
    OUR_ERROR,
    UNUSABLE,
    counted,
    found_words,
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


class NoteFile(NamedTuple):
    """What was found in one document.

    Attributes:
        file: its name as given.
        problems: what could not be used of it, or written.
        document: the document checked; None where it could not be read at all.
        drawings: the sheets that were drawn or looked at.
    """

    file: str
    problems: tuple[Problem, ...]
    document: CheckedDocument | None
    drawings: tuple[NoteDrawing, ...] = ()

    @property
    def diagrams(self) -> tuple[CheckedDiagram, ...]:
        """The diagrams in it."""
        return self.document.diagrams if self.document else ()


class ToldFinding(NamedTuple):
    """A finding, and every diagram of the document that has it."""

    finding: Finding
    diagrams: tuple[CheckedDiagram, ...]


def told_once(diagrams: Iterable[CheckedDiagram]) -> tuple[ToldFinding, ...]:
    """Each finding once, with the diagrams that have it, in the order of their first mention.

    Blocks that build on another and variants of a block repeat what that one says already.
    """
    found: dict[tuple[str, str, str, str], tuple[Finding, list[CheckedDiagram]]] = {}
    for diagram in diagrams:
        for finding in diagram.checked.findings:
            key = (finding.rule, finding.fault, str(finding.span), finding.message)
            found.setdefault(key, (finding, []))[1].append(diagram)
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
    stale: int = 0
    drawn: int = 0
    not_checked: tuple[tuple[str, str], ...] = ()
    read: bool = True
    failed: bool = False

    @property
    def exit_code(self) -> int:
        """What the run would end with, were it the only document."""
        if self.failed:
            return OUR_ERROR
        if self.problems:
            return UNUSABLE
        found = self.stale or any(count for _breaks, count in self.findings)
        return FINDINGS if found else NOTHING_FOUND

    @property
    def verdict(self) -> str:
        """What came of it in words."""
        if self.failed:
            return "not checked, by an error of ours"
        if not self.read:
            return "not read"
        if not self.diagrams and not self.problems:
            return "no wiring"
        words = [*self.found] or ["nothing found"]
        words += [self.claims_words] if self.claims else []
        words += [f"{counted(self.drawn, 'drawing')} made"] if self.drawn else []
        return ", ".join(words)

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
    found = Counter(told.finding.breaks for told in told_once(file.diagrams))
    claims = [answer for each in file.diagrams for answer in each.checked.claims]
    return NoteTally(
        file=file.file,
        diagrams=len(file.diagrams),
        leads=sum(len(each.checked.diagram.leads) for each in file.diagrams),
        findings=tuple((breaks, found[breaks]) for breaks in worst_first()),
        claims=len(claims),
        proved=sum(each.verdict == "proved" for each in claims),
        problems=len(file.problems),
        stale=sum(each.state in STALE for each in file.drawings),
        drawn=sum(each.state == "drawn" for each in file.drawings),
        not_checked=tuple(dict.fromkeys(_not_checked(file.diagrams))),
        read=file.document is not None,
    )


def _not_checked(diagrams: Iterable[CheckedDiagram]) -> Iterator[tuple[str, str]]:
    for diagram in diagrams:
        for item in diagram.checked.not_checked:
            if item.span is None:
                yield item.what, item.reason


def exit_code(tallies: Sequence[NoteTally]) -> int:
    """The worst that a document comes to."""
    return max((each.exit_code for each in tallies), default=NOTHING_FOUND)


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
    claims = [total.claims_words] if total.claims else []
    if found:
        return f"{looked}: {', '.join([*found, *claims])}"
    proved = f", and {claims[0]}" if claims else ""
    return (
        f"{looked}: none of them found a mistake{proved}. This makes no unit safe: local codes, "
        "the appliance maker's instructions and licensed people decide"
    )
