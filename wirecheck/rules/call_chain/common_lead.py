"""Contacts in the common lead of a burner's circuit, where none belongs."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Terminal
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.contacts import ContactKey, key_of_contact
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import Source

#: What the standards say of contacts in the common lead.
SOURCES = (
    Source("NFPA 79", "standard", "9.1.4"),
    Source("IEC 60204-1", "standard", "9.4.3"),
)


class InCommon(NamedTuple):
    """Contacts between a supply's common and the common side of what it feeds.

    Attributes:
        contacts: in the order of the current.
        supply, load: the two terminals they should not stand between.
        bypassed: both ends reach earth, which carries the current past the contacts.
    """

    contacts: tuple[Element, ...]
    supply: Terminal
    load: Terminal
    bypassed: bool


class CommonLeads:
    """Every such lead of a diagram, as wired."""

    def __init__(self, facts: Facts) -> None:
        """Look at the burners, and at the coils on which their calls hang."""
        self._facts = facts.as_wired
        self.all: tuple[InCommon, ...] = tuple(self._find(facts.once(Burners)))
        self._keys = {key_of_contact(c) for found in self.all for c in found.contacts}

    def holds(self, contact: Element) -> bool:
        """Whether a contact stands in such a lead."""
        return key_of_contact(contact) in self._keys

    def _find(self, burners: Burners) -> Iterator[InCommon]:
        said: set[tuple[ContactKey, ...]] = set()
        for chain in burners.chains:
            for load, supply in self._commons(chain):
                found = self._between(supply, load)
                if found:
                    keys = tuple(map(key_of_contact, found.contacts))
                    if keys not in said:
                        said.add(keys)
                        yield found

    def _commons(self, chain: Chain) -> Iterator[tuple[Terminal, Terminal]]:
        """The common side of the burner and of each coil on its call, with the supply's.

        A coil that is on the hot side itself is switched in its common alone: told of the coil.
        """
        for feed in chain.feeds:
            if feed.common is not None and not feed.reversed:
                yield chain.common, feed.source[1]
        for coil, feeds in chain.coils():
            for feed in feeds:
                on_hot = feed.hot[0] == feed.hot[1]
                if feed.common is not None and not on_hot and self._is_24_v(coil.a):
                    yield coil.a if feed.reversed else coil.b, feed.source[1]

    def _is_24_v(self, terminal: Terminal) -> bool:
        spec = self._facts.diagram.spec(terminal)
        return spec is not None and spec.circuit == "24V"

    def _between(self, supply: Terminal, load: Terminal) -> InCommon | None:
        sides = self._facts.sides
        if sides.same(supply, load):
            return None
        trace = sides.trace(supply, load)
        if trace is None or not trace.contacts:
            return None
        grounded = self._facts.is_grounded
        return InCommon(trace.contacts, supply, load, grounded(supply) and grounded(load))
