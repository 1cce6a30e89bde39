"""Which lead of a way from the line to the 24 V circuit is the one on a wrong terminal.

The leads of the line are of another size than those of the 24 V circuit in nearly every unit.  So
the way is followed to where the one kind meets the other, and the device there tells by its other
leads which of the two does not belong to it.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.circuit.resistances import lead_size
from wirecheck.model.diagram import Lead, LeadRole, Terminal
from wirecheck.rules.facts import Facts
from wirecheck.rules.sides import Trace


class _Sizes(NamedTuple):
    """Sizes of leads, as typed, by the circuit that has far more of them; ``facts.once(_sizes)``.

    One lead of the other size may be the mistake itself.
    """

    line: frozenset[str]
    low: frozenset[str]


def misplaced(facts: Facts, trace: Trace) -> int | None:
    """The likeliest lead of a way that starts at the line; None where the sizes do not tell it."""
    leads = facts.diagram.leads
    jumpers = [number for number in trace.leads if leads[number].role is LeadRole.JUMPER]
    if len(jumpers) == 1:
        return jumpers[0]
    kinds = [_kind(facts, leads[number]) for number in trace.leads]
    if None in kinds or len(kinds) < 2:
        return None
    if "low" not in kinds:
        return trace.leads[-1]
    first = kinds.index("low")
    if first == 0 or "line" in kinds[first:]:
        return trace.leads[0] if first == 0 else None
    before, after = trace.leads[first - 1], trace.leads[first]
    beside = {_kind(facts, leads[n]) for n in _beside(facts, before, after)}
    return after if "line" in beside and "low" not in beside else before


def _kind(facts: Facts, lead: Lead) -> str | None:
    """What circuit a lead is of by its size: "line", "low", or None."""
    size, sizes = str(lead_size(lead)), facts.once(_sizes)
    if size in sizes.line:
        return "line"
    return "low" if size in sizes.low else None


def _sizes(facts: Facts) -> _Sizes:
    found: dict[str, Counter[str]] = {"line": Counter(), "24V": Counter()}
    for lead in facts.diagram.leads:
        size = lead_size(lead)
        circuits = {_circuit(facts, end) for end in (lead.a, lead.b)} & found.keys()
        if size is not None and len(circuits) == 1:
            found[circuits.pop()][str(size)] += 1
    line, low = found["line"], found["24V"]
    return _Sizes(_mostly(line, low), _mostly(low, line))


def _mostly(here: Counter[str], there: Counter[str]) -> frozenset[str]:
    return frozenset(size for size, count in here.items() if count > 2 * there[size])


def _circuit(facts: Facts, end: Terminal) -> str:
    spec = facts.diagram.spec(end)
    return spec.circuit if spec else ""


def _beside(facts: Facts, before: int, after: int) -> Iterator[int]:
    """The other leads where two leads meet: on their terminals, and behind the contacts there."""
    ends = {*facts.diagram.leads[before][:2]}
    near = {*facts.diagram.leads[after][:2]}
    meet = (ends & near) or {end for end in ends if end.part in {each.part for each in near}}
    parts = {end.part for end in meet}
    at = [
        *meet,
        *(
            other
            for part in parts
            for contact in facts.nets.elements_of.get(part, ())
            if contact.type == "switch" and {contact.a, contact.b} & (meet | near)
            for other in (contact.a, contact.b)
        ),
    ]
    for end in dict.fromkeys(at):
        yield from (n for n in facts.nets.leads_at(end) if n not in (before, after))
