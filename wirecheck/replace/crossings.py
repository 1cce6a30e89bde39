"""The cross-reference: each lead end that comes off one terminal and goes to another.

A mistake of the old wiring goes with its leads to the new device. Whoever works from the table
would wire it by order; so the end that carries it over is marked with where it belongs.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from wirecheck.circuit.nets import Nets
from wirecheck.circuit.wire_numbers import wire_numbers
from wirecheck.correct.proof import Proof
from wirecheck.language.edit import apply
from wirecheck.language.load import load_text
from wirecheck.model.diagram import Diagram, Lead, Terminal
from wirecheck.model.finding import Finding
from wirecheck.replace.landing import Ends, Landings
from wirecheck.replace.plan import Plan


class Crossing(NamedTuple):
    """One end of a lead that comes off one terminal and goes to another.

    Attributes:
        lead: number of the lead in the diagram as found.
        wire: its wire number on the drawings of the diagram as found.
        colour: "" where none is typed.
        other: where its other end was found.
        off: the terminal it comes off, as found.
        to: the one it goes to, "" if the lead is left over.
        wrong: what is wrong with that, as it was as found; "" if nothing is.
    """

    lead: int
    wire: str
    colour: str
    other: str
    off: str
    to: str
    wrong: str


#: One end of a lead: where both its ends are, and which of them is meant.
_End = tuple[frozenset[Terminal], Terminal]


def crossings(
    nets: Nets, before: Proof, then: Proof, landings: Landings, plan: Plan
) -> Iterator[Crossing]:
    """Every end that comes off a device that goes out, or is moved."""
    found, after, numbers = nets.diagram, then.checked.diagram, wire_numbers(nets)
    touched = {part.key for part in plan.out} | {swap.old.key for swap in plan.request.swaps}
    wrong = _carried_over(before, then)
    for number, (lead, ends) in enumerate(zip(found.leads, landings.ends, strict=True)):
        pairs = zip((lead.a, lead.b), ends or (None, None), (lead.b, lead.a), strict=True)
        for old, new, other in pairs:
            if old.part in touched or new != old:
                yield Crossing(
                    lead=number,
                    wire=numbers[nets.net(old)],
                    colour=colour_of(lead),
                    other=found.show(other),
                    off=found.show(old),
                    to=after.show(new) if new else "",
                    wrong=wrong.get(_end(ends, new), "") if ends and new else "",
                )


def colour_of(lead: Lead) -> str:
    """The colour of a lead as typed, or "" for none."""
    colour = lead.given.get("colour")
    return str(colour.value) if colour else ""


def _end(ends: Ends, end: Terminal) -> _End:
    return frozenset(ends), end


def _carried_over(before: Proof, then: Proof) -> Mapping[_End, str]:
    """What is wrong with a lead end in the new diagram, by the mistakes that it has."""
    diagram = then.checked.diagram
    was = {finding.rule for finding in before.grave}
    wrong: dict[_End, str] = {}
    for finding in then.grave:
        since = "wrong as found" if finding.rule in was else "wrong"
        for end, right in _belongs(diagram, finding).items():
            wrong.setdefault(end, f"{since}, belongs on {diagram.show(right)}")
    for finding in then.grave:
        since = "as found, and part" if finding.rule in was else "part"
        if not {edit.action for edit in finding.edits} & {"move", "add", "set"}:
            for end in _concerned(diagram, finding):
                wrong.setdefault(end, f"{since} of a mistake: read [{finding.rule}]")
    return wrong


def _concerned(diagram: Diagram, finding: Finding) -> Iterator[_End]:
    """The ends of the leads of a finding; where it names none, of those at its terminals."""
    for number, lead in enumerate(diagram.leads):
        ends = lead.a, lead.b
        at_it = not finding.lead_numbers and set(ends) & set(finding.at_terminals)
        if number in finding.lead_numbers or at_it:
            yield from (_end(ends, end) for end in ends)


def _belongs(diagram: Diagram, finding: Finding) -> dict[_End, Terminal]:
    """Where lead ends go by the edits of a finding, if all of them move one."""
    if not finding.edits or any(edit.action != "move" for edit in finding.edits):
        return {}
    source = diagram.source
    mended = load_text(apply(source.text, finding.edits), source.name).diagram
    if len(mended.leads) != len(diagram.leads):
        return {}
    return {
        _end((lead.a, lead.b), old): new
        for lead, right in zip(diagram.leads, mended.leads, strict=True)
        for old, new in ((lead.a, right.a), (lead.b, right.b))
        if old != new
    }
