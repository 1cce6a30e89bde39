"""Where the volts of a diagram get: what somebody finds who meters every terminal.

All contacts are closed that can be, with every relay in or every relay out.
"""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable, Iterator
from functools import partial
from typing import cast

import networkx as nx

from wirecheck.circuit.nets import Element, Nets
from wirecheck.model.diagram import EARTH, Terminal
from wirecheck.model.kind import SourceSpec, SwitchSpec

#: One thing to look at, when somebody asks.
Look = Callable[[], Hashable]

#: What a technician may open.
FAMILIES_TO_OPEN = frozenset({"safety-switch", "hand-switch", "overcurrent"})


def volts(nets: Nets) -> Iterator[tuple[str, Look]]:
    """What is metered, by name."""
    sources = _sources(nets)
    line = [each for each in sources if _circuit(nets, each.a) == "line"]
    secondaries = [each for each in sources if _circuit(nets, each.a) == "24V"]
    for pulled_in in (False, True):
        relays = "relays in" if pulled_in else "relays out"
        where = _Joined(nets, _closed(nets, pulled_in=pulled_in))
        yield f"line on 24 V, {relays}", partial(_line_on_24_v, nets, where)
        yield f"line on metal, {relays}", partial(_line_on_metal, nets, where)
        yield f"left hot, {relays}", partial(_left_hot, nets, line, pulled_in=pulled_in)
        yield f"shorts, {relays}", partial(_shorts, sources, where)
    yield "hot side earthed", partial(_hot_earthed, nets, secondaries)
    yield "ignition voltage", partial(_strangers, nets, ("spark",), ("ignition",))
    yield "flame signal", partial(_strangers, nets, ("sense", "rod"), ("ignition", "flame"))
    yield "line ground", partial(_line_ground, nets)
    everything = _Joined(nets, switches(nets))
    yield "common by leads", partial(_common_by_leads, nets, everything, secondaries)


def _shorts(sources: list[Element], where: _Joined) -> Hashable:
    return frozenset((s.part.key, s.name) for s in sources if where(s.a) == where(s.b))


def _hot_earthed(nets: Nets, secondaries: list[Element]) -> Hashable:
    return frozenset(s.part.key for s in secondaries if nets.joined(s.a, EARTH))


def _sources(nets: Nets) -> list[Element]:
    return [
        element
        for elements in nets.elements_of.values()
        for element in elements
        if isinstance(element.spec, SourceSpec)
    ]


def _circuit(nets: Nets, terminal: Terminal) -> str:
    spec = nets.diagram.spec(terminal)
    return spec.circuit if spec else ""


def _closed(nets: Nets, *, pulled_in: bool) -> list[Element]:
    """The contacts that are closed if every one is that can be, all relays in or none."""
    found = []
    for contact in switches(nets):
        spec = cast(SwitchSpec, contact.spec)
        if spec.coil is None or (spec.normal == "open") == pulled_in:
            found.append(contact)
    return found


class _Joined:
    """Which nets are one conductor with some contacts closed."""

    def __init__(self, nets: Nets, contacts: Iterable[Element]) -> None:
        self._nets = nets
        self._sets: nx.utils.UnionFind[int] = nx.utils.UnionFind()
        for contact in contacts:
            self._sets.union(contact.net_a, contact.net_b)

    def __call__(self, terminal: Terminal) -> int:
        return int(self._sets[self._nets.net(terminal)])


def _line_on_24_v(nets: Nets, where: _Joined) -> Hashable:
    """Terminals of the other circuits that a wired one of the line is joined to.

    Behind a winding or a motor a lead of the line is as live as before it.
    """
    line = {where(end) for end in _wired(nets, "line")}
    low = _wired(nets, "24V", "ignition", "flame")
    return frozenset(end for end in low if where(end) in line)


def _line_on_metal(nets: Nets, where: _Joined) -> Hashable:
    """Wired terminals of the line that earth or the metal of a burner is joined to."""
    metal = {where(EARTH), *(where(end) for end in _with_role(nets, "burner-metal"))}
    return frozenset(end for end in _wired(nets, "line") if where(end) in metal)


def _wired(nets: Nets, *circuits: str) -> list[Terminal]:
    return [end for end in nets.net_of if nets.is_wired(end) and _circuit(nets, end) in circuits]


def _with_role(nets: Nets, *roles: str) -> list[Terminal]:
    parts = nets.diagram.parts.values()
    return [terminal for part in parts for terminal in part.with_role(*roles)]


def _left_hot(nets: Nets, line: list[Element], *, pulled_in: bool) -> Hashable:
    """Loads of the line with an end on a hot leg, for each switch or fuse that is open."""
    closed = _closed(nets, pulled_in=pulled_in)
    hot = {source.a for source in line}
    loads = [
        element
        for elements in nets.elements_of.values()
        for element in elements
        if element.type == "load" and _circuit(nets, element.a) == "line"
    ]
    primaries = [
        (part.key, part.terminal(name))
        for part in nets.diagram.parts.values()
        for source in part.structure.sources
        for pair in source.fed_by
        for name in pair
    ]
    ends = [*((x.part.key, end) for x in loads for end in (x.a, x.b)), *primaries]
    found = []
    for contact in closed:
        if contact.part.family in FAMILIES_TO_OPEN:
            where = _Joined(nets, (each for each in closed if each is not contact))
            legs = {where(end) for end in hot}
            found.append(
                (contact.part.key, frozenset(key for key, end in ends if where(end) in legs))
            )
    return frozenset(found)


def _strangers(nets: Nets, roles: tuple[str, ...], circuits: tuple[str, ...]) -> Hashable:
    """Terminals joined to those of some roles that are not made for their circuits."""
    own = {nets.net(terminal) for terminal in _with_role(nets, *roles)}
    return frozenset(
        terminal
        for terminal, net in nets.net_of.items()
        if net in own and _circuit(nets, terminal) not in (*circuits, "")
    )


def _line_ground(nets: Nets) -> Hashable:
    """Ground terminals of the line that are on earth."""
    grounds = _with_role(nets, "line-ground")
    return frozenset(ground for ground in grounds if nets.joined(ground, EARTH))


def _common_by_leads(nets: Nets, where: _Joined, secondaries: list[Element]) -> Hashable:
    """Controls with the common of what feeds their call, and not through the metal of a burner."""
    metal = set(_with_role(nets, "burner-metal"))
    wires = nets.conductors.subgraph(set(nets.conductors) - metal)
    return frozenset(
        com.part
        for com in _with_role(nets, "control-common")
        for call in nets.diagram.parts[com.part].with_role("call")
        for source in secondaries
        if where(source.a) == where(call) and nx.has_path(wires, com, source.b)
    )


def switches(nets: Nets) -> Iterator[Element]:
    """All contacts."""
    for elements in nets.elements_of.values():
        yield from (each for each in elements if each.type == "switch")
