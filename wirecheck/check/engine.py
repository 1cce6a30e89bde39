"""Runs the rules over a diagram: findings, what was assumed, what was not checked."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from wirecheck.check.assumed import assumptions
from wirecheck.circuit.nets import Nets
from wirecheck.model.collector import collector_paused
from wirecheck.model.diagram import EARTH, UNKNOWN_END, Diagram, Terminal
from wirecheck.model.finding import Assumed, Finding, NotChecked
from wirecheck.properties.unexplained import unexplained
from wirecheck.rules.electrical.unstated import unstated
from wirecheck.rules.facts import Facts
from wirecheck.rules.registry import RULES

#: What findings can share: a lead by its number, a terminal, or a part by its key.
_Place = int | Terminal | str


class Checked(NamedTuple):
    """What a check of one diagram says.

    Attributes:
        diagram: what was checked.
        nets: its nets, for whoever draws or simulates it next.
        findings: in the order of the text, worst first at one place.
        assumed: what was taken as given because the text does not say it.
        not_checked: what was not looked at, with the reason.
    """

    diagram: Diagram
    nets: Nets
    findings: tuple[Finding, ...]
    assumed: tuple[Assumed, ...]
    not_checked: tuple[NotChecked, ...]


@collector_paused()
def check(diagram: Diagram) -> Checked:
    """Check a diagram by every rule, and by what must hold in every position of its switches."""
    nets = Nets(diagram)
    facts = Facts(diagram, nets)
    raised = [finding for rule in RULES.values() for finding in rule.check(facts)]
    beyond = unexplained(nets, facts.conduction, raised)
    return Checked(
        diagram,
        nets,
        _in_order(diagram, (*_at_their_cause(diagram, raised), *beyond.findings)),
        tuple(assumptions(diagram)),
        (*_not_checked(facts), *beyond.not_checked),
    )


def _at_their_cause(diagram: Diagram, findings: list[Finding]) -> Iterator[Finding]:
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


def _in_order(diagram: Diagram, findings: Iterable[Finding]) -> tuple[Finding, ...]:
    order = {source: number for number, source in enumerate(diagram.sources)}
    unique = {(f.rule, f.fault, f.span, f.message): f for f in findings}
    return tuple(
        sorted(
            unique.values(),
            key=lambda f: (order[f.span.source], f.span.start, -f.breaks, f.rule, f.message),
        )
    )


def _not_checked(facts: Facts) -> Iterator[NotChecked]:
    diagram = facts.diagram
    for item in diagram.not_evaluated:
        yield NotChecked(item.statement, item.reason, item.span)
    for lead in diagram.leads:
        if UNKNOWN_END in (lead.a.part, lead.b.part):
            where = diagram.show(lead.a if lead.b.part == UNKNOWN_END else lead.b)
            reason = f"the lead at {where} is not traced: what is missing there is not judged"
            yield NotChecked("untraced lead", reason, lead.span)
    yield from unstated(facts)
    yield NotChecked(
        "the ignition sequence", "a check runs no call for heat: wirecheck sequence shows one"
    )
