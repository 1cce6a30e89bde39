"""Nets after some leads were changed: worked out from those before, where the leads land.

A search tries thousands of changes of one diagram, each of which touches two or three of its nets;
the others are the same.  What is the same is shared, so neither may be written to.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import EARTH, Diagram, Terminal


class ChangedNets(Nets):
    """As `Nets`, for a diagram that is another one with some leads changed.

    The numbers of the nets are not in the order of the text: those without a change keep theirs
    where they can.
    """

    def __init__(self, before: Nets, diagram: Diagram, touched: Iterable[Terminal]) -> None:
        """Join anew what was one conductor with a terminal where a lead came off or landed.

        Args:
            before: the nets of the diagram as it was.
            diagram: the same parts and splices, with other leads.
            touched: the terminals where a lead came off or landed; all of them named in both.
        """
        self.diagram = diagram
        nets = dict.fromkeys(before.net_of[terminal] for terminal in touched)
        terminals = [terminal for net in nets for terminal in before.members[net]]
        self.members = list(before.members)
        self.net_of = dict(before.net_of)
        free = list(nets)
        for members in self._conductors_among(terminals):
            if not free:
                free = [len(self.members)]
                self.members.append([])
            self._number(members, free.pop())
        for number in sorted(free, reverse=True):
            last = self.members.pop()
            if number < len(self.members):
                self._number(last, number)
                terminals += last
        self.elements_of = dict(before.elements_of)
        for key in self._parts_at(terminals):
            if self.elements_of.get(key):
                self.elements_of[key] = list(self.elements_inside(diagram.parts[key]))

    def _parts_at(self, terminals: list[Terminal]) -> Iterator[str]:
        """The parts of some terminals; at earth also those bonded to it."""
        keys = dict.fromkeys(terminal.part for terminal in terminals)
        yield from keys
        if EARTH.part in keys:
            yield from (key for key, part in self.diagram.parts.items() if part.structure.bonds)

    def _number(self, members: list[Terminal], number: int) -> None:
        self.members[number] = members
        self.net_of.update(dict.fromkeys(members, number))

    def _conductors_among(self, terminals: list[Terminal]) -> Iterator[list[Terminal]]:
        """The nets that some terminals make, which nothing joins to others."""
        beside: dict[Terminal, list[Terminal]] = {terminal: [] for terminal in terminals}
        for a, b in self._joined(beside):
            beside[a].append(b)
            beside[b].append(a)
        seen: set[Terminal] = set()
        for start in terminals:
            if start not in seen:
                seen.add(start)
                members = [start]
                for here in members:
                    for there in beside[here]:
                        if there not in seen:
                            seen.add(there)
                            members.append(there)
                yield members

    def _joined(self, among: dict[Terminal, list[Terminal]]) -> Iterator[tuple[Terminal, Terminal]]:
        for lead in self.diagram.leads:
            if lead.a in among:
                if lead.conducts:
                    yield lead.a, lead.b
                if "touches" in lead.given:
                    yield lead.a, EARTH
        for key in dict.fromkeys(terminal.part for terminal in among):
            part = self.diagram.parts.get(key)
            if part is not None:
                for link in part.structure.links:
                    a, b = part.terminal(link.between[0]), part.terminal(link.between[1])
                    if a in among:
                        yield a, b
