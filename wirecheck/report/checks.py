"""The checks of one run: a record a diagram, and what they come to together."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING, NamedTuple

from wirecheck.model.finding import Breaks, Problem

if TYPE_CHECKING:
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
    """

    file: str
    problems: tuple[Problem, ...]
    checked: Checked | None
    variant: str | None = None
    fixed: tuple[Step, ...] = ()

    @property
    def leads(self) -> int:
        """How many leads were checked."""
        return len(self.checked.diagram.leads) if self.checked else 0


class Tally(NamedTuple):
    """What the checks of a run come to."""

    files: int
    leads: int
    rules: int
    findings: dict[Breaks, int]
    problems: int

    @property
    def exit_code(self) -> int:
        """2 if something could not be used, else 1 if something was found, else 0."""
        if self.problems:
            return UNUSABLE
        return FINDINGS if any(self.findings.values()) else NOTHING_FOUND

    def sentence(self) -> str:
        """The last line of a report: what was looked at, and what came of it."""
        looked = f"{counted(self.leads, 'lead')}, {counted(self.rules, 'rule')} run"
        if self.files > 1:
            looked = f"{counted(self.files, 'file')}, {looked}"
        found = found_words(self.findings)
        if self.problems:
            left_out = f"{counted(self.problems, 'problem')} in the text left something unchecked"
            return f"{looked}: {'; '.join(filter(None, [found, left_out]))}"
        if found:
            return f"{looked}: {found}"
        return (
            f"{looked}: none of them found a mistake. This does not make the unit safe: local "
            "codes, the appliance maker's instructions and licensed people decide"
        )


def tally(files: Sequence[CheckedFile], rules: int) -> Tally:
    """Add up the checks of a run; ``rules`` is how many rules looked at each diagram."""
    found = Counter(
        finding.breaks for file in files if file.checked for finding in file.checked.findings
    )
    return Tally(
        files=len(files),
        leads=sum(file.leads for file in files),
        rules=rules,
        findings={breaks: found[breaks] for breaks in worst_first()},
        problems=sum(len(file.problems) for file in files),
    )


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
