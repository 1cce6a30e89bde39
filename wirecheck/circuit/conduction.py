"""What may become one conductor when contacts close, and which contacts stand in the way.

A *region* is a set of nets joined by contacts of any kind (switches, relay contacts, fuses),
whatever their position: current can get from one net of a region to another without passing a
load.  Between two nets of one region some contacts stand on every path (they are in series, each
one's opening cuts the way), others only on some.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

import networkx as nx

from wirecheck.circuit.nets import Element, Nets

#: Two nets, and the part and number of the contact between them.
_Edge = tuple[int, int, tuple[str, int]]


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
        self._place: dict[tuple[str, int], int] = {}
        for elements in nets.elements_of.values():
            for number, element in enumerate(elements):
                if element.type == "switch" and element.net_a != element.net_b:
                    key = (element.part.key, number)
                    self._place[key] = len(self._place)
                    self.contacts.add_edge(element.net_a, element.net_b, key, element=element)
        self._trees = _Trees(self.contacts)
        self._blocks: dict[int, _Blocks] = {}
        self._ways: dict[tuple[int, int], Way] = {}

    def region(self, net: int) -> int:
        """The region of a net; a net without contacts is a region by itself (a negative number)."""
        return self._trees.root.get(net, -1 - net)

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
        if not self._trees.has_loops(a):
            contacts = self._in_order(self._trees.path(a, b))
            return Way(exists=True, contacts=contacts, series=contacts)
        return self._among_loops(a, b)

    def _among_loops(self, a: int, b: int) -> Way:
        root = self.region(a)
        if root not in self._blocks:
            self._blocks[root] = _Blocks(self.contacts, root)
        on_path: list[_Edge] = []
        series: list[_Edge] = []
        for edges in self._blocks[root].between(a, b):
            on_path += edges
            if len(edges) == 1:
                series += edges
        return Way(exists=True, contacts=self._in_order(on_path), series=self._in_order(series))

    def _in_order(self, edges: Iterable[_Edge]) -> tuple[Element, ...]:
        keys = sorted((key for _left, _right, key in edges), key=self._place.__getitem__)
        return tuple(self.nets.elements_of[part][number] for part, number in keys)


class _Trees:
    """A spanning tree of every region.  Most regions are trees: one way leads from net to net."""

    def __init__(self, contacts: nx.MultiGraph[int]) -> None:
        """Grow the trees; linear in contacts."""
        #: The net that each net's tree grew from, which stands for the region.
        self.root: dict[int, int] = {}
        self._above: dict[int, _Edge] = {}
        self._depth: dict[int, int] = {}
        self._looped: set[int] = set()
        for root in contacts:
            if root not in self.root:
                self._grow(contacts, root)

    def _grow(self, contacts: nx.MultiGraph[int], root: int) -> None:
        self.root[root], self._depth[root] = root, 0
        waiting, count = [root], 0
        while waiting:
            here = waiting.pop()
            for there, parallel in contacts.adj[here].items():
                count += len(parallel)
                if there not in self.root:
                    self.root[there], self._depth[there] = root, self._depth[here] + 1
                    self._above[there] = (there, here, next(iter(parallel)))
                    waiting.append(there)
                    count -= 2  # met from both ends
        if count:
            self._looped.add(root)

    def has_loops(self, net: int) -> bool:
        """Whether contacts of the region lie side by side."""
        return self.root[net] in self._looped

    def path(self, a: int, b: int) -> Iterator[_Edge]:
        """The edges of the tree between two nets of one region."""
        while a != b:
            if self._depth[a] < self._depth[b]:
                a, b = b, a
            edge = self._above[a]
            yield edge
            a = edge[1]


class _Blocks:
    """The blocks of a region: its contacts, in groups that no one net holds together.

    The ways without loops between two nets pass the same blocks, and between them each contact of
    every one of these; a block of one contact is in series.
    """

    def __init__(self, contacts: nx.MultiGraph[int], root: int) -> None:
        """Find them; linear in the contacts of the region."""
        members = nx.node_connected_component(contacts, root)
        simple: nx.Graph[int] = nx.Graph()
        simple.add_edges_from(contacts.edges(members))
        self._edges: list[list[_Edge]] = []
        self._nets: list[list[int]] = []
        self._at: dict[int, list[int]] = {}
        for number, pairs in enumerate(nx.biconnected_component_edges(simple)):
            self._edges.append([(a, b, key) for a, b in pairs for key in contacts.adj[a][b]])
            self._nets.append(list(dict.fromkeys(net for pair in pairs for net in pair)))
            for net in self._nets[-1]:
                self._at.setdefault(net, []).append(number)

    def between(self, a: int, b: int) -> Iterator[list[_Edge]]:
        """The contacts of each block on the ways between two nets."""
        came: dict[int, tuple[int, int]] = {}
        entered: set[int] = set()
        waiting = [a]
        while b not in came:
            here = waiting.pop()
            for block in self._at[here]:
                if block not in entered:
                    entered.add(block)
                    others = [net for net in self._nets[block] if net != here]
                    came.update(dict.fromkeys(others, (here, block)))
                    waiting += others
        while b != a:
            b, block = came[b]
            yield self._edges[block]
