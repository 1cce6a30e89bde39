"""Which leads are at line voltage, so that a sheet can show it without colour."""

from __future__ import annotations

from typing import Final

import networkx as nx

from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import EARTH

#: Roles of the line's terminals; its ground is none of them.
_ROLES: Final = frozenset({"line-hot", "line-hot-2", "line-hot-3", "line-neutral"})


def line_leads(nets: Nets) -> frozenset[int]:
    """Return the numbers of the leads joined to the line, directly or through contacts and fuses.

    Whether a contact is open or closed counts for nothing: a switched lead is live at some time.
    What is joined to the unit's earth is left out.
    """
    through = nx.Graph()
    through.add_nodes_from(nets.elements)
    through.add_edges_from(
        (a, b) for a, b, element in nets.elements.edges.data("element") if element.type == "switch"
    )
    through.remove_node(nets.net(EARTH))
    live: set[int] = set()
    for part in nets.diagram.parts.values():
        if part.family != "mains":
            continue
        for name, spec in part.structure.terminals.items():
            net = nets.net(part.terminal(name))
            if spec.role in _ROLES and net in through:
                live |= nx.node_connected_component(through, net)
    return frozenset(
        number
        for number, lead in enumerate(nets.diagram.leads)
        if {nets.net(lead.a), nets.net(lead.b)} & live
    )
