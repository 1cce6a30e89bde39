"""Which circuit of the unit a terminal belongs to: so a difference is named, and marked."""

from __future__ import annotations

from collections.abc import Iterable
from enum import Enum
from functools import cached_property
from typing import Final

import networkx as nx

from wirecheck.compare.wired import Wired
from wirecheck.model.diagram import EARTH, Terminal


class Circuit(Enum):
    """The circuits of a unit, as they are read one after the other."""

    SUPPLY = "supply"
    CHAIN = "call and safety chain"
    GROUND = "burner ground"
    IGNITION = "ignition leads"
    VALVE = "valve"
    DAMPER = "damper"
    LOADS = "relays, zones and loads"


_BY_ROLE: Final = {
    **dict.fromkeys(("call", "call-side"), Circuit.CHAIN),
    **dict.fromkeys(
        ("thermostat-feed", "thermostat-heat", "thermostat-common", "limit-contact", "probe-hot",
         "probe-common", "probe-out"),
        Circuit.CHAIN,
    ),
    **dict.fromkeys(("burner-ground", "burner-metal"), Circuit.GROUND),
    **dict.fromkeys(("sense", "rod", "spark", "electrode"), Circuit.IGNITION),
    **dict.fromkeys(
        ("pilot-valve", "main-valve", "valve-common", "valve-feed", "pilot-operator",
         "main-operator", "operator", "operator-common", "adapter-feed", "adapter-common",
         "adapter-pilot", "adapter-main", "adapter-valve-common", "generator-hot",
         "generator-common"),
        Circuit.VALVE,
    ),
    **dict.fromkeys(
        ("damper-hot", "damper-call", "damper-proved", "damper-common"),
        Circuit.DAMPER,
    ),
    **dict.fromkeys(
        ("line-hot", "line-hot-2", "line-hot-3", "line-neutral", "line-ground", "secondary-hot",
         "secondary-common", "control-common", "control-hot", "own-common"),
        Circuit.SUPPLY,
    ),
}  # fmt: skip
#: Of several circuits that a difference touches, the one that it is told under.
_ORDER: Final = (
    Circuit.IGNITION,
    Circuit.GROUND,
    Circuit.VALVE,
    Circuit.DAMPER,
    Circuit.CHAIN,
    Circuit.LOADS,
    Circuit.SUPPLY,
)
#: Roles of one port among several: what it is there for, before what it is joined to inside.
_PORT_ORDER: Final = ("control-common", "call", "control-hot")


class Circuits:
    """The circuits of one diagram."""

    def __init__(self, wired: Wired) -> None:
        """Look at a diagram; nothing is worked out before it is asked for."""
        self._wired = wired

    def of(self, terminal: Terminal) -> Circuit:
        """The circuit of a terminal."""
        if terminal == EARTH:
            return Circuit.SUPPLY
        spec = self._wired.diagram.spec(terminal)
        if spec is None:
            return Circuit.LOADS
        if spec.circuit == "line" and self._wired.diagram.parts[terminal.part].family == "load":
            return Circuit.LOADS
        role = self._role(terminal)
        return _BY_ROLE.get(role) or self._of_contact(terminal)

    def told_under(self, terminals: Iterable[Terminal]) -> Circuit:
        """The circuit of several terminals at once."""
        return min(map(self.of, terminals), key=_ORDER.index, default=Circuit.LOADS)

    def _role(self, terminal: Terminal) -> str:
        port = self._wired.port(terminal)
        roles = [spec.role for each in port if (spec := self._wired.diagram.spec(each))]
        if terminal != self._wired.lead(terminal):
            return roles[port.index(terminal)]
        return next((role for role in _PORT_ORDER if role in roles), roles[port.index(terminal)])

    def _of_contact(self, terminal: Terminal) -> Circuit:
        net = self._wired.net_of.get(terminal)
        if net is None:
            return Circuit.LOADS
        region = self._regions[net]
        if region in self._fed_by_call:
            return Circuit.CHAIN
        return Circuit.SUPPLY if region in self._primaries else Circuit.LOADS

    @cached_property
    def _regions(self) -> dict[int, int]:
        """Of each net which others contacts may join to it."""
        wired = self._wired
        joined: nx.utils.UnionFind[int] = nx.utils.UnionFind(range(len(wired.pins)))
        for contact in wired.contacts():
            if contact.a in wired.net_of and contact.b in wired.net_of:
                joined.union(wired.net_of[contact.a], wired.net_of[contact.b])
        return {net: joined[net] for net in range(len(wired.pins))}

    @cached_property
    def _fed_by_call(self) -> frozenset[int]:
        return self._with(("call", "call-side", "valve-feed"))

    @cached_property
    def _primaries(self) -> frozenset[int]:
        """The regions that feed a transformer or a control from the line."""
        wired = self._wired
        ends = [
            part.terminal(name)
            for part in wired.parts()
            for source in part.structure.sources
            for pair in source.fed_by
            for name in pair
        ]
        return frozenset(self._regions[wired.net_of[end]] for end in ends if end in wired.net_of)

    def _with(self, roles: tuple[str, ...]) -> frozenset[int]:
        wired = self._wired
        ends = [end for part in wired.parts() for end in part.with_role(*roles)]
        return frozenset(self._regions[wired.net_of[end]] for end in ends if end in wired.net_of)
