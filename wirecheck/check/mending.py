"""What a change of the wiring mends, found with as little looking as will do.

Most changes that are tried mend nothing, or break something else.  So the rules that objected are
asked one at a time, the one first that objected last, and the first that leaves too little mended
ends it; then those by which other changes broke something.  Only what passes is checked in full.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from typing import NamedTuple

from wirecheck.check.standing_back import COVERING, speaks_for_itself
from wirecheck.check.trials import Trial
from wirecheck.circuit.nets import Nets
from wirecheck.language.derive import with_derived_defaults
from wirecheck.model.diagram import Diagram, Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.facts import Facts
from wirecheck.rules.registry import RULES

#: What tells one finding from another when the wiring has changed.
_Key = tuple[str, str, frozenset[Terminal]]
#: What a check says of a diagram before anything is tried.
Judge = Callable[[Facts], Iterable[Finding]]


class Mend(NamedTuple):
    """A change, and the findings that it mends."""

    trial: Trial
    mended: tuple[Finding, ...]

    @property
    def grave(self) -> int:
        """How many of them are of safety or operation."""
        return sum(map(is_grave, self.mended))


class Mending:
    """Tries changes of one diagram against what was found in it."""

    def __init__(self, diagram: Diagram, findings: Sequence[Finding], judge: Judge) -> None:
        """Sort the grave findings by the rules that raise them.

        Args:
            diagram: what the findings are about.
            findings: all that was found.
            judge: finds what is wrong in a diagram, with the same measure.
        """
        self._diagram = diagram
        self._findings = findings
        self._judge = judge
        self._before = {_key(each) for each in findings}
        self._grave: dict[str, set[_Key]] = {}
        for each in filter(is_grave, findings):
            self._grave.setdefault(each.rule, set()).add(_key(each))
        self._asked = [name for name in self._grave if name in RULES]
        self._broken_by_others: dict[str, None] = {}
        self.grave = sum(map(len, self._grave.values()))

    def mended(self, trial: Trial, more_than: int) -> Mend | None:
        """What a change mends.

        Args:
            trial: the change.
            more_than: so many grave findings mended are too few.

        Returns:
            None if it mends no more than those, or brings a new grave one.
        """
        facts = self._changed(trial)
        if not self._may_mend(facts, more_than) or self._breaks_what_others_did(facts):
            return None
        found = list(self._judge(facts))
        new = [each.rule for each in found if self._is_new(each)]
        if new:
            self._broken_by_others |= dict.fromkeys(filter(speaks_for_itself, new))
            return None
        after = set(map(_key, found))
        mend = Mend(trial, tuple(each for each in self._findings if _key(each) not in after))
        return mend if mend.grave > more_than else None

    def _is_new(self, finding: Finding) -> bool:
        return is_grave(finding) and _key(finding) not in self._before

    def _breaks_what_others_did(self, facts: Facts) -> bool:
        """Whether a rule that other changes broke finds something new, and nothing covers it."""
        if not any(
            self._is_new(each)
            for name in self._broken_by_others
            for each in RULES[name].check(facts)
        ):
            return False
        return not any(True for name in COVERING for _each in RULES[name].check(facts))

    def _changed(self, trial: Trial) -> Facts:
        parts = with_derived_defaults(self._diagram.parts, trial.leads)
        diagram = replace(self._diagram, parts=parts, leads=trial.leads, _shown={})
        return Facts(diagram, Nets(diagram))

    def _may_mend(self, facts: Facts, more_than: int) -> bool:
        """Whether the rules that raised the grave findings leave enough of them out now."""
        left = self.grave
        for name in self._asked:
            raised = {_key(each) for each in RULES[name].check(facts)}
            left -= len(raised & self._grave[name])
            if left <= more_than:
                self._asked.remove(name)
                self._asked.insert(0, name)
                return False
        return True


def is_grave(finding: Finding) -> bool:
    """Whether a finding is one of safety or operation."""
    return finding.breaks > Breaks.WORKMANSHIP


def _key(finding: Finding) -> _Key:
    return finding.rule, finding.fault, frozenset(finding.at_terminals)
