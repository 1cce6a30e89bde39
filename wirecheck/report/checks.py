"""The checks of one run: a record a diagram, and what they come to together."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Mapping, Sequence
from types import MappingProxyType
from typing import TYPE_CHECKING, NamedTuple

from wirecheck.model.finding import Breaks, Finding, Problem

if TYPE_CHECKING:
    from wirecheck.check.accepts import Accepted
    from wirecheck.check.engine import Checked
    from wirecheck.correct.certain import Step

#: How a run ends (and what the process returns).
NOTHING_FOUND, FINDINGS, UNUSABLE, OUR_ERROR = 0, 1, 2, 3


class CheckedFile(NamedTuple):
    """What a check says about one file, or about one variant in it.

    Attributes:
        file: its name as given.
        problems: what could not be used of it.
        checked: the result; None where the file could not be read at all.
        variant: name of the variant; None for the base diagram.
        fixed: what was mended in the file, before it was checked as it is now.
        accepted: findings that a comment in the file accepts; they are not among the result's.
        known: findings that a baseline has already; nor are they.
    """

    file: str
    problems: tuple[Problem, ...]
    checked: Checked | None
    variant: str | None = None
    fixed: tuple[Step, ...] = ()
    accepted: tuple[Accepted, ...] = ()
    known: tuple[Finding, ...] = ()

    @property
    def findings(self) -> tuple[Finding, ...]:
        """What was found, without what is accepted and what was known."""
        return self.checked.findings if self.checked else ()

    @property
    def leads(self) -> int:
        """How many leads were checked."""
        return len(self.checked.diagram.leads) if self.checked else 0


class Tally(NamedTuple):
    """What the checks of a run come to.

    Attributes:
        files: that were checked.
        leads: in all diagrams; ``rules`` that looked at each.
        findings: by what they break, each once though variants of a file share it.
        problems: what could not be used.
        variants: of diagrams in the files.
        claims: how many, by their verdict.
        accepted: findings that a comment accepts; ``known`` those of the baseline.
    """

    files: int
    leads: int
    rules: int
    findings: dict[Breaks, int]
    problems: int
    variants: int = 0
    claims: Mapping[str, int] = MappingProxyType({})
    accepted: int = 0
    known: int = 0

    def exit_code(self, fail_on: Breaks = Breaks.WORKMANSHIP) -> int:
        """2 if something could not be used, else 1 if something so grave was found, else 0."""
        if self.problems:
            return UNUSABLE
        grave = any(count for breaks, count in self.findings.items() if breaks >= fail_on)
        return FINDINGS if grave else NOTHING_FOUND

    def sentence(self) -> str:
        """The last line of a report: what was looked at, and what came of it."""
        looked = self._looked()
        found = found_words(self.findings)
        if self.problems:
            left_out = f"{counted(self.problems, 'problem')} in the text left something unchecked"
            return f"{looked}: {'; '.join(filter(None, [found, left_out]))}"
        if found:
            return f"{looked}: {found}"
        if self.accepted or self.known:
            return f"{looked}: nothing else was found. {_NO_CERTIFICATE}"
        return f"{looked}: none of them found a mistake. {_NO_CERTIFICATE}"

    def _looked(self) -> str:
        claims = sum(self.claims.values())
        proved = self.claims.get("proved", 0)
        words = (
            counted(self.files, "file") if self.files > 1 else "",
            counted(self.variants, "variant") if self.variants else "",
            counted(self.leads, "lead"),
            f"{counted(self.rules, 'rule')} run",
            f"{proved} of {counted(claims, 'claim')} proved" if claims else "",
            f"{counted(self.accepted, 'finding')} accepted" if self.accepted else "",
            f"{counted(self.known, 'finding')} of the baseline" if self.known else "",
        )
        return ", ".join(filter(None, words))


_NO_CERTIFICATE = (
    "This does not make the unit safe: local codes, the appliance maker's instructions and "
    "licensed people decide"
)


def tally(files: Sequence[CheckedFile], rules: int) -> Tally:
    """Add up the checks of a run; ``rules`` is how many rules looked at each diagram."""
    found = Counter(each.breaks for each in _once((f, f.findings) for f in files))
    claims: Counter[str] = Counter(
        answer.verdict for file in files if file.checked for answer in file.checked.claims
    )
    accepted = ((file, [each.finding for each in file.accepted]) for file in files)
    return Tally(
        files=len({file.file for file in files}),
        variants=sum(file.variant is not None for file in files),
        leads=sum(file.leads for file in files),
        rules=rules,
        findings={breaks: found[breaks] for breaks in worst_first()},
        problems=sum(len(file.problems) for file in files),
        claims=dict(claims),
        accepted=len(_once(accepted)),
        known=len(_once((file, file.known) for file in files)),
    )


#: What tells one finding of a file from another, in whichever of its variants.
_Key = tuple[str, str, str, str]


def finding_key(finding: Finding) -> _Key:
    """What tells a finding from the others of its file."""
    return finding.rule, finding.fault, str(finding.span), finding.message


def _once(found: Iterable[tuple[CheckedFile, Iterable[Finding]]]) -> list[Finding]:
    """Each finding once, though several variants of its file have it."""
    unique = {(file.file, finding_key(each)): each for file, those in found for each in those}
    return list(unique.values())


def worst_first() -> list[Breaks]:
    """What a mistake can break, the worst first."""
    return sorted(Breaks, reverse=True)


def found_words(found: dict[Breaks, int]) -> str:
    """``1 safety finding, 2 operation findings``; "" where there are none."""
    return ", ".join(
        counted(count, f"{breaks} finding") for breaks, count in found.items() if count
    )


def counted(count: int, thing: str) -> str:
    """``1 lead``, ``2 leads``."""
    return f"{count:,} {thing}{'' if count == 1 else 's'}"


def unique(texts: Iterable[str]) -> list[str]:
    """Each text once, in the order of its first appearance."""
    return list(dict.fromkeys(texts))
