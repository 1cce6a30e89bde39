"""A diagram as it is compared: its nets without splices and strips, cut at earth and burner metal.

What is joined only over earth or over the metal of a burner is not joined by leads: such a common
runs until a screw rusts.  So these are no part of a net here; they are *metal*, which a net may
touch.  Splices and terminal strips only join, and are left out.
"""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property
from typing import Final

import networkx as nx

from wirecheck.circuit.nets import Element, Nets
from wirecheck.model.diagram import EARTH, OPEN_END, UNKNOWN_END, Diagram, Part, Terminal

#: Families whose parts only join leads.
JOINTS: Final = frozenset({"strip"})
#: Roles of the grounded side of a supply.
GROUNDED: Final = ("secondary-common", "line-neutral", "own-common", "generator-common")


class Wired:
    """One diagram, ready to be compared.

    Attributes:
        diagram, nets: as everywhere else.
        metal: earth and the metal of burners, in the order of the text.
        net_of: the number of the net of each terminal that is not metal.
        touches: which metal each net touches by a lead.
        metal_pairs: metal joined to other metal by a lead of its own.
        pins: of each net the terminals of devices, in the order of the text.
    """

    def __init__(self, diagram: Diagram) -> None:
        """Cut the conductors at the metal; linear in leads and terminals."""
        self.diagram = diagram
        self.nets = Nets(diagram)
        parts = diagram.parts.values()
        self.metal = (EARTH, *(end for part in parts for end in part.with_role("burner-metal")))
        conductors = self.nets.conductors
        by_leads = conductors.subgraph(set(conductors) - set(self.metal))
        order = {terminal: number for number, terminal in enumerate(conductors)}
        components = sorted(
            nx.connected_components(by_leads), key=lambda each: min(order[end] for end in each)
        )
        self.net_of: dict[Terminal, int] = {}
        self.pins: list[list[Terminal]] = []
        self._unknown: set[int] = set()
        for number, members in enumerate(components):
            self.net_of.update(dict.fromkeys(members, number))
            self.pins.append(sorted(filter(self.is_pin, members), key=order.__getitem__))
            if any(end.part in (OPEN_END, UNKNOWN_END) for end in members):
                self._unknown.add(number)
        self.touches: dict[int, set[Terminal]] = {}
        self.metal_pairs: set[frozenset[Terminal]] = set()
        for metal in self.metal:
            for beside in conductors[metal]:
                if beside in self.net_of:
                    self.touches.setdefault(self.net_of[beside], set()).add(metal)
                elif beside != metal:
                    self.metal_pairs.add(frozenset((metal, beside)))

    def is_pin(self, terminal: Terminal) -> bool:
        """Whether a terminal is one of a device: no splice, no strip, no loose end."""
        part = self.diagram.parts.get(terminal.part)
        return part is not None and part.family not in JOINTS

    def parts(self) -> Iterator[Part]:
        """The devices, in the order of the text."""
        return (part for part in self.diagram.parts.values() if part.family not in JOINTS)

    def is_drawn(self, part: Part) -> bool:
        """Whether any lead lands on a part."""
        return part.key in self._drawn

    @cached_property
    def _drawn(self) -> frozenset[str]:
        return frozenset(end.part for lead in self.diagram.leads for end in (lead.a, lead.b))

    def is_wired(self, terminal: Terminal) -> bool:
        """Whether a lead lands on a terminal, or on one that a link inside joins to it."""
        return any(map(self.nets.is_wired, self.port(terminal)))

    def port(self, terminal: Terminal) -> tuple[Terminal, ...]:
        """The terminals of a device that its own links make one with a terminal."""
        return self._ports.get(terminal, (terminal,))

    @cached_property
    def _ports(self) -> dict[Terminal, tuple[Terminal, ...]]:
        ports: dict[Terminal, tuple[Terminal, ...]] = {}
        for part in self.diagram.parts.values():
            joined: nx.utils.UnionFind[str] = nx.utils.UnionFind(part.structure.terminals)
            for link in part.structure.links:
                joined.union(*link.between)
            for names in joined.to_sets():
                inside = sorted(names, key=list(part.structure.terminals).index)
                port = tuple(part.terminal(name) for name in inside)
                ports.update(dict.fromkeys(port, port))
        return ports

    def lead(self, terminal: Terminal) -> Terminal:
        """The terminal that stands for its port: the first that a lead lands on, or the first."""
        port = self.port(terminal)
        return next(filter(self.nets.is_wired, port), port[0])

    def ports_on(self, net: int) -> list[Terminal]:
        """The ports on a net, each by the terminal that stands for it."""
        return list(dict.fromkeys(map(self.lead, self.pins[net])))

    def elements(self) -> Iterator[Element]:
        """What stands between the nets."""
        for elements in self.nets.elements_of.values():
            yield from elements

    def contacts(self) -> Iterator[Element]:
        """The switches among these."""
        return (each for each in self.elements() if each.type == "switch")

    @cached_property
    def elements_at(self) -> dict[Terminal, list[Element]]:
        """The elements at each port, by the terminal that stands for it; bonds left out."""
        at: dict[Terminal, list[Element]] = {}
        for element in self.elements():
            if element.type != "bond":
                for end in (element.a, element.b):
                    at.setdefault(self.lead(end), []).append(element)
        return at

    def is_live(self, element: Element) -> bool:
        """Whether both ends of an element are wired."""
        return self.is_wired(element.a) and self.is_wired(element.b)

    def is_open_ended(self, net: int) -> bool:
        """Whether a loose or untraced end hangs on a net."""
        return net in self._unknown

    @cached_property
    def grounded(self) -> frozenset[int]:
        """The nets that contacts may join to earth or to the grounded side of a supply."""
        joined: nx.utils.UnionFind[int] = nx.utils.UnionFind(range(len(self.pins)))
        for contact in self.contacts():
            if contact.a in self.net_of and contact.b in self.net_of:
                joined.union(self.net_of[contact.a], self.net_of[contact.b])
        parts = self.diagram.parts.values()
        sides = [self.net_of[end] for part in parts for end in part.with_role(*GROUNDED)]
        sides += [net for net, metal in self.touches.items() if EARTH in metal]
        roots = {joined[net] for net in sides}
        return frozenset(net for net in range(len(self.pins)) if joined[net] in roots)
