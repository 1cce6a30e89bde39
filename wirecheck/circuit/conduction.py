"""What may become one conductor when contacts close, and which contacts stand in the way.

A *region* is a set of nets joined by contacts of any kind (switches, relay contacts, fuses),
whatever their position: current can get from one net of a region to another without passing a
load.  Between two nets of one region some contacts stand on every path (they are in series, each
one's opening cuts the way), others only on some.
"""

from __future__ import annotations

from typing import NamedTuple

import networkx as nx

from wirecheck.circuit.nets import Element, Nets


class Way(NamedTuple):
    """The contacts between two nets.

    Attributes:
        exists: there is a path at all (also a direct one: the nets are the same).
        contacts: contacts that stand on at least one path without loops.
        series: those of them that stand on every path.
    """

    exists: bool
    contacts: tuple[Element, ...]
    series: tuple[Element, ...]


class Conduction:
    """Regions of one diagram's nets, and the ways inside them."""

    def __init__(self, nets: Nets) -> None:
        """Join the nets by their contacts; linear in contacts."""
        self.nets = nets
        self.contacts: nx.MultiGraph[int] = nx.MultiGraph()
        for elements in nets.elements_of.values():
            for number, element in enumerate(elements):
                if element.type == "switch" and element.net_a != element.net_b:
                    self.contacts.add_edge(
                        element.net_a, element.net_b, (element.part.key, number), element=element
                    )
        self._region: dict[int, int] = {}
        for number, members in enumerate(nx.connected_components(self.contacts)):
            self._region.update(dict.fromkeys(members, number))
        self._ways: dict[tuple[int, int], Way] = {}

    def region(self, net: int) -> int:
        """The region of a net; a net without contacts is a region by itself (a negative number)."""
        return self._region.get(net, -1 - net)

    def may_join(self, a: int, b: int) -> bool:
        """Whether two nets may become one conductor when contacts close."""
        return a == b or self.region(a) == self.region(b)

    def way(self, a: int, b: int) -> Way:
        """The contacts between two nets, in the order of the part library and the text."""
        key = (a, b) if a <= b else (b, a)
        if key not in self._ways:
            self._ways[key] = self._find(*key)
        return self._ways[key]

    def _find(self, a: int, b: int) -> Way:
        if a == b:
            return Way(exists=True, contacts=(), series=())
        if not self.may_join(a, b):
            return Way(exists=False, contacts=(), series=())
        members = nx.node_connected_component(self.contacts, a)
        graph = nx.MultiGraph(self.contacts.subgraph(members))
        # With an edge from b back to a, the elements on some loop-free path from a to b are
        # those of the block that holds this edge; a contact in series is one whose removal
        # leaves no way.
        closing = nx.Graph(graph)
        closing.add_edge(a, b)
        block = next(
            nodes for nodes in nx.biconnected_components(closing) if a in nodes and b in nodes
        )
        on_path = [
            (left, right, name, element)
            for left, right, name, element in graph.edges(block, keys=True, data="element")
            if left in block and right in block
        ]
        bridges = set(map(frozenset, nx.bridges(nx.Graph(graph))))
        series = [
            element
            for left, right, _name, element in on_path
            if frozenset((left, right)) in bridges and graph.number_of_edges(left, right) == 1
        ]
        contacts = tuple(element for _left, _right, _name, element in on_path)
        return Way(exists=True, contacts=contacts, series=tuple(series))
