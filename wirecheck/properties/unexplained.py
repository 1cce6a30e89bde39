"""Broken properties as findings, where no rule has said what the matter is.

A rule names a mistake and its mend; a property only shows what a unit can be brought to do.  So a
finding of a rule that touches the same parts stands for it, and of several properties that one
lead breaks the worst speaks.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from wirecheck.circuit.conduction import Conduction
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding, NotChecked
from wirecheck.model.text import Span
from wirecheck.properties.culprits import culprits
from wirecheck.properties.property import Broken
from wirecheck.properties.registry import Looked, look, look_at_all
from wirecheck.properties.states import States
from wirecheck.properties.unit import Whole
from wirecheck.properties.witness import carrying, offending, standing, unusual

#: So many leads of a way are named in a message.
MOST_NAMED = 4


class Unexplained(NamedTuple):
    """What the properties add to the findings of the rules, and what they did not go through."""

    findings: tuple[Finding, ...]
    not_checked: tuple[NotChecked, ...]


def unexplained(nets: Nets, conduction: Conduction, found: Iterable[Finding]) -> Unexplained:
    """Look at every unit, and tell what is broken that no finding explains.

    Args:
        nets: of the diagram.
        conduction: of those nets.
        found: what the rules found.
    """
    whole = Whole(nets, conduction)
    touched = _touched(whole, found)
    findings: dict[Span, Finding] = {}
    bounds: list[NotChecked] = []
    units = list(whole.units())
    ahead = bool((touched & whole.diagram.parts.keys()).difference(*(u.parts for u in units)))
    for unit in units:
        looked = look(whole, unit)
        for finding in _of_unit(looked, touched, ahead=ahead):
            findings.setdefault(finding.span, finding)
        bounds += [NotChecked("every position of the switches", each) for each in looked.bounded]
    return Unexplained(tuple(findings.values()), tuple(bounds))


def by_itself(nets: Nets, conduction: Conduction, name: str) -> tuple[Finding, ...]:
    """What one property says of a diagram, whatever else is found."""
    looked_at = look_at_all(Whole(nets, conduction))
    return tuple(
        finding
        for looked in looked_at
        for finding in _of_unit(looked, set())
        if finding.rule == name
    )


def _touched(whole: Whole, found: Iterable[Finding]) -> set[str]:
    """The parts that findings of safety and operation are about."""
    leads = whole.diagram.leads
    touched: set[str] = set()
    at: set[Span] = set()
    for finding in found:
        if finding.breaks >= Breaks.OPERATION:
            touched.update(terminal.part for terminal in finding.at_terminals)
            touched.update(end.part for n in finding.lead_numbers for end in leads[n][:2])
            if not (finding.at_terminals or finding.lead_numbers):
                at.add(finding.span)
    if at:
        parts = whole.diagram.parts.values()
        touched.update(p.key for p in parts if any(_within(span, p.span) for span in at))
    return touched


def _within(inner: Span, outer: Span) -> bool:
    return inner.source is outer.source and outer.start <= inner.start < outer.end


def _of_unit(looked: Looked, touched: set[str], *, ahead: bool = False) -> Iterator[Finding]:
    """What is broken in a unit that no finding explains.

    Args:
        looked: the unit.
        touched: the parts that findings are about.
        ahead: whether some of them belong to no unit: what feeds all may keep any from lighting.
    """
    for broken in looked.broken:
        if ahead and broken.property.breaks < Breaks.SAFETY:
            continue
        states = looked.states
        leads = _leads(states, broken)
        if not touched & _about(states, broken, leads):
            yield _finding(states, broken, leads)


def _leads(states: States, broken: Broken) -> tuple[int, ...]:
    """The leads that carry what must not be; none where something is missing instead."""
    if broken.property.breaks < Breaks.SAFETY:
        return ()
    return carrying(states, broken)


def _about(states: States, broken: Broken, leads: tuple[int, ...]) -> set[str]:
    """The parts a broken property is about, and those its current runs through."""
    if broken.property.breaks < Breaks.SAFETY:
        whole = states.whole
        return set(whole.diagram.parts if whole.is_one_burner else states.unit.parts)
    diagram = states.whole.diagram
    ends = (end.part for number in leads for end in diagram.leads[number][:2])
    return {
        *broken.about,
        *(key.part for key in broken.loads),
        *(terminal.part for terminal in broken.terminals),
        *(part for part in ends if part in diagram.parts),
    }


def _finding(states: States, broken: Broken, leads: tuple[int, ...]) -> Finding:
    diagram, record = states.whole.diagram, broken.property
    worst = culprits(states, broken, leads) if leads else []
    number = worst[0] if worst else offending(states, broken, leads)
    shown = worst or unusual(states, broken, leads) or _with_first(leads, number)
    terminals = broken.terminals or tuple(
        end
        for key in broken.loads
        for element in (states.whole.element(key),)
        for end in (element.a, element.b)
    )
    return Finding(
        rule=record.name,
        fault="broken",
        breaks=record.breaks,
        also_breaks=(),
        message=_message(states, broken, shown),
        span=_span(states, broken, number),
        seen_at_unit=record.why,
        leads=tuple(diagram.lead_name(diagram.leads[n]) for n in leads),
        lead_numbers=leads,
        terminals=tuple(diagram.show(each) for each in terminals),
        at_terminals=terminals,
        caution=record.caution,
        source=record.source,
    )


def _with_first(leads: tuple[int, ...], first: int | None) -> list[int]:
    return sorted(leads, key=lambda number: number != first)


def _message(states: States, broken: Broken, leads: Sequence[int]) -> str:
    diagram = states.whole.diagram
    message = f"{broken.what} ({standing(states, broken)})"
    if not leads:
        return message
    names = [diagram.lead_name(diagram.leads[number]) for number in leads]
    more = len(names) - MOST_NAMED
    over = ", ".join(names[:MOST_NAMED]) + (f" and {more} more" if more > 0 else "")
    which = "it" if len(names) == 1 else "them"
    return f"{message}: the current runs over {over}; look at {which} for what lands wrong"


def _span(states: States, broken: Broken, number: int | None) -> Span:
    diagram = states.whole.diagram
    if number is not None:
        return diagram.leads[number].span
    for part in (*broken.about, *(key.part for key in broken.loads), *_parts(broken.terminals)):
        return diagram.parts[part].name_span
    return Span(diagram.source, 0, 0)


def _parts(terminals: tuple[Terminal, ...]) -> Iterator[str]:
    return (terminal.part for terminal in terminals)
