"""Leads of a unit that were not traced: a run takes them as open, and so proves no failure."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator
from typing import Final, cast

from wirecheck.circuit.companions import Companions
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import UNKNOWN_END, Part, Terminal
from wirecheck.model.kind import SwitchSpec
from wirecheck.sequence.chain import supply_ends

#: What belongs to a control besides itself.
_OWN: Final = ("burner", "gas-valve", "vent-damper")


def untraced(nets: Nets, control: Part) -> tuple[str, ...]:
    """The terminals, as people read them, at which an untraced lead may matter to a control.

    Those of the control, of its burner, valve and damper, and those that the supply or they reach
    through contacts that are closed while a burner runs: an untraced lead of a fan is no matter.
    """
    ends = list(_known_ends(nets))
    if not ends:
        return ()
    reached = _reached(nets, control)
    found = (end for end in ends if nets.net(end) in reached)
    return tuple(dict.fromkeys(nets.diagram.show(end) for end in found))


def _known_ends(nets: Nets) -> Iterator[Terminal]:
    for lead in nets.diagram.leads:
        for end, other in ((lead.a, lead.b), (lead.b, lead.a)):
            if other.part == UNKNOWN_END and end.part != UNKNOWN_END:
                yield end


def _reached(nets: Nets, control: Part) -> set[int]:
    companions = Companions(nets.diagram)
    own = [control, *(each for family in _OWN for each in companions.all_of(control, family))]
    starts = [part.terminal(name) for part in own for name in part.structure.terminals]
    beside = _closed_in_a_run(nets)
    reached = {nets.net(end) for end in (*starts, *supply_ends(nets))}
    waiting = deque(reached)
    while waiting:
        for net in beside.get(waiting.popleft(), ()):
            if net not in reached:
                reached.add(net)
                waiting.append(net)
    return reached


def _closed_in_a_run(nets: Nets) -> dict[int, list[int]]:
    """Nets by the nets that contacts join to them while a burner runs."""
    beside: dict[int, list[int]] = {}
    for elements in nets.elements_of.values():
        for element in elements:
            if element.type == "switch" and cast(SwitchSpec, element.spec).running == "closed":
                beside.setdefault(element.net_a, []).append(element.net_b)
                beside.setdefault(element.net_b, []).append(element.net_a)
    return beside
