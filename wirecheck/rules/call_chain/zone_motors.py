"""Zone valves whose motor is fed whether or not a thermostat calls."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.circuit.nets import Element
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.contacts import contacts, is_thermostat, switch
from wirecheck.rules.facts import Facts


class AlwaysFed(NamedTuple):
    """A motor that a supply feeds with no call."""

    motor: Element
    chain: Chain


def always_fed(facts: Facts) -> tuple[AlwaysFed, ...]:
    """Motors of zone valves fed with no call, in a diagram that has thermostats."""
    wired = facts.as_wired
    thermostats = list(filter(is_thermostat, contacts(wired)))
    joined = {contact.net_a for contact in thermostats if contact.net_a == contact.net_b}
    return tuple(_find(wired, joined)) if thermostats else ()


def _find(facts: Facts, joined: set[int]) -> Iterator[AlwaysFed]:
    """Look at every zone valve; ``joined`` are nets that a bypassed thermostat accounts for."""
    for part in facts.of("zone-valve"):
        for motor in facts.nets.elements_of[part.key]:
            if motor.type != "load":
                continue
            chain = Chain(facts, part, motor.a, motor.b)
            on_it = chain.contacts.values()
            accounted = any({*feed.hot} & joined for feed in chain.feeds)
            switched = any(is_thermostat(c) or _by_hand(chain, c) for c in on_it)
            brought_back = any(feed.common for feed in chain.feeds)
            if brought_back and not accounted and not switched and chain.runs_uncalled():
                yield AlwaysFed(motor, chain)


def _by_hand(chain: Chain, contact: Element) -> bool:
    """Whether a hand opens the valve; the switch of the whole unit is not there for that."""
    return switch(contact).moved_by == "hand" and chain.is_direct(contact)
