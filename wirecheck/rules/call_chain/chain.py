"""What a burner needs to run: contacts on the way of its call, of the relays in it, of its supply.

A safety may act on a burner in many right places: in the call lead, in the line feeding the
transformer, in the coil circuit of a relay whose contact is in the call lead.  A `Chain` holds
them all and answers one question: with these contacts open, can the burner still be called?
"""

from __future__ import annotations

from collections import deque
from collections.abc import Collection, Iterator
from itertools import pairwise

import networkx as nx

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Part, Terminal
from wirecheck.rules.call_chain.contacts import ContactKey, key_of_contact, makes_call, switch
from wirecheck.rules.call_chain.sources import Between, Feed, Sources
from wirecheck.rules.facts import Facts

NO_CONTACTS: frozenset[ContactKey] = frozenset()


class Chain:
    """The contacts on which one load hangs, whatever is between.

    Attributes:
        part: the part the load belongs to.
        call, common: the terminals it is fed at.
        feeds: what may feed it; empty where too little is drawn.
        contacts: by their terminals, those that stand on some way to it or to a coil on it.
        unjudged: contacts ahead of it that too little is drawn to judge.
    """

    def __init__(
        self, facts: Facts, part: Part, call: Terminal, common: Terminal, *beyond: Terminal
    ) -> None:
        """Follow the load's feeds up to their sources.

        Args:
            facts: of the diagram as wired.
            part: the load's part.
            call: its terminal on the hot side.
            common: its terminal on the common side.
            beyond: terminals to which the call must be passed on (a damper's end switch does).
        """
        self.part, self.call, self.common = part, call, common
        self._facts = facts
        self._sources = facts.once(Sources)
        net, conduction = facts.net, facts.conduction
        self._load: Between = (net(call), net(common))
        self._onward = tuple(
            (net(call), net(terminal))
            for terminal in beyond
            if conduction.may_join(net(call), net(terminal))
        )
        self.contacts: dict[ContactKey, Element] = {}
        self.unjudged: set[ContactKey] = set()
        self._drivers: dict[ContactKey, Between] = {}
        self._coils: dict[Between, Element] = {}
        self._feeds: dict[Between, tuple[Feed, ...]] = {}
        self._follow()
        self.feeds = self._feeds[self._load]
        self._sure = set(self._in_series())
        self._direct = set(self._on_the_call())

    # ---- what is on it ---------------------------------------------------------------------

    def _follow(self) -> None:
        """Collect the contacts ahead of the load, then those ahead of their coils, and so on."""
        waiting = deque([self._load])
        for way in self._onward:
            waiting.extend(self._take(way))
        while waiting:
            load = waiting.popleft()
            if load in self._feeds:
                continue
            self._feeds[load] = feeds = self._sources.feeds(load)
            if not feeds:
                self._leave_unjudged(load)
            for feed in feeds:
                waiting.extend(feed.windings)
                for way in feed.ways:
                    waiting.extend(self._take(way))
        # A coil whose supply is not drawn is moved from somewhere else: nobody knows when.
        self._drivers = {key: coil for key, coil in self._drivers.items() if self._feeds[coil]}

    def _take(self, way: Between) -> Iterator[Between]:
        """Add the contacts of a way; hand out the coils that move them."""
        for contact in self._facts.conduction.way(*way).contacts:
            key = key_of_contact(contact)
            if key not in self.contacts:
                self.contacts[key] = contact
                coil = self.coil_of(contact)
                if coil is not None:
                    nets = (coil.net_a, coil.net_b)
                    self._coils[nets] = coil
                    if switch(contact).normal == "open":
                        self._drivers[key] = nets
                    yield nets

    def coil_of(self, contact: Element) -> Element | None:
        """The load of its own part that moves a contact, if leads go to it."""
        spec = switch(contact)
        name = spec.coil or ("motor" if spec.moved_by == "motor" else None)
        for element in self._facts.nets.elements_of[contact.part.key]:
            if element.type == "load" and element.name == name:
                wired = self._facts.is_wired
                if wired(element.a) or wired(element.b):
                    return element
        return None

    def _leave_unjudged(self, load: Between) -> None:
        """Nothing feeds this load as far as drawn: what is ahead of it may act on it."""
        graph = self._facts.conduction.contacts
        for net in load:
            if net in graph and net != self._facts.earth:
                members = nx.node_connected_component(graph, net)
                for _a, _b, contact in graph.edges(members, data="element"):
                    self.unjudged.add(key_of_contact(contact))

    def _in_series(self) -> Iterator[ContactKey]:
        """Contacts that every way of its only feed passes."""
        if len(self.feeds) == 1:
            for way in (*self.feeds[0].ways, *self._onward):
                yield from map(key_of_contact, self._facts.conduction.way(*way).series)

    def _on_the_call(self) -> Iterator[ContactKey]:
        for way in (*(feed.hot for feed in self.feeds), *self._onward):
            yield from map(key_of_contact, self._facts.conduction.way(*way).contacts)

    def is_direct(self, contact: Element) -> bool:
        """Whether a contact stands in the call itself, not ahead of a coil or of the supply."""
        return key_of_contact(contact) in self._direct

    def coils(self) -> Iterator[tuple[Element, tuple[Feed, ...]]]:
        """Coils and motors that move contacts on it, with what feeds each."""
        for nets, coil in self._coils.items():
            yield coil, self._feeds[nets]

    def ahead_of_coil(self, contact: Element) -> set[ContactKey]:
        """Contacts on the ways of the coil or motor that moves a contact."""
        coil = self.coil_of(contact)
        feeds = self._feeds.get((coil.net_a, coil.net_b), ()) if coil else ()
        return {
            key_of_contact(ahead)
            for feed in feeds
            for way in feed.ways
            for ahead in self._facts.conduction.way(*way).contacts
        }

    # ---- what it does ----------------------------------------------------------------------

    def runs(self, without: Collection[ContactKey] = NO_CONTACTS) -> bool:
        """Whether the load can be fed with some contacts open, all others as suits it best."""
        joined = self._joined(without)
        return self._is_fed(self._load, joined, ()) and all(
            joined[a] == joined[b] for a, b in self._onward
        )

    def is_stopped_by(self, contact: Element) -> bool:
        """Whether the opening of a contact surely takes the load's supply away."""
        key = key_of_contact(contact)
        return key in self._sure or (key in self.contacts and not self.runs({key}))

    def call_contacts(self) -> set[ContactKey]:
        """Contacts of its own that decide that heat is called for."""
        return {
            key
            for key, contact in self.contacts.items()
            if key not in self._drivers and makes_call(contact)
        }

    def runs_uncalled(self) -> bool:
        """Whether it is fed with every contact open that makes a call."""
        return bool(self.feeds) and self.runs(self.call_contacts())

    def path(self, without: Collection[ContactKey] = NO_CONTACTS) -> list[Element]:
        """Contacts on a shortest way of the call with some contacts open; empty if there is none.

        A direct lead is a way with no contacts, too: ask `runs` first.
        """
        graph: nx.MultiGraph[int] = nx.MultiGraph()
        joined = self._joined(without)
        for key, contact in self.contacts.items():
            live = key not in self._drivers or self._is_fed(self._drivers[key], joined, ())
            if key not in without and live:
                graph.add_edge(contact.net_a, contact.net_b, contact=contact)
        found: list[Element] = []
        for feed in self.feeds[:1]:
            for a, b in (feed.hot, *self._onward):
                if a != b and a in graph and b in graph and nx.has_path(graph, a, b):
                    nodes = nx.shortest_path(graph, a, b)
                    for left, right in pairwise(nodes):
                        found.append(next(iter(graph[left][right].values()))["contact"])
        return found

    def _joined(self, without: Collection[ContactKey]) -> nx.utils.UnionFind[int]:
        """Nets that are one conductor with some contacts open and every coil in that can be in."""
        joined: nx.utils.UnionFind[int] = nx.utils.UnionFind()
        waiting = []
        for key, contact in self.contacts.items():
            if key in without:
                continue
            if key in self._drivers:
                waiting.append(key)
            else:
                joined.union(contact.net_a, contact.net_b)
        while ready := [key for key in waiting if self._is_fed(self._drivers[key], joined, ())]:
            waiting = [key for key in waiting if key not in ready]
            for key in ready:
                joined.union(self.contacts[key].net_a, self.contacts[key].net_b)
        return joined

    def _is_fed(
        self, load: Between, joined: nx.utils.UnionFind[int], above: tuple[Between, ...]
    ) -> bool:
        """Whether some feed of a load conducts and is live itself.

        A load that nothing drawn feeds is taken as fed: the sketch leaves its supply out.
        """
        feeds = self._feeds[load]
        return not feeds or any(
            all(joined[a] == joined[b] for a, b in feed.ways)
            and (
                not feed.windings
                or any(
                    winding not in above and self._is_fed(winding, joined, (*above, load))
                    for winding in feed.windings
                )
            )
            for feed in feeds
        )
