"""Whether a safety that stops no burner may be where it is on purpose."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

import networkx as nx

from wirecheck.circuit.nets import Element
from wirecheck.model.kind import LoadSpec
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.contacts import switch
from wirecheck.rules.facts import Facts

#: What proves or limits something besides the burner too: in another circuit it may be in place.
_OF_OTHER_EQUIPMENT: Final = frozenset({"air", "flow", "pressure", "door"})

#: What a switch proves, by what moves it: what a motor sets in motion.
_PROVED: Final = {
    "air": frozenset({"combustion-air", "air"}),
    "pressure": frozenset({"combustion-air"}),
    "flow": frozenset({"water"}),
}


def may_be_right(facts: Facts, contact: Element, *, one_side: bool) -> bool:
    """Whether it is unused, guards other equipment, or was landed where worse is told of it.

    Args:
        facts: of the diagram as wired.
        contact: a safety ahead of no burner.
        one_side: only one of its sides has a lead.
    """
    if _joins_circuits(facts, contact):
        return True
    if one_side:
        return _may_stay_unused(contact)
    return _guards_another_load(facts, contact)


def _may_stay_unused(contact: Element) -> bool:
    """Whether the lead on its one side is for something else of the same device.

    The link of a fan-and-limit control brings what feeds its fan contact to its limit contact.
    """
    if contact.part.family == "fan-limit-control":
        return contact.part.values.get("link") == "fitted"
    return contact.part.family == "boiler-control"


def _guards_another_load(facts: Facts, contact: Element) -> bool:
    """Whether it switches some other load; what proves a motor's air cannot switch that motor."""
    moved_by = switch(contact).moved_by
    return moved_by in _OF_OTHER_EQUIPMENT and any(
        moved_by == "door"
        or not (element.spec.type == "motor" or _starts_what_it_proves(facts, moved_by, element))
        for element in _switched_by(facts, contact)
        if isinstance(element.spec, LoadSpec)
    )


def _switched_by(facts: Facts, contact: Element) -> Iterator[Element]:
    """What hangs on it, and not on the call or the supply ahead of it."""
    both_sides = (contact.net_a, contact.net_b)
    ahead = facts.once(Burners).nets
    for net in [net for net in both_sides if net not in ahead] or both_sides:
        for _a, _b, element in facts.nets.elements.edges(net, data="element"):
            yield element


def _starts_what_it_proves(facts: Facts, moved_by: str, load: Element) -> bool:
    """Whether a load is the coil of the relay that starts every motor which it could prove.

    Where another motor could move what it proves, an interlock of the one by the other is meant.
    """
    proved = _PROVED.get(moved_by, frozenset())
    could_be = {m.part.key for m in facts.once(_motors) if _moves(m) in proved}
    started = set()
    for contact in facts.nets.elements_of[load.part.key]:
        if contact.type == "switch" and switch(contact).coil == load.name:
            # The supply's side may hold every motor of a plant; the motor's own holds few.
            degree = facts.nets.elements.degree
            started |= _motors_at(facts, min(contact.net_a, contact.net_b, key=degree))
    return bool(could_be) and could_be <= started


def _motors_at(facts: Facts, net: int) -> set[str]:
    edges = facts.nets.elements.edges(net, data="element")
    return {element.part.key for _a, _b, element in edges if _moves(element)}


def _moves(element: Element) -> str | None:
    return element.spec.moves if isinstance(element.spec, LoadSpec) else None


def _motors(facts: Facts) -> tuple[Element, ...]:
    """Every motor that moves air or water."""
    parts = facts.nets.elements_of.values()
    return tuple(element for elements in parts for element in elements if _moves(element))


def _joins_circuits(facts: Facts, contact: Element) -> bool:
    """Whether contacts join both sides of a supply there, or two kinds of circuit."""
    graph = facts.conduction.contacts
    region = nx.node_connected_component(graph, contact.net_a) if contact.net_a in graph else ()
    circuits = set()
    for net in region:
        for _a, _b, element in facts.nets.elements.edges(net, data="element"):
            if element.type == "source":
                if element.net_a in region and element.net_b in region:
                    return True
                spec = facts.diagram.spec(element.a)
                circuits.add(spec.circuit if spec else "any")
    return len(circuits) > 1
