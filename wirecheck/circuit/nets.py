"""Nets: which terminals are one conductor, and what stands between one net and another.

Leads, jumpers, plugs, splices, the links inside devices and the unit's earth join terminals into
nets; switches, loads, sources, bonds and gaps join nothing, they are the elements between nets.
Two networkx graphs hold this, and every later use reads them:

* ``conductors``: nodes are terminals, an edge is a lead (attribute ``lead``: its number in
  `Diagram.leads`) or a link inside a device (attribute ``link``: the `LinkSpec`);
* ``elements``: nodes are net numbers, an edge is one `Element` (attribute ``element``).
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from functools import cached_property
from itertools import pairwise
from typing import Literal, NamedTuple

import networkx as nx

from wirecheck.model.diagram import EARTH, Diagram, Part, Terminal
from wirecheck.model.kind import GapSpec, LoadSpec, SourceSpec, SwitchSpec

ElementType = Literal["switch", "load", "source", "bond", "gap"]


class Element(NamedTuple):
    """Something between two nets: a contact, a load, a source, a bond to the metal, or a gap.

    ``spec`` is what the part library says of it; a bond has none, its strength stands in ``name``.
    """

    type: ElementType
    name: str
    part: Part
    a: Terminal
    b: Terminal
    net_a: int
    net_b: int
    spec: SwitchSpec | LoadSpec | SourceSpec | GapSpec | None


class Nets:
    """The nets of one diagram, numbered from 0 in the order in which the text first names them."""

    def __init__(self, diagram: Diagram) -> None:
        """Join everything that is one conductor; linear in leads and terminals."""
        self.diagram = diagram
        self.conductors = _conductors(diagram)
        self.net_of: dict[Terminal, int] = {}
        for number, members in enumerate(nx.connected_components(self.conductors)):
            self.net_of.update(dict.fromkeys(members, number))
        #: The terminals of each net, in the order in which the text first names them.
        self.members: list[list[Terminal]] = [[] for _ in set(self.net_of.values())]
        for terminal in self.conductors:
            self.members[self.net_of[terminal]].append(terminal)
        self.elements: nx.MultiGraph[int] = nx.MultiGraph()
        self.elements.add_nodes_from(range(len(self.members)))
        self.elements_of: dict[str, list[Element]] = {key: [] for key in diagram.parts}
        for part in diagram.parts.values():
            for element in self._elements(part):
                self.elements_of[part.key].append(element)
                self.elements.add_edge(element.net_a, element.net_b, element=element)

    def _elements(self, part: Part) -> Iterator[Element]:
        net_of, terminal, structure = self.net_of, part.terminal, part.structure
        groups: tuple[
            tuple[ElementType, tuple[SwitchSpec | LoadSpec | SourceSpec | GapSpec, ...]], ...
        ]
        groups = (
            ("switch", structure.switches),
            ("load", structure.loads),
            ("source", structure.sources),
            ("gap", structure.gaps),
        )
        for type_, specs in groups:
            for spec in specs:
                a, b = terminal(spec.between[0]), terminal(spec.between[1])
                yield Element(type_, spec.name, part, a, b, net_of[a], net_of[b], spec)
        for name, strength in structure.bonds:
            a = terminal(name)
            yield Element("bond", strength, part, a, EARTH, net_of[a], net_of[EARTH], None)

    def net(self, terminal: Terminal) -> int:
        """The number of the net a terminal belongs to."""
        return self.net_of[terminal]

    def joined(self, a: Terminal, b: Terminal) -> bool:
        """Whether two terminals are one conductor."""
        return self.net_of[a] == self.net_of[b]

    def leads_at(self, terminal: Terminal) -> list[int]:
        """Numbers of the leads that land on a terminal, broken ones too, in the order typed."""
        return self._landed.get(terminal, [])

    @cached_property
    def _landed(self) -> dict[Terminal, list[int]]:
        landed: dict[Terminal, list[int]] = {}
        for number, lead in enumerate(self.diagram.leads):
            landed.setdefault(lead.a, []).append(number)
            landed.setdefault(lead.b, []).append(number)
        return landed

    @cached_property
    def run_sizes(self) -> Counter[int]:
        """How many leads each run has."""
        return Counter(lead.run for lead in self.diagram.leads)

    def is_wired(self, terminal: Terminal) -> bool:
        """Whether any lead lands on the terminal."""
        return terminal in self._landed

    def path(self, a: Terminal, b: Terminal) -> list[int]:
        """Numbers of the leads on a shortest conductor path from one terminal to another.

        Raises:
            networkx.NetworkXNoPath: they are not one conductor.
        """
        nodes = nx.shortest_path(self.conductors, a, b)
        leads = []
        for left, right in pairwise(nodes):
            number = self.conductors.edges[left, right].get("lead")
            if number is not None:
                leads.append(number)
        return leads


def _conductors(diagram: Diagram) -> nx.Graph[Terminal]:
    """Every terminal, joined by whatever conducts without a switch or a load between."""
    graph: nx.Graph[Terminal] = nx.Graph()
    graph.add_edges_from(
        (lead.a, lead.b, {"lead": number})
        for number, lead in enumerate(diagram.leads)
        if lead.conducts
    )
    for lead in diagram.leads:
        if not lead.conducts:
            graph.add_nodes_from((lead.a, lead.b))
        if "touches" in lead.given:
            graph.add_edge(lead.a, EARTH, touches=True)
    for part in diagram.parts.values():
        graph.add_nodes_from(part.terminal(name) for name in part.structure.terminals)
        for link in part.structure.links:
            graph.add_edge(
                part.terminal(link.between[0]), part.terminal(link.between[1]), link=link
            )
    graph.add_nodes_from(Terminal(key, "") for key in diagram.splices)
    graph.add_node(EARTH)
    return graph
