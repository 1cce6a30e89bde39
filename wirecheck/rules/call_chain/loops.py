"""Contacts that conductors bridge: both ends of one contact, or of several in a row, on one net."""

from __future__ import annotations

from collections import deque
from collections.abc import Container
from typing import NamedTuple

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Terminal
from wirecheck.rules.facts import Facts


class Bridged(NamedTuple):
    """Contacts in a row that a conductor leads past.

    Attributes:
        contacts: in the order of the row, at least one.
        ends: the terminals at the two ends of the row, one conductor.
        net: that conductor.
    """

    contacts: tuple[Element, ...]
    ends: tuple[Terminal, Terminal]
    net: int


class Loops:
    """Finds what is bridged, on the diagram as wired."""

    def __init__(self, facts: Facts) -> None:
        """Nothing is looked for before it is asked for."""
        self.facts = facts.as_wired

    def bridged(self, contact: Element, chain_nets: Container[int]) -> Bridged | None:
        """The row of contacts, this one in it, that a conductor of some chain leads past.

        Args:
            contact: one that stands on no way of a burner.
            chain_nets: nets on the ways of burners; a row that no such net bridges is no bypass.
        """
        if contact.net_a == contact.net_b:
            own = Bridged((contact,), (contact.a, contact.b), contact.net_a)
            return own if self._leads_past(own) else None
        row = self._row(contact, chain_nets)
        return row if row and self._leads_past(row) else None

    def _leads_past(self, row: Bridged) -> bool:
        """Whether the conductor is a bypass: not through the earth alone, nor itself the common.

        What hangs on the common with both its ends was never in the call: no lead there comes off.
        """
        sides = self.facts.sides
        return sides.same(*row.ends) and not sides.common_on(row.ends[0])

    def _row(self, contact: Element, chain_nets: Container[int]) -> Bridged | None:
        """Contacts round from one side of a contact to the other, opened at a net of a chain."""
        row = [contact, *self._back(contact)]
        if len(row) == 1:
            return None
        for number, (left, right) in enumerate(zip(row, [*row[1:], row[0]], strict=True)):
            shared = {left.net_a, left.net_b} & {right.net_a, right.net_b}
            for net in sorted(shared):
                if net in chain_nets:
                    opened = (*row[number + 1 :], *row[: number + 1])
                    return Bridged(opened, (_side(right, net), _side(left, net)), net)
        return None

    def _back(self, contact: Element) -> list[Element]:
        """Contacts on a shortest way from its second side round to its first, without itself."""
        graph = self.facts.conduction.contacts
        reached: dict[int, tuple[int, Element] | None] = {contact.net_b: None}
        waiting = deque([contact.net_b])
        while waiting and contact.net_a not in reached:
            net = waiting.popleft()
            for _net, neighbour, element in graph.edges(net, data="element"):
                if neighbour not in reached and element is not contact:
                    reached[neighbour] = (net, element)
                    waiting.append(neighbour)
        found: list[Element] = []
        step = reached.get(contact.net_a)
        while step is not None:
            net, element = step
            found.append(element)
            step = reached[net]
        return found[::-1]


def _side(contact: Element, net: int) -> Terminal:
    return contact.a if contact.net_a == net else contact.b
