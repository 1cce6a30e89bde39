"""Leads that have changed places: two exchanged, or more in a ring."""

from __future__ import annotations

from collections.abc import Sequence

import networkx as nx

from wirecheck.compare.result import Difference
from wirecheck.grade.key import Key


def rotations(differences: Sequence[Difference], key: Key) -> list[list[int]]:
    """The differences by number, in groups: each by itself, or those that go round in a ring.

    One follows another if its lead has landed on the net that the other one has lost.
    """
    graph: nx.DiGraph[int] = nx.DiGraph()
    graph.add_nodes_from(range(len(differences)))
    net_of = key.nets.net_of
    nets = [{net_of[end] for end in each.terminals if end in net_of} for each in differences]
    for number, each in enumerate(differences):
        if each.landed is not None and each.first_leads:
            new = net_of.get(each.landed[1])
            graph.add_edges_from(
                (number, other)
                for other, some in enumerate(nets)
                if new in some and other != number and differences[other].first_leads
            )
    return sorted(sorted(group) for group in nx.strongly_connected_components(graph))
