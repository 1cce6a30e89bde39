"""What a fault alters: leads, attributes of parts, gas, power; as data, so that two add up."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Literal

from wirecheck.model.diagram import Attribute, Diagram, Lead, LeadRole, Terminal, Value
from wirecheck.model.text import Span


@dataclass(frozen=True, slots=True)
class Alteration:
    """What differs from the diagram as drawn.

    Attributes:
        found: attributes of leads, each as number of the lead, name, value.
        moved: ends of leads that lie elsewhere, each as number of the lead, which end, where.
        joined: pairs of terminals that a further lead joins.
        values: attributes of parts, each as key of the part, name, value.
        gas_off, power_off: there is no gas at the inlet, or no power at all.
        false_flame: the control has a flame signal with no flame.
        opens_warm: contacts that open once the unit is warm, each as key of the part, name.
    """

    found: tuple[tuple[int, str, Value], ...] = ()
    moved: tuple[tuple[int, Literal["a", "b"], Terminal], ...] = ()
    joined: tuple[tuple[Terminal, Terminal], ...] = ()
    values: tuple[tuple[str, str, Value], ...] = ()
    gas_off: bool = False
    power_off: bool = False
    false_flame: bool = False
    opens_warm: tuple[tuple[str, str], ...] = ()

    def __add__(self, other: Alteration) -> Alteration:
        """Both at once."""
        return Alteration(
            self.found + other.found,
            self.moved + other.moved,
            self.joined + other.joined,
            self.values + other.values,
            self.gas_off or other.gas_off,
            self.power_off or other.power_off,
            self.false_flame or other.false_flame,
            self.opens_warm + other.opens_warm,
        )

    def on(self, diagram: Diagram) -> Diagram:
        """The diagram so altered; gas and power are matters of the run."""
        if not (self.found or self.moved or self.joined or self.values):
            return diagram
        leads = list(diagram.leads)
        for number, name, value in self.found:
            lead = leads[number]
            attribute = Attribute(name, value, lead.span)
            leads[number] = lead._replace(given={**lead.given, name: attribute})
        for number, end, terminal in self.moved:
            lead = leads[number]
            leads[number] = lead._replace(a=terminal) if end == "a" else lead._replace(b=terminal)
        leads += [_lead(diagram, a, b, number) for number, (a, b) in enumerate(self.joined, 1)]
        parts = dict(diagram.parts)
        for key, name, value in self.values:
            parts[key] = replace(parts[key], values={**parts[key].values, name: value})
        return replace(diagram, leads=tuple(leads), parts=parts, _shown={})


def _lead(diagram: Diagram, a: Terminal, b: Terminal, number: int) -> Lead:
    nowhere = Span(diagram.source, 0, 0)
    run = number + max((lead.run for lead in diagram.leads), default=0)
    return Lead(a, b, nowhere, nowhere, LeadRole.JUMPER, {}, False, nowhere, run)  # noqa: FBT003
