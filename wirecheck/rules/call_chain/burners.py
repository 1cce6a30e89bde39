"""The burners of a diagram, each with the chain on which its call hangs."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cached_property

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Part
from wirecheck.model.kind import LoadSpec
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.contacts import ContactKey, key_of_contact
from wirecheck.rules.facts import Facts


class Burners:
    """What is there to be stopped: ignition controls, boiler calls, valves without a control."""

    def __init__(self, facts: Facts) -> None:
        """Follow each one's call; ``facts`` may have leads found broken, which count as landed."""
        self.facts = facts.as_wired
        self.chains: tuple[Chain, ...] = tuple(self._chains())
        self._on: dict[ContactKey, list[Chain]] = {}
        self._unjudged: set[ContactKey] = set()
        for chain in self.chains:
            for key in chain.contacts:
                self._on.setdefault(key, []).append(chain)
            self._unjudged |= chain.unjudged

    def _chains(self) -> Iterator[Chain]:
        found = False
        for chain in (*self._of_controls(), *self._called_directly()):
            found = True
            yield chain
        if not found:
            for part in self.facts.of("boiler-control"):
                yield from self._of_loads(part, "coil")

    def _of_controls(self) -> Iterator[Chain]:
        for control in self.facts.of("ignition-control"):
            (call,) = control.with_role("call")
            (common,) = control.with_role("control-common")
            yield Chain(self.facts, control, call, common, *control.with_role("damper-proved"))

    def _called_directly(self) -> Iterator[Chain]:
        """Boilers with a call of their own, and gas valves that no ignition control drives."""
        controlled = {
            valve.key
            for control in self.facts.of("ignition-control")
            if (valve := self.facts.companion(control, "gas-valve"))
        }
        for valve in self.facts.of("gas-valve"):
            if valve.key not in controlled:
                for chain in self._of_loads(valve, "operator"):
                    if all(c.part.family != "ignition-control" for c in chain.contacts.values()):
                        yield chain
        for call in self.facts.of("boiler-call"):
            yield from self._of_loads(call, "coil")

    def _of_loads(self, part: Part, type_: str) -> Iterator[Chain]:
        for element in self.facts.nets.elements_of[part.key]:
            if isinstance(element.spec, LoadSpec) and element.spec.type == type_:
                yield Chain(self.facts, part, element.a, element.b)

    def on(self, contact: Element) -> list[Chain]:
        """The burners that a contact stands ahead of, on some way at least."""
        return self._on.get(key_of_contact(contact), [])

    @cached_property
    def nets(self) -> frozenset[int]:
        """Nets on the ways of the burners."""
        found: set[int] = set()
        for chain in self.chains:
            for contact in chain.contacts.values():
                found |= {contact.net_a, contact.net_b}
            for feed in chain.feeds:
                for way in feed.ways:
                    found |= set(way)
        return frozenset(found)

    @cached_property
    def straight(self) -> tuple[Chain, ...]:
        """Burners whose call is one conductor with the hot side of a supply."""
        return tuple(chain for chain in self.chains if any(feed.straight for feed in chain.feeds))

    def is_on_straight(self, net: int) -> bool:
        """Whether a net is the hot side of a supply and the call of a burner at once."""
        return net in self._straight_nets

    @cached_property
    def _straight_nets(self) -> frozenset[int]:
        return frozenset(
            feed.hot[0] for chain in self.straight for feed in chain.feeds if feed.straight
        )

    def is_unjudged(self, contact: Element) -> bool:
        """Whether it may act on something whose supply is not drawn."""
        return key_of_contact(contact) in self._unjudged
