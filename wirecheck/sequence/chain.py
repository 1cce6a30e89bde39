"""The nets that a control's current runs over: from the supplies to it, and from it to the gas."""

from __future__ import annotations

from wirecheck.circuit.companions import Companions
from wirecheck.circuit.conduction import Conduction
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Part, Terminal


def chain(nets: Nets, control: Part) -> frozenset[int]:
    """Every net on some way, through contacts, between a control and its supply or its valves."""
    conduction = Conduction(nets)
    feeds = control.with_role("call", "control-common", "control-hot")
    outputs = control.with_role("pilot-valve", "main-valve", "valve-feed", "valve-common")
    found: set[int] = set()
    for near, far in ((feeds, supply_ends(nets)), (outputs, _operators(nets, control))):
        for a in near:
            for b in far:
                way = conduction.way(nets.net(a), nets.net(b))
                if way.exists:
                    found |= {nets.net(a), nets.net(b)}
                    found |= {net for each in way.contacts for net in (each.net_a, each.net_b)}
    return frozenset(found)


def supply_ends(nets: Nets) -> list[Terminal]:
    """Both ends of every secondary, and of whatever else feeds a control circuit."""
    return [
        end
        for elements in nets.elements_of.values()
        for element in elements
        if element.type == "source" and element.part.family != "mains"
        for end in (element.a, element.b)
    ]


def _operators(nets: Nets, control: Part) -> list[Terminal]:
    valves = Companions(nets.diagram).all_of(control, "gas-valve")
    return [
        end
        for valve in valves
        for element in nets.elements_of[valve.key]
        if element.type == "load"
        for end in (element.a, element.b)
    ]
