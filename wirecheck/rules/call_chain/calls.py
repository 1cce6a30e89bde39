"""How the calls of the burners are made: straight, past the thermostat, on the wrong terminal."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property
from typing import NamedTuple

import networkx as nx

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks
from wirecheck.model.kind import LoadSpec
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.contacts import (
    ContactKey,
    contacts,
    in_text_order,
    is_safety,
    is_thermostat,
    key_of_contact,
    makes_call,
    sides,
)
from wirecheck.rules.call_chain.loops import Loops
from wirecheck.rules.facts import Facts

#: Loads that a thermostat is there to run; what senses or sparks is fed by the control.
_CALLED = frozenset({"coil", "operator", "motor", "lamp", "electronics", "heater", "appliance"})


class OnHot(NamedTuple):
    """A control whose 24 V terminal is fed through what makes the call.

    Attributes:
        call, hot: its terminals for the call and for constant 24 V.
        ahead: the contacts between the supply and the hot terminal.
        chain: the control's call; `Chain.feeds` is empty where nothing reaches it.
    """

    call: Terminal
    hot: Terminal
    ahead: tuple[Element, ...]
    chain: Chain


class Straight(NamedTuple):
    """A burner whose call is one conductor with the hot side of a supply.

    Attributes:
        chain: the burner's.
        hot: the supply's hot terminal.
        past: the safeties and thermostats that should stand between, in the order of the text.
        beside: some of them still do, beside the conductor that leads past.
    """

    chain: Chain
    hot: Terminal
    past: tuple[Element, ...]
    beside: bool


class Calls:
    """What is asked of every call of a diagram, as wired."""

    def __init__(self, facts: Facts) -> None:
        """Look at every control and every thermostat."""
        self._facts = facts.as_wired
        self._burners = facts.once(Burners)
        self.on_hot: tuple[OnHot, ...] = tuple(self._on_hot())
        self.ahead_of_hot: frozenset[ContactKey] = frozenset(
            key_of_contact(contact) for found in self.on_hot for contact in found.ahead
        )

    def _on_hot(self) -> Iterator[OnHot]:
        """Controls called with no thermostat, or not at all, whose hot terminal has one ahead."""
        for chain in self._burners.chains:
            for hot in chain.part.with_role("control-hot"):
                if not self._facts.is_wired(hot) or not self._facts.is_traced(chain.call):
                    continue
                if chain.feeds and not chain.runs_uncalled():
                    continue
                for supply in self._facts.hot_supplies(hot)[:1]:
                    way = self._facts.conduction.way(
                        self._facts.net(supply.hot), self._facts.net(hot)
                    )
                    if any(map(makes_call, way.series)):
                        yield OnHot(chain.call, hot, way.contacts, chain)

    @cached_property
    def straight(self) -> tuple[Straight, ...]:
        """Burners called straight from the hot side, past safeties and thermostats."""
        exchanged = {id(found.chain) for found in self.on_hot}
        found = []
        for chain in self._burners.straight:
            feed = next(feed for feed in chain.feeds if feed.straight)
            rows, idle = self._led_past(feed.hot[0])
            past = in_text_order([*rows, *idle])
            if past and id(chain) not in exchanged:
                found.append(Straight(chain, feed.source[0], tuple(past), bool(rows)))
        return tuple(found)

    def _led_past(self, net: int) -> tuple[list[Element], list[Element]]:
        """Contacts in rows with both ends on a net; thermostats that run nothing, with safeties."""
        graph = self._facts.conduction.contacts
        members = nx.node_connected_component(graph, net) if net in graph else ()
        off_the_ways = [
            contact
            for _a, _b, contact in graph.edges(members, data="element")
            if (is_safety(contact) or is_thermostat(contact)) and not self._burners.on(contact)
        ]
        loops = self._facts.once(Loops)
        rows = [contact for contact in off_the_ways if loops.bridged(contact, {net})]
        others = [contact for contact in off_the_ways if contact not in rows]
        idle = [contact for contact in others if is_thermostat(contact) and self._is_idle(contact)]
        return rows, [c for c in others if is_safety(c) or c in idle] if idle else []

    @cached_property
    def led_past(self) -> frozenset[ContactKey]:
        """What the straight calls lead past."""
        return frozenset(
            key_of_contact(contact) for straight in self.straight for contact in straight.past
        )

    @cached_property
    def idle_thermostats(self) -> tuple[Element, ...]:
        """Heating contacts that run nothing, neither a burner nor another load, and are wired."""
        return tuple(self._idle_thermostats())

    def _idle_thermostats(self) -> Iterator[Element]:
        explained = self.ahead_of_hot | self.led_past
        for contact in contacts(self._facts):
            off = is_thermostat(contact) and not self._burners.on(contact)
            if off and key_of_contact(contact) not in explained and self._is_idle(contact):
                yield contact

    def _is_idle(self, contact: Element) -> bool:
        facts = self._facts
        if contact.net_a == contact.net_b:
            return bool(facts.sides.common_on(contact.a))  # or else something leads past it
        if not any(map(facts.is_wired, sides(facts, contact))):
            return False
        first = self._reached(contact.net_a, contact)
        if contact.net_b in first:
            return False
        second = self._reached(contact.net_b, contact)
        if not all(facts.is_traced(facts.nets.members[net][0]) for net in (*first, *second)):
            return False
        if not self._feeds_from(first) and not self._feeds_from(second):
            return not self._has_load(first) and not self._has_load(second)  # no supply drawn
        return not (
            (self._feeds_from(first) and self._has_load(second))
            or (self._feeds_from(second) and self._has_load(first))
        )

    def _reached(self, net: int, contact: Element) -> set[int]:
        """Nets that contacts may join to one, without going through one thermostat."""
        graph = self._facts.conduction.contacts
        reached, waiting = {net}, [net]
        while waiting:
            here = waiting.pop()
            if here not in graph:
                continue
            for _here, there, element in graph.edges(here, data="element"):
                if element.part is not contact.part and there not in reached:
                    reached.add(there)
                    waiting.append(there)
        return reached

    def _feeds_from(self, nets: set[int]) -> bool:
        return any(element.type == "source" for element in self._beside(nets))

    def _has_load(self, nets: set[int]) -> bool:
        return any(
            isinstance(element.spec, LoadSpec)
            and element.spec.type in _CALLED
            and element.part.family != "thermostat"
            for element in self._beside(nets)
        )

    def _beside(self, nets: set[int]) -> Iterator[Element]:
        elements = self._facts.nets.elements
        for net in nets:
            for _a, _b, element in elements.edges(net, data="element"):
                yield element


def breaks_uncalled(chain: Chain, *, past_safeties: bool) -> Breaks:
    """What a call that nobody makes breaks: with a safety left to stop the burner it cycles on it.

    Args:
        chain: of the burner.
        past_safeties: whether the same mistake leads past safeties.
    """
    limited = any(
        is_safety(contact) and chain.is_stopped_by(contact) for contact in chain.contacts.values()
    )
    return Breaks.OPERATION if limited and not past_safeties else Breaks.SAFETY
