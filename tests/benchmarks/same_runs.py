"""What of a diagram decides how it runs: two with the same run alike, whatever lies where."""

from __future__ import annotations

from collections.abc import Hashable
from typing import cast

from wirecheck.circuit.companions import Companions
from wirecheck.circuit.nets import Element, Nets
from wirecheck.circuit.resistances import lead_resistances, number_nodes
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.kind import SwitchSpec
from wirecheck.sequence.script import Script

#: Roles of a control's terminals by whose leads a run tells apart which valve is which.
_VALVE_ROLES = ((), ("main-valve",), ("pilot-valve",))


def circuit(nets: Nets) -> Hashable:
    """All that a run takes from the leads.

    That is what they join, over what resistance, and which valve goes with which control; besides,
    the parts whose build follows from what is drawn.  Two diagrams of the same parts in which it is
    the same do the same in every run.
    """
    ohms = lead_resistances(nets, 20.0, as_found=True)
    nodes: dict[int, list[Terminal]] = {}
    node_of = number_nodes(nets, ohms)
    for terminal, node in node_of.items():
        nodes.setdefault(node, []).append(terminal)
    first = {node: min(members) for node, members in nodes.items()}
    leads = nets.diagram.leads
    resistive = sorted(
        (value, *sorted((first[node_of[leads[number].a]], first[node_of[leads[number].b]])))
        for number, value in ohms.items()
    )
    joined = frozenset(frozenset(members) for members in nodes.values() if len(members) > 1)
    return joined, tuple(resistive), _beside(nets), _built(nets)


def _beside(nets: Nets) -> Hashable:
    companions = Companions(nets.diagram)
    return tuple(
        tuple(valve.key for valve in companions.all_of(control, "gas-valve", *roles))
        for control in _controls(nets)
        for roles in _VALVE_ROLES
    )


def _controls(nets: Nets) -> list[Part]:
    return [part for part in nets.diagram.parts.values() if part.family == "ignition-control"]


def _built(nets: Nets) -> Hashable:
    """The values of the parts that have some which are worked out from what is drawn."""
    return tuple(
        tuple(sorted((name, str(value)) for name, value in part.values.items()))
        for part in nets.diagram.parts.values()
        if any(spec.default_from for spec in part.kind.attributes.values())
    )


def without_idle(nets: Nets, script: Script) -> Script:
    """A script less the positions of contacts that have nothing on one side: they do nothing."""
    stimuli = tuple(
        each
        for each in script.stimuli
        if each.what != "position" or not _is_idle(nets, each.part, each.contact)
    )
    return script._replace(stimuli=stimuli)


def _is_idle(nets: Nets, part: str, contact: str) -> bool:
    named = [
        each
        for each in nets.elements_of[part]
        if each.type == "switch" and contact in ("", cast(SwitchSpec, each.spec).name)
    ]
    return all(_leads_nowhere(nets, each) for each in named)


def _leads_nowhere(nets: Nets, contact: Element) -> bool:
    return any(
        len(nets.members[net]) == 1 and nets.elements.degree(net) == 1
        for net in (contact.net_a, contact.net_b)
    )
