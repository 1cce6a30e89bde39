"""Leads that have a resistance of their own, and the nodes that lie between them.

A lead has one if its length is known (typed for it, for its run, or for the cable it runs in) or if
it, or the splice it lands on, was found loose.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from wirecheck.circuit.copper import lead_ohms
from wirecheck.circuit.joins import Pair, lowest_joined
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import EARTH, Attributes, Diagram, Lead, Terminal, key_of
from wirecheck.model.quantity import Quantity


def lead_resistances(nets: Nets, temperature_c: float, *, as_found: bool) -> dict[int, float]:
    """Ohm of each lead that conducts and has a resistance, by its number.

    Args:
        nets: of the diagram.
        temperature_c: of the copper.
        as_found: with what was found loose.
    """
    loose = _loose_ohms(nets.diagram) if as_found else {}
    resistances = {}
    for number, lead in enumerate(nets.diagram.leads):
        if lead.conducts:
            ohms = copper_ohms(nets, lead, temperature_c) + loose.get(number, 0.0)
            if ohms > 0:
                resistances[number] = ohms
    return resistances


def _loose_ohms(diagram: Diagram) -> dict[int, float]:
    """What was found loose, by lead; half of a splice's in each, so the whole between any two."""
    splices = {
        splice.key: ohms / 2
        for splice in diagram.splices.values()
        if (ohms := _amount(splice.given, "loose"))
    }
    return {
        number: _amount(lead.given, "loose")
        + sum(splices.get(end.part, 0.0) for end in (lead.a, lead.b))
        for number, lead in enumerate(diagram.leads)
        if splices or "loose" in lead.given
    }


def copper_ohms(nets: Nets, lead: Lead, temperature_c: float = 20.0) -> float:
    """Ohm of the copper of one lead; 0 where its length is not known."""
    length_m = lead_length_m(nets, lead)
    if not length_m:
        return 0.0
    return lead_ohms(lead_size(lead), length_m, temperature_c)


def lead_length_m(nets: Nets, lead: Lead) -> float:
    """Length of one lead in metres: its share of its run, or that of its cable; 0 if not known."""
    typed = _amount(lead.given, "length")
    if typed:
        return typed / nets.run_sizes[lead.run] if lead.shared_length else typed
    named = lead.given.get("in")
    cable = nets.diagram.cables.get(key_of(str(named.value))) if named else None
    return _amount(cable.given, "length") if cable else 0.0


def lead_size(lead: Lead) -> Quantity | None:
    """Size of a lead's conductor, as typed or as its cable has it; None if not known."""
    typed = lead.given.get("size")
    return typed.value if typed and isinstance(typed.value, Quantity) else None


def _amount(given: Attributes, name: str) -> float:
    """A typed amount in base units; of a range the higher end; 0 where there is none."""
    typed = given.get(name)
    return typed.value.high_base if typed and isinstance(typed.value, Quantity) else 0.0


def number_nodes(nets: Nets, resistive: Mapping[int, float]) -> dict[Terminal, int]:
    """The node of each terminal; the earth's is 0.

    Nodes are the nets, except where a lead has a resistance: there the net falls into several.
    """
    terminals = list(nets.conductors)
    place = {terminal: number for number, terminal in enumerate(terminals)}
    lowest = lowest_joined(len(terminals), _joins(nets, resistive, place))
    earth = lowest[place[EARTH]]
    numbers: dict[int, int] = {earth: 0}
    return {
        terminal: numbers.setdefault(low, len(numbers))
        for terminal, low in zip(terminals, lowest, strict=True)
    }


def _joins(
    nets: Nets, resistive: Mapping[int, float], place: Mapping[Terminal, int]
) -> Iterator[Pair]:
    for number, lead in enumerate(nets.diagram.leads):
        if lead.conducts and number not in resistive:
            yield place[lead.a], place[lead.b]
        if "touches" in lead.given:
            yield place[lead.a], place[EARTH]
    for part in nets.diagram.parts.values():
        for link in part.structure.links:
            a, b = link.between
            yield place[part.terminal(a)], place[part.terminal(b)]
