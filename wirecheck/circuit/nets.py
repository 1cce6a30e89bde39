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

#: What joins two terminals, as the graph ``conductors`` has it; and of each those beside it.
Joint = dict[str, object]
Wires = dict[Terminal, dict[Terminal, Joint]]
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
        #: The terminals of each net, in the order in which the text first names them.
        self.members = _members(diagram)
        self.net_of: dict[Terminal, int] = {
            terminal: net for net, members in enumerate(self.members) for terminal in members
        }
        self.elements_of: dict[str, list[Element]] = {
            part.key: list(self.elements_inside(part)) for part in diagram.parts.values()
        }

    @cached_property
    def wires(self) -> Wires:
        """Of each terminal those beside it, and the lead or link between; as ``conductors``.

        Whoever only goes from one to the next need not wait for a graph.
        """
        return _wires(self.diagram)

    @cached_property
    def conductors(self) -> nx.Graph[Terminal]:
        """Every terminal, joined by whatever conducts without a switch or a load between."""
        graph: nx.Graph[Terminal] = nx.Graph()
        graph.add_nodes_from(_terminals(self.diagram))
        graph.add_edges_from(_joints(self.diagram))
        return graph

    @cached_property
    def elements(self) -> nx.MultiGraph[int]:
        """Every net, and what stands between one and another."""
        graph: nx.MultiGraph[int] = nx.MultiGraph()
        graph.add_nodes_from(range(len(self.members)))
        for elements in self.elements_of.values():
            graph.add_edges_from((each.net_a, each.net_b, {"element": each}) for each in elements)
        return graph

    def elements_inside(self, part: Part) -> Iterator[Element]:
        """What a part has inside, between its nets."""
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


def _members(diagram: Diagram) -> list[list[Terminal]]:
    """The terminals that are one conductor, in the order in which the text first names them."""
    above: dict[Terminal, Terminal] = {}

    def top(terminal: Terminal) -> Terminal:
        here = above.setdefault(terminal, terminal)
        while above[here] != here:
            above[here] = here = above[above[here]]
        return here

    for a, b, _joint in _joints(diagram):
        above[top(a)] = top(b)
    members: dict[Terminal, list[Terminal]] = {}
    for terminal in dict.fromkeys(_terminals(diagram)):
        members.setdefault(top(terminal), []).append(terminal)
    return list(members.values())


def _joints(diagram: Diagram) -> Iterator[tuple[Terminal, Terminal, Joint]]:
    """What conducts without a switch or a load between: leads, metal they touch, links."""
    for number, lead in enumerate(diagram.leads):
        if lead.conducts:
            yield lead.a, lead.b, {"lead": number}
    for lead in diagram.leads:
        if "touches" in lead.given:
            yield lead.a, EARTH, {"touches": True}
    for part in diagram.parts.values():
        for link in part.structure.links:
            yield part.terminal(link.between[0]), part.terminal(link.between[1]), {"link": link}


def _terminals(diagram: Diagram) -> Iterator[Terminal]:
    """Every terminal, those where something conducts first."""
    for conducts in (True, False):
        for lead in diagram.leads:
            if lead.conducts is conducts:
                yield lead.a
                yield lead.b
    if any("touches" in lead.given for lead in diagram.leads):
        yield EARTH
    for part in diagram.parts.values():
        yield from map(part.terminal, part.structure.terminals)
    yield from (Terminal(key, "") for key in diagram.splices)
    yield EARTH


def _wires(diagram: Diagram) -> Wires:
    wires: Wires = {terminal: {} for terminal in _terminals(diagram)}
    for a, b, joint in _joints(diagram):
        known = wires[a].setdefault(b, {})
        known.update(joint)
        wires[b][a] = known
    return wires
