"""Where each safety of a diagram stands, seen from the burners it should stop."""

from __future__ import annotations

from enum import Enum
from typing import NamedTuple

import networkx as nx

from wirecheck.circuit.nets import Element
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.contacts import (
    contacts,
    is_drawn,
    is_safety,
    key_of_contact,
    sides,
)
from wirecheck.rules.call_chain.loops import Bridged, Loops
from wirecheck.rules.call_chain.valve_circuit import ValveCircuit
from wirecheck.rules.facts import Facts


class Standing(Enum):
    """What the opening of a safety does.

    STOPS: it stops a burner.  PAST: a burner's call gets past it another way.  BRIDGED: a
    conductor leads past it.  AT_VALVE: it cuts a valve behind the control's back.  NOWHERE: it
    is ahead of no burner.  EMPTY: a side of it has no lead.  UNJUDGED: too little is drawn.
    """

    STOPS = "stops"
    PAST = "past"
    BRIDGED = "bridged"
    AT_VALVE = "at valve"
    NOWHERE = "nowhere"
    EMPTY = "empty"
    UNJUDGED = "unjudged"


class Safety(NamedTuple):
    """A safety's contact and where it stands.

    Attributes:
        contact: the contact.
        standing: what its opening does.
        chain: the burner whose call gets past it, if one does.
        bridged: how a conductor leads past it, if one does.
    """

    contact: Element
    standing: Standing
    chain: Chain | None = None
    bridged: Bridged | None = None


class Safeties:
    """Every safety contact of the diagram, in the order of the text."""

    def __init__(self, facts: Facts) -> None:
        """Place them all; leads found broken count as landed."""
        self._facts = facts.as_wired
        self._burners = facts.once(Burners)
        self._loops = facts.once(Loops)
        self._at_valve = facts.once(ValveCircuit).safeties
        self._called = any(chain.feeds for chain in self._burners.chains)
        self.all: tuple[Safety, ...] = tuple(
            self._place(contact) for contact in contacts(self._facts) if is_safety(contact)
        )

    def standing(self, *which: Standing) -> list[Safety]:
        """Those that stand so."""
        return [safety for safety in self.all if safety.standing in which]

    def _place(self, contact: Element) -> Safety:
        bridged = self._loops.bridged(contact, ()) if contact.net_a == contact.net_b else None
        if bridged:
            return Safety(contact, Standing.BRIDGED, bridged=bridged)
        chains = self._burners.on(contact)
        if any(chain.is_stopped_by(contact) for chain in chains):
            return Safety(contact, Standing.STOPS)
        if chains:
            return Safety(contact, Standing.PAST, chains[0])
        if key_of_contact(contact) in self._at_valve:
            return Safety(contact, Standing.AT_VALVE)
        if self._burners.is_unjudged(contact) or not self._called:
            return Safety(contact, Standing.UNJUDGED)
        return self._off_every_way(contact)

    def _off_every_way(self, contact: Element) -> Safety:
        if not is_drawn(self._facts, contact):
            return Safety(contact, Standing.EMPTY)
        if not self._is_traced(contact):
            return Safety(contact, Standing.UNJUDGED)
        bridged = self._loops.bridged(contact, self._burners.nets)
        if bridged:
            return Safety(contact, Standing.BRIDGED, bridged=bridged)
        return Safety(contact, Standing.NOWHERE)

    def _is_traced(self, contact: Element) -> bool:
        """Whether every net that contacts may join to it was traced."""
        graph = self._facts.conduction.contacts
        region = nx.node_connected_component(graph, contact.net_a) if contact.net_a in graph else ()
        members = self._facts.nets.members
        return all(self._facts.is_traced(members[net][0]) for net in region) and all(
            self._facts.is_traced(side) for side in sides(self._facts, contact)
        )
