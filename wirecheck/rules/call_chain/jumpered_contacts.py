"""Contacts of relays and end switches that a conductor leads past, and what they made act."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.circuit.nets import Element
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.contacts import (
    ContactKey,
    contacts,
    is_drawn,
    is_safety,
    key_of_contact,
    switch,
)
from wirecheck.rules.call_chain.loops import Bridged, Loops
from wirecheck.rules.facts import Facts


class JumperedContact(NamedTuple):
    """A contact with both sides on one conductor; ``safeties`` act on no burner but through it."""

    row: Bridged
    safeties: tuple[Element, ...]

    @property
    def contact(self) -> Element:
        """The contact."""
        return self.row.contacts[0]


class JumperedContacts:
    """Every such contact of a diagram, as wired."""

    def __init__(self, facts: Facts) -> None:
        """Look at every contact that a coil or a motor closes."""
        self._facts, self._burners = facts.as_wired, facts.once(Burners)
        self._loops = facts.once(Loops)
        self.all: tuple[JumperedContact, ...] = tuple(self._find())
        self._behind = {key_of_contact(found.contact): found.safeties for found in self.all}
        self._safeties = {key_of_contact(s) for found in self.all for s in found.safeties}

    def behind(self, contact: Element) -> tuple[Element, ...]:
        """The safeties that act through one of them alone."""
        return self._behind[key_of_contact(contact)]

    def explains(self, safety: ContactKey) -> bool:
        """Whether a safety acts on nothing because of one of them."""
        return safety in self._safeties

    def _find(self) -> Iterator[JumperedContact]:
        for contact in contacts(self._facts):
            spec = switch(contact)
            driven = spec.coil is not None and spec.normal == "open"
            if driven and contact.net_a == contact.net_b and is_drawn(self._facts, contact):
                row = self._loops.bridged(contact, ())
                if row:
                    yield JumperedContact(row, tuple(self._safeties_ahead(contact)))

    def _safeties_ahead(self, contact: Element) -> Iterator[Element]:
        for element in self._facts.nets.elements_of[contact.part.key]:
            if element.type == "load" and element.name == switch(contact).coil:
                chain = Chain(self._facts, contact.part, element.a, element.b)
                for ahead in chain.contacts.values() if chain.feeds else ():
                    if is_safety(ahead) and not self._burners.on(ahead):
                        yield ahead
