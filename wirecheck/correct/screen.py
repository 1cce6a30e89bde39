"""Sees quickly that a changed diagram still has a mistake, before it is checked in full.

The rules that objected are asked first, the quickest of them before the others, and the first
objection ends it.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from time import perf_counter

from wirecheck.check.standing_back import at_their_cause
from wirecheck.correct.rewired import Rewired
from wirecheck.model.finding import Breaks, Finding
from wirecheck.properties.registry import PROPERTIES, look_at_all
from wirecheck.properties.unit import Whole
from wirecheck.rules.facts import Facts
from wirecheck.rules.registry import RULES


def is_grave(finding: Finding) -> bool:
    """Whether a finding is one of safety or operation."""
    return finding.breaks >= Breaks.OPERATION


class Screen:
    """Judges the children of one diagram by what was found in it."""

    def __init__(self, state: Rewired, found: Iterable[Finding]) -> None:
        """Remember which rules objected; of the others those that speak of anything are not asked.

        Args:
            state: the diagram.
            found: the grave findings of its rules, or of its properties where no rule objects.
        """
        names = dict.fromkeys(finding.rule for finding in found)
        self._raised = sorted((name for name in names if name in RULES), key=_seconds(state))
        self._looks = any(name in PROPERTIES for name in names)
        others = (name for name in RULES if name not in names and not RULES[name].rule.general)
        self._rest = sorted(others, key=_is_electrical)

    def objections(self, state: Rewired) -> int:
        """How many grave findings those that objected still raise."""
        facts = Facts(state.diagram, state.nets)
        count = sum(is_grave(each) for name in self._raised for each in RULES[name].check(facts))
        return count + (_broken(facts) if self._looks else 0)

    def passes(self, state: Rewired) -> bool:
        """Whether neither they nor any other rule that speaks for itself object."""
        facts = Facts(state.diagram, state.nets)
        if _objects(facts, self._raised) or (self._looks and _broken(facts)):
            return False
        return not _objects(facts, self._rest)


def objected(state: Rewired) -> tuple[Finding, ...]:
    """The grave findings of every rule, also those that a check leaves out for another's sake."""
    facts = Facts(state.diagram, state.nets)
    return tuple(each for rule in RULES.values() for each in rule.check(facts) if is_grave(each))


def told(state: Rewired) -> bool:
    """Whether a check would tell of a grave finding of some rule: most answers fail here."""
    facts = Facts(state.diagram, state.nets)
    found = [finding for rule in RULES.values() for finding in rule.check(facts)]
    return any(map(is_grave, at_their_cause(state.diagram, found)))


def _objects(facts: Facts, names: Iterable[str]) -> bool:
    return any(is_grave(each) for name in names for each in RULES[name].check(facts))


def _broken(facts: Facts) -> int:
    """How many properties are broken."""
    return sum(len(each.broken) for each in look_at_all(Whole(facts.nets, facts.conduction)))


def _seconds(state: Rewired) -> Callable[[str], float]:
    """How long a rule takes to look at a diagram of which nothing is known yet."""

    def measured(name: str) -> float:
        facts = Facts(state.diagram, state.nets)
        started = perf_counter()
        _objects(facts, [name])
        return perf_counter() - started

    return measured


def _is_electrical(name: str) -> bool:
    """Those that solve the circuit are asked last."""
    return RULES[name].rule.family == "electrical"
