"""Contacts that would close on a call or on heat, and lead from a hot leg to nothing."""

from __future__ import annotations

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Terminal
from wirecheck.rules.call_chain.contacts import contacts, switch
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs


def idle_contacts(facts: Facts) -> tuple[Element, ...]:
    """Those of relays and fan contacts; use it as ``facts.once(idle_contacts)``."""
    return tuple(contact for contact in contacts(facts) if _is_idle(facts, contact))


def idle_ends(facts: Facts) -> tuple[Terminal, ...]:
    """Their sides without a lead; use it as ``facts.once(idle_ends)``."""
    return tuple(empty_side(facts, contact) for contact in facts.once(idle_contacts))


def empty_side(facts: Facts, contact: Element) -> Terminal:
    """The side of an idle contact that has no lead."""
    return contact.a if facts.is_wired(contact.b) else contact.b


def _is_idle(facts: Facts, contact: Element) -> bool:
    spec = switch(contact)
    if spec.normal != "open" or not (spec.coil or spec.moved_by == "temperature"):
        return False
    at = [end for end in (contact.a, contact.b) if facts.is_wired(end)]
    return len(at) == 1 and facts.once(Legs).is_hot(at[0])
