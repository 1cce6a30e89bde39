"""The chain of contacts that feeds something, in the order of the current."""

from __future__ import annotations

from collections import deque
from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.circuit.conduction import Conduction
from wirecheck.circuit.netlist import ElementKey
from wirecheck.circuit.nets import Element, Nets
from wirecheck.model.diagram import Terminal
from wirecheck.model.kind import LoadSpec, SwitchSpec


class Link(NamedTuple):
    """One contact of a chain, from its side nearer to the supply."""

    key: ElementKey
    contact: Element
    near: Terminal
    far: Terminal


class Chain(NamedTuple):
    """What feeds two terminals.

    Attributes:
        source: behind it.
        feed: the source's terminal that the chain begins at.
        back: its other terminal.
        hot, common: the two that are fed.
        links: the contacts between ``feed`` and ``hot``, in the order of the current.
        returns: those between ``common`` and ``back``.
    """

    source: Element
    feed: Terminal
    back: Terminal
    hot: Terminal
    common: Terminal
    links: tuple[Link, ...]
    returns: tuple[Link, ...]

    @property
    def all_links(self) -> tuple[Link, ...]:
        """The contacts on both sides."""
        return (*self.links, *self.returns)


class Chains:
    """Finds chains in one diagram."""

    def __init__(self, nets: Nets, conduction: Conduction) -> None:
        """Note the supplies and the number of each contact."""
        self._nets = nets
        self._conduction = conduction
        self._keys = {
            id(element): ElementKey(part, number)
            for part, elements in nets.elements_of.items()
            for number, element in enumerate(elements)
        }
        self._supplies = [
            element
            for elements in nets.elements_of.values()
            for element in elements
            if element.type == "source" and element.part.family != "mains"
        ]

    def key_of(self, element: Element) -> ElementKey:
        """The key of an element of these nets."""
        return self._keys[id(element)]

    def to(self, hot: Terminal, common: Terminal) -> Chain | None:
        """The chain that feeds two terminals: the one with the fewest contacts."""
        found = [
            chain
            for source in self._supplies
            for feed, back in ((source.a, source.b), (source.b, source.a))
            if (chain := self._from(source, feed, back, hot, common))
        ]
        return min(found, key=lambda chain: len(chain.all_links), default=None)

    def _from(
        self, source: Element, feed: Terminal, back: Terminal, hot: Terminal, common: Terminal
    ) -> Chain | None:
        net = self._nets.net
        there = self._conduction.way(net(feed), net(hot))
        home = self._conduction.way(net(back), net(common))
        if not there.exists or not home.exists:
            return None
        links = tuple(self._in_order(net(feed), there.contacts))
        returns = tuple(self._in_order(net(back), home.contacts))
        return Chain(source, feed, back, hot, common, links, returns)

    def _in_order(self, start: int, contacts: tuple[Element, ...]) -> Iterator[Link]:
        """Contacts by how many of them lie between them and the start."""
        beside: dict[int, list[Element]] = {}
        for contact in contacts:
            beside.setdefault(contact.net_a, []).append(contact)
            beside.setdefault(contact.net_b, []).append(contact)
        seen, told = {start}, set[int]()
        waiting = deque([start])
        while waiting:
            here = waiting.popleft()
            for contact in beside.get(here, ()):
                if id(contact) in told:
                    continue
                told.add(id(contact))
                forward = contact.net_a == here
                near, far = (contact.a, contact.b) if forward else (contact.b, contact.a)
                yield Link(self.key_of(contact), contact, near, far)
                there = contact.net_b if forward else contact.net_a
                if there not in seen:
                    seen.add(there)
                    waiting.append(there)

    def behind(self, chain: Chain) -> Iterator[tuple[Element, Chain | None]]:
        """The coils and motors that move the contacts of a chain, each with what feeds it."""
        waiting, seen = list(chain.all_links), set[int]()
        while waiting:
            link = waiting.pop(0)
            coil = self._mover(link.contact)
            if coil is None or id(coil) in seen:
                continue
            seen.add(id(coil))
            fed = self.coil_chain(coil)
            yield coil, fed
            waiting += fed.all_links if fed else ()

    def coil_chain(self, coil: Element) -> Chain | None:
        """What feeds a coil, its terminals taken either way round."""
        found = [self.to(coil.a, coil.b), self.to(coil.b, coil.a)]
        whole = [chain for chain in found if chain]
        return min(whole, key=lambda chain: len(chain.returns), default=None)

    def _mover(self, contact: Element) -> Element | None:
        spec = contact.spec
        if not isinstance(spec, SwitchSpec) or spec.moved_by not in ("coil", "motor"):
            return None
        loads = [each for each in self._nets.elements_of[contact.part.key] if each.type == "load"]
        named = [each for each in loads if each.name == spec.coil]
        motors = [each for each in loads if is_motor(each)]
        return next(iter(named or motors), None)


def is_motor(load: Element) -> bool:
    """Whether a load turns something."""
    return isinstance(load.spec, LoadSpec) and load.spec.type == "motor"


def name_of(contact: Element) -> str:
    """A contact for people: its part, with the contact's own name where that tells more."""
    part, name = contact.part, contact.name
    several = len(part.structure.switches) > 1 and part.family != "thermostat"
    return f"{part.name} {name}" if several and name else part.name
