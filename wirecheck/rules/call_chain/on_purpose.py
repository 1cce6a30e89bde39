"""Whether a safety that stops no burner may be where it is on purpose."""

from __future__ import annotations

from typing import Final

import networkx as nx

from wirecheck.circuit.nets import Element
from wirecheck.model.kind import LoadSpec
from wirecheck.rules.call_chain.contacts import switch
from wirecheck.rules.facts import Facts

#: What proves or limits something besides the burner too: in another circuit it may be in place.
_OF_OTHER_EQUIPMENT: Final = frozenset({"air", "flow", "pressure", "door"})


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
        return contact.part.family in ("boiler-control", "fan-limit-control")
    return _guards_another_load(facts, contact)


def _guards_another_load(facts: Facts, contact: Element) -> bool:
    """Whether it switches some other load; what proves a motor's air cannot switch that motor."""
    moved_by = switch(contact).moved_by
    return moved_by in _OF_OTHER_EQUIPMENT and any(
        isinstance(element.spec, LoadSpec) and (moved_by == "door" or element.spec.type != "motor")
        for net in (contact.net_a, contact.net_b)
        for _a, _b, element in facts.nets.elements.edges(net, data="element")
    )


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
