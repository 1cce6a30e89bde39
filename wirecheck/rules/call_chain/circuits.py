"""Which contacts stand between a supply and something that takes current.

A contact can have a lead on both sides and still be in no circuit: one side on a conductor that no
supply reaches, or that belongs to a supply which has no way back from what is on the other side.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import Final, NamedTuple

import networkx as nx

from wirecheck.circuit.nets import Element
from wirecheck.model.kind import LoadSpec
from wirecheck.rules.call_chain.contacts import ContactKey, key_of_contact
from wirecheck.rules.facts import Facts

#: Loads of the ignition and flame leads, which no contact feeds.
_IGNITION: Final = frozenset({"spark-coil", "amplifier"})

#: So many terminals of a conductor are looked at for a lead: a larger one has some.
_MOST_LOOKED_AT: Final = 40

#: In the place of a net: whatever a supply can feed in a region.
_FED = -1


class _Taker(NamedTuple):
    """Something that takes current between two nets; ``open``: not all of it is drawn."""

    part: str
    a: int
    b: int
    open: bool


class Circuits:
    """The contacts of a diagram by whether they are in a circuit; use it as ``facts.once``."""

    def __init__(self, facts: Facts) -> None:
        """Collect supplies and what takes current, by regions; linear in the parts."""
        self._facts = facts
        self._poles: dict[int, dict[int, set[int]]] = {}
        self._own: set[tuple[int, str]] = set()
        self._takers: dict[int, list[_Taker]] = {}
        loads: list[Element] = []
        for elements in facts.nets.elements_of.values():
            for element in elements:
                if element.type == "source":
                    self._add_source(element)
                elif isinstance(element.spec, LoadSpec) and element.spec.type not in _IGNITION:
                    loads.append(element)
        for load in loads:
            taker = _Taker(load.part.key, load.net_a, load.net_b, self._is_open(load))
            self._add_taker(taker)
        for part in facts.diagram.parts.values():
            for spec in part.structure.sources:
                for one, other in spec.fed_by:
                    ends = (facts.net(part.terminal(one)), facts.net(part.terminal(other)))
                    self._add_taker(_Taker(part.key, *ends, open=False))
        self._is_fed: dict[int, bool] = {}
        self._holding: dict[tuple[int, str], frozenset[ContactKey]] = {}

    def _add_source(self, source: Element) -> None:
        region = self._facts.conduction.region
        for pole, other in ((source.net_a, source.net_b), (source.net_b, source.net_a)):
            self._poles.setdefault(region(pole), {}).setdefault(pole, set()).add(region(other))

    def _add_taker(self, taker: _Taker) -> None:
        region = self._facts.conduction.region
        for here in {region(taker.a), region(taker.b)}:
            self._takers.setdefault(here, []).append(taker)
            self._own.add((here, taker.part))

    def is_fed(self, contact: Element) -> bool:
        """Whether a supply reaches the region of a contact, and feeds something there."""
        region = self._facts.conduction.region(contact.net_a)
        if region not in self._is_fed:
            poles = self._poles.get(region, {})
            self._is_fed[region] = any(
                net != pole for pole, back in poles.items() for net in self._fed(region, back, "")
            )
        return self._is_fed[region]

    def holds(self, contact: Element) -> bool:
        """Whether a contact is on a way without loops from a supply to what it can feed.

        An end switch is there to call something else than the motor that moves it.
        """
        region = self._facts.conduction.region(contact.net_a)
        own = contact.part.key if contact.part.family == "zone-valve" else ""
        if (region, own) not in self._own:
            own = ""
        if (region, own) not in self._holding:
            found = self._on_ways(region, contact.net_a, own)
            self._holding[region, own] = frozenset(found)
        return key_of_contact(contact) in self._holding[region, own]

    def _on_ways(self, region: int, start: int, without: str) -> Iterator[ContactKey]:
        graph = self._facts.conduction.contacts
        members = nx.node_connected_component(graph, start)
        for pole, back in self._poles.get(region, {}).items():
            fed = set(self._fed(region, back, without)) & members
            closing = nx.Graph(graph.subgraph(members))
            closing.add_edges_from((_FED, net) for net in fed)
            closing.add_edge(_FED, pole)
            for nodes in nx.biconnected_components(closing):
                if {_FED, pole} <= nodes:
                    for _a, _b, contact in graph.subgraph(nodes - {_FED}).edges(data="element"):
                        yield key_of_contact(contact)

    def _fed(self, region: int, back: set[int], without: str) -> Iterable[int]:
        """Nets of a region with a load on them that goes back to one of some regions.

        Those of one part are left out.
        """
        of = self._facts.conduction.region
        for taker in self._takers.get(region, ()):
            if taker.part == without:
                continue
            for here, there in ((taker.a, taker.b), (taker.b, taker.a)):
                if of(here) == region and (taker.open or of(there) in back or self._is_dry(there)):
                    yield here

    def _is_dry(self, net: int) -> bool:
        """Whether no supply reaches a net: what a load goes back to is not drawn."""
        return self._facts.conduction.region(net) not in self._poles

    def _is_open(self, load: Element) -> bool:
        """Whether a side of a load has no lead nor a supply of its own, or one not traced."""
        facts, region = self._facts, self._facts.conduction.region
        for end, net in ((load.a, load.net_a), (load.b, load.net_b)):
            spec = facts.diagram.spec(end)
            if spec is None or spec.inner or net in self._poles.get(region(net), ()):
                continue
            if not facts.is_traced(end):
                return True
            if not any(map(facts.is_wired, facts.nets.members[net][:_MOST_LOOKED_AT])):
                return True
        return False
