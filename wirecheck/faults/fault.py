"""The faults: each lead open, earthed, or touching its neighbour; each contact stuck.

Each is an edit of the diagram, or the position a contact is stuck in.  (The list follows those
for single faults of conductors and contacts in ISO 13849-2, annex D; from memory.)
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from typing import Literal, NamedTuple

from wirecheck.circuit.netlist import ElementKey
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import EARTH, Attribute, Diagram, Lead, LeadRole, Terminal
from wirecheck.model.kind import FLAG_SET, SwitchSpec
from wirecheck.model.text import Span

FaultKind = Literal["open", "earthed", "touching", "stuck open", "welded"]


class Fault(NamedTuple):
    """One fault.

    Attributes:
        kind: what is wrong.
        lead: number of the lead; None for a contact.
        touched: the terminals that touch, for a lead at its neighbour.
        contact: the contact; None for a lead.
        name: of the lead or contact, for people.
        span: its place in the text.
    """

    kind: FaultKind
    lead: int | None
    touched: tuple[Terminal, Terminal] | None
    contact: ElementKey | None
    name: str
    span: Span

    def on(self, diagram: Diagram) -> Diagram:
        """The diagram with this fault; a stuck contact changes none."""
        leads = list(diagram.leads)
        if self.touched is not None:
            leads.append(_bridge(diagram, *self.touched))
        elif self.lead is not None:
            found = "broken" if self.kind == "open" else "touches"
            lead = leads[self.lead]
            flag = Attribute(found, FLAG_SET, lead.span)
            leads[self.lead] = lead._replace(given={**lead.given, found: flag})
        else:
            return diagram
        return replace(diagram, leads=tuple(leads))

    @property
    def stuck(self) -> dict[ElementKey, str]:
        """The contact and the position it is stuck in; empty for a lead."""
        if self.contact is None:
            return {}
        return {self.contact: "open" if self.kind == "stuck open" else "closed"}


def faults(nets: Nets) -> Iterator[Fault]:
    """Every single fault of a diagram, lead by lead, then contact by contact."""
    diagram = nets.diagram
    for number, lead in enumerate(diagram.leads):
        if not lead.conducts:
            continue
        name = diagram.lead_name(lead)
        yield Fault("open", number, None, None, name, lead.span)
        if EARTH not in (lead.a, lead.b):
            yield Fault("earthed", number, None, None, name, lead.span)
        for end in (lead.a, lead.b):
            for neighbour in _neighbours(nets, end):
                words = f"{name}, at {diagram.show(end)}, and {diagram.show(neighbour)}"
                yield Fault("touching", number, (end, neighbour), None, words, lead.span)
    for part, elements in nets.elements_of.items():
        for number, element in enumerate(elements):
            if isinstance(element.spec, SwitchSpec):
                key = ElementKey(part, number)
                place = element.part
                several = len(place.structure.switches) > 1
                name = f"{place.name} {element.name}" if several else place.name
                yield Fault("stuck open", None, None, key, name, place.name_span)
                yield Fault("welded", None, None, key, name, place.name_span)


def _neighbours(nets: Nets, end: Terminal) -> Iterator[Terminal]:
    """The next wired terminal of the same device, in the order of the part library."""
    part = nets.diagram.parts.get(end.part)
    if part is None:
        return
    wired = [
        part.terminal(name)
        for name in part.structure.terminals
        if nets.is_wired(part.terminal(name))
    ]
    place = wired.index(end)
    yield from wired[place + 1 : place + 2]


def _bridge(diagram: Diagram, a: Terminal, b: Terminal) -> Lead:
    nowhere = Span(diagram.source, 0, 0)
    runs = 1 + max((lead.run for lead in diagram.leads), default=0)
    return Lead(a, b, nowhere, nowhere, LeadRole.JUMPER, {}, False, nowhere, runs)  # noqa: FBT003
