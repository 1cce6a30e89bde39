"""Contacts of a call with a lead at one side alone, and the burner that misses them."""

from __future__ import annotations

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Terminal
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.contacts import makes_call
from wirecheck.rules.facts import Facts


def in_call(facts: Facts, end: Terminal) -> Chain | None:
    """The burner that is not called, or with nothing calling, beside the contact of a call."""
    sides = facts.sides
    for contact in facts.nets.elements_of[end.part]:
        if contact.type != "switch" or not makes_call(contact):
            continue
        is_meant = contact.part.family != "thermostat" and end in _outer_sides(facts, contact)
        for chain in facts.once(Burners).chains if is_meant else ():
            others = [o for o in _outer_sides(facts, contact) if facts.is_wired(o)]
            joins = any(
                sides.may_join(other, chain.call) or sides.hot_beyond(other) for other in others
            )
            if joins and (not chain.feeds or chain.runs_uncalled()):
                return chain
    return None


def _outer_sides(facts: Facts, contact: Element) -> list[Terminal]:
    """The terminals on which leads land at both sides of a contact, past points inside."""
    found = []
    elements = facts.nets.elements_of[contact.part.key]
    for side in (contact.a, contact.b):
        spec = facts.diagram.spec(side)
        if spec is not None and not spec.inner:
            found.append(side)
            continue
        found += [
            other.b if side == other.a else other.a
            for other in elements
            if other.type == "switch" and other is not contact and side in (other.a, other.b)
        ]
    return found


def call_leads(facts: Facts, chain: Chain) -> tuple[int, ...]:
    """The leads of the way by which a call arrives, or of where it should."""
    if not chain.feeds:
        return tuple(facts.nets.leads_at(chain.call))
    trace = facts.sides.trace(chain.feeds[0].source[0], chain.call)
    return trace.leads if trace else ()
