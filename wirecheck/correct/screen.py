"""Sees quickly that a changed diagram still has a mistake, before it is checked in full.

The rules that objected are asked first, and the first objection ends it.
"""

from __future__ import annotations

from collections.abc import Iterable

from wirecheck.correct.rewired import Rewired
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.facts import Facts
from wirecheck.rules.registry import RULES


def is_grave(finding: Finding) -> bool:
    """Whether a finding is one of safety or operation."""
    return finding.breaks >= Breaks.OPERATION


class Screen:
    """Judges the children of one diagram by what was found in it."""

    def __init__(self, grave: Iterable[Finding]) -> None:
        """Remember which rules objected; those that speak of anything are asked last."""
        # What a property found no rule has raised: the full check sees whether it is left.
        raised = dict.fromkeys(finding.rule for finding in grave if finding.rule in RULES)
        self._raised = sorted(raised, key=_cost)
        others = (name for name in RULES if name not in raised and not RULES[name].rule.general)
        self._rest = sorted(others, key=_cost)

    def objections(self, state: Rewired) -> int:
        """How many grave findings the rules that objected still raise."""
        facts = Facts(state.diagram, state.nets)
        return sum(is_grave(each) for name in self._raised for each in RULES[name].check(facts))

    def passes(self, state: Rewired) -> bool:
        """Whether neither they nor any other rule that speaks for itself object."""
        facts = Facts(state.diagram, state.nets)
        names = (*self._raised, *self._rest)
        return not any(is_grave(each) for name in names for each in RULES[name].check(facts))


def objected(state: Rewired) -> tuple[Finding, ...]:
    """The grave findings of every rule, also those that a check leaves out for another's sake."""
    facts = Facts(state.diagram, state.nets)
    return tuple(each for rule in RULES.values() for each in rule.check(facts) if is_grave(each))


def _cost(name: str) -> tuple[bool, bool]:
    """Which rules are asked late: those that solve the circuit, and the general ones."""
    rule = RULES[name].rule
    return rule.family == "electrical", rule.general
