"""Which contacts stand between a supply and something that takes current.

A contact can have a lead on both sides and still be in no circuit: one side on a conductor that no
supply reaches, or that belongs to a supply which has no way back from what is on the other side.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

import networkx as nx

from wirecheck.circuit.nets import Element
from wirecheck.rules.call_chain.contacts import ContactKey, key_of_contact
from wirecheck.rules.facts import Facts

#: In the place of a net: whatever a supply can feed in a region.
_FED = -1


class _Taker(NamedTuple):
    """Something that takes current between two nets; ``open``: not all of it is drawn."""

    a: int
    b: int
    open: bool


class Circuits:
    """The contacts of a diagram by whether they are in a circuit; use it as ``facts.once``."""

    def __init__(self, facts: Facts) -> None:
        """Collect supplies and what takes current, by regions; linear in the parts."""
        self._facts = facts
        self._poles: dict[int, dict[int, set[int]]] = {}
        self._takers: dict[int, list[_Taker]] = {}
        loads: list[Element] = []
        for elements in facts.nets.elements_of.values():
            for element in elements:
                if element.type == "source":
                    self._add_source(element)
                elif element.type == "load":
                    loads.append(element)
        for load in loads:
            self._add_taker(_Taker(load.net_a, load.net_b, self._is_open(load)))
        for part in facts.diagram.parts.values():
            for spec in part.structure.sources:
                for one, other in spec.fed_by:
                    ends = (facts.net(part.terminal(one)), facts.net(part.terminal(other)))
                    self._add_taker(_Taker(*ends, open=False))
        self._holding: dict[int, frozenset[ContactKey]] = {}

    def _add_source(self, source: Element) -> None:
        region = self._facts.conduction.region
        for pole, other in ((source.net_a, source.net_b), (source.net_b, source.net_a)):
            self._poles.setdefault(region(pole), {}).setdefault(pole, set()).add(region(other))

    def _add_taker(self, taker: _Taker) -> None:
        region = self._facts.conduction.region
        for here in {region(taker.a), region(taker.b)}:
            self._takers.setdefault(here, []).append(taker)

    def is_fed(self, contact: Element) -> bool:
        """Whether a supply reaches the region of a contact, and feeds something there."""
        region = self._facts.conduction.region(contact.net_a)
        poles = self._poles.get(region, {})
        return any(net != pole for pole, back in poles.items() for net in self._fed(region, back))

    def holds(self, contact: Element) -> bool:
        """Whether a contact is on a way without loops from a supply to what it can feed."""
        region = self._facts.conduction.region(contact.net_a)
        if region not in self._holding:
            self._holding[region] = frozenset(self._on_ways(region, contact.net_a))
        return key_of_contact(contact) in self._holding[region]

    def _on_ways(self, region: int, start: int) -> Iterator[ContactKey]:
        graph = self._facts.conduction.contacts
        members = nx.node_connected_component(graph, start)
        for pole, back in self._poles.get(region, {}).items():
            fed = set(self._fed(region, back)) & members
            closing = nx.Graph(graph.subgraph(members))
            closing.add_edges_from((_FED, net) for net in fed)
            closing.add_edge(_FED, pole)
            for nodes in nx.biconnected_components(closing):
                if {_FED, pole} <= nodes:
                    for _a, _b, contact in graph.subgraph(nodes - {_FED}).edges(data="element"):
                        yield key_of_contact(contact)

    def _fed(self, region: int, back: set[int]) -> Iterable[int]:
        """Nets of a region with a load on them that goes back to one of some regions."""
        of = self._facts.conduction.region
        for taker in self._takers.get(region, ()):
            for here, there in ((taker.a, taker.b), (taker.b, taker.a)):
                if of(here) == region and (taker.open or of(there) in back or self._is_dry(there)):
                    yield here

    def _is_dry(self, net: int) -> bool:
        """Whether no supply reaches a net: what a load goes back to is not drawn."""
        return self._facts.conduction.region(net) not in self._poles

    def _is_open(self, load: Element) -> bool:
        """Whether a side of a load has no lead nor a supply of its own, or one not traced."""
        facts, region = self._facts, self._facts.conduction.region
        for end in (load.a, load.b):
            spec, net = facts.diagram.spec(end), facts.net(end)
            if spec is None or spec.inner or net in self._poles.get(region(net), ()):
                continue
            if not (facts.is_wired(end) and facts.is_traced(end)):
                return True
        return False
