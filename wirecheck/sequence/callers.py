"""What calls for heat: the thermostats, or the operating control of a burner that has none.

A boiler kept hot by its own operating control, or a dryer run by its timer, is called by that;
where a thermostat has a say in it, even over relays and zone valves, the operating control only
stands in its way.
"""

from __future__ import annotations

from functools import lru_cache

from wirecheck.circuit.conduction import Conduction
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.kind import SwitchSpec
from wirecheck.sequence.chain import supply_ends


@lru_cache(maxsize=4)
def callers(nets: Nets) -> frozenset[str]:
    """Keys of the parts that call for heat; kept for the diagrams asked about last."""
    parts = nets.diagram.parts.values()
    thermostats = {part.key for part in parts if part.family == "thermostat"}
    operating = {part.key for part in parts if part.family == "operating-control"}
    if not operating:
        return frozenset(thermostats)
    if not thermostats:
        return frozenset(operating)
    found = set(thermostats)
    conduction = Conduction(nets)
    for part in parts:
        if part.family == "ignition-control":
            on_the_way = _on_the_way(nets, conduction, part)
            if not on_the_way & thermostats:
                found |= on_the_way & operating
    return frozenset(found)


def _on_the_way(nets: Nets, conduction: Conduction, control: Part) -> set[str]:
    """Keys of the parts whose contacts decide whether a control is called, over relays too."""
    supplies = supply_ends(nets)
    waiting: list[Terminal] = list(control.with_role("call"))
    found: set[str] = set()
    while waiting:
        terminal = waiting.pop()
        for supply in supplies:
            for contact in conduction.way(nets.net(supply), nets.net(terminal)).contacts:
                part = contact.part
                is_new = part.key not in found and part.key != control.key
                found.add(part.key)
                spec = contact.spec
                if is_new and isinstance(spec, SwitchSpec) and spec.moved_by in ("coil", "motor"):
                    waiting += [
                        end
                        for element in nets.elements_of[part.key]
                        if element.type == "load"
                        for end in (element.a, element.b)
                    ]
    return found
