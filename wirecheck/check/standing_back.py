"""Rules that know of each other: a finding stands back where another one explains it.

A rule names the rules whose finding at the same device is the cause of its own; one about anything
speaks only where no other rule does; and one that covers speaks for all that is found at its leads
and terminals.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.model.diagram import EARTH, Diagram, Terminal
from wirecheck.model.finding import Finding
from wirecheck.rules.registry import RULES

#: What findings can share: a lead by its number, a terminal, or a part by its key.
_Place = int | Terminal | str

#: Rules whose findings cover those of others.
COVERING: Final = tuple(name for name, each in RULES.items() if each.rule.covers)


def speaks_for_itself(name: str) -> bool:
    """Whether a rule stands back for no other; what it finds is told if nothing covers it."""
    rule = RULES[name].rule
    return not (rule.general or rule.stands_back_for)


def at_their_cause(diagram: Diagram, findings: list[Finding]) -> Iterator[Finding]:
    """Leave out findings that another one at the same lead, terminal or device explains."""
    left = list(_not_covered(findings))
    leads = diagram.leads
    parts_of: dict[str, set[str]] = {}
    said: set[_Place] = set()
    for finding in left:
        parts_of.setdefault(finding.rule, set()).update(_parts(finding))
        if not RULES[finding.rule].rule.general:
            said |= _places(finding)
            said.update(end.part for n in finding.lead_numbers for end in leads[n][:2])
    for finding in left:
        rule = RULES[finding.rule].rule
        names: set[_Place] = {*finding.lead_numbers} or {*_places(finding), *_parts(finding)}
        beside = (_parts(finding) & parts_of.get(other, set()) for other in rule.stands_back_for)
        if not (rule.general and said & names) and not any(beside):
            yield finding


def _not_covered(findings: list[Finding]) -> Iterator[Finding]:
    """Leave out what follows from a finding that covers its leads and terminals.

    One that is general as well covers several findings, and stands back for one alone.
    """
    others: dict[_Place, set[int]] = {}
    for number, finding in enumerate(findings):
        if not RULES[finding.rule].rule.covers:
            for place in _places(finding):
                others.setdefault(place, set()).add(number)
    covered: set[int] = set()
    for finding in findings:
        rule = RULES[finding.rule].rule
        if rule.covers:
            explained = set[int]().union(*(others.get(place, ()) for place in _places(finding)))
            if len(explained) > 1 or not rule.general:
                covered |= explained
    return (finding for number, finding in enumerate(findings) if number not in covered)


def _places(finding: Finding) -> set[_Place]:
    """The leads and terminals a finding names; earth is everywhere and says nothing."""
    places: set[_Place] = {*finding.lead_numbers, *finding.at_terminals}
    return places - {EARTH}


def _parts(finding: Finding) -> set[str]:
    return {terminal.part for terminal in finding.at_terminals}
