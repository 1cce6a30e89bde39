"""What the operators of the gas valves are fed from, through leads, contacts and relays.

Contacts between a control and its valve are looked through.  The contacts of the ignition
controls are not: what reaches a valve past them is what the controls do not hold.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from enum import Enum, auto
from typing import NamedTuple, cast

import networkx as nx

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.kind import SwitchSpec
from wirecheck.rules.facts import Facts, Supply


class Source(Enum):
    """What a terminal of a valve can be fed from."""

    PILOT = auto()  #: the control's output for the pilot operator
    MAIN = auto()  #: its output for the main operator
    BOTH = auto()  #: the one output of a direct ignition control
    COMMON = auto()
    HOT = auto()  #: the supply or the call, past every contact of the control


#: The outputs of an ignition control by role.
OUTPUTS = {
    "pilot-valve": Source.PILOT,
    "main-valve": Source.MAIN,
    "valve-feed": Source.BOTH,
}
#: Terminals of a control that the call makes live, and those that a supply makes live always.
_CALL_ROLES = ("call", "damper-call", "damper-proved")
_HOT_ROLES = ("control-hot", "damper-hot")


class Output(NamedTuple):
    """An output of a control."""

    control: Part
    terminal: Terminal
    source: Source


class _Regions:
    """Nets that some contacts may join."""

    def __init__(self, facts: Facts, contacts: Iterable[Element]) -> None:
        self._facts = facts
        joined: nx.Graph[int] = nx.Graph()
        joined.add_edges_from((contact.net_a, contact.net_b) for contact in contacts)
        self._number: dict[int, int] = {}
        for number, members in enumerate(nx.connected_components(joined)):
            self._number.update(dict.fromkeys(members, number))

    def of_net(self, net: int) -> int:
        return self._number.get(net, -1 - net)

    def of(self, terminal: Terminal) -> int:
        return self.of_net(self._facts.net(terminal))

    def beside(self, contact: Element) -> tuple[int, int]:
        """The regions on the two sides of a contact."""
        return self.of_net(contact.net_a), self.of_net(contact.net_b)


class Feeds:
    """The sources of one diagram by the regions they reach; use it as ``facts.once(Feeds)``.

    A region here is what may become one conductor while the ignition controls are off.
    """

    def __init__(self, facts: Facts) -> None:
        """Linear in contacts, controls and supplies."""
        self._facts = facts
        self.outputs = tuple(_outputs(facts))
        plain = [contact for contact in _contacts(facts) if _switch(contact).moved_by != "control"]
        relays = self._relays_of_outputs(plain)
        self._regions = _Regions(facts, (c for c in plain if _key(c) not in relays))
        live = self._live_regions() | self._line_regions()
        # A relay that an output drives feeds a valve in that output's place if its contact comes
        # from the supply; if it comes from another output, it is one contact more in that lead.
        relays = {
            _key(contact): (contact, relays[_key(contact)][1])
            for contact, _output in relays.values()
            if live & {*self._regions.beside(contact)}
        }
        self._regions = _Regions(facts, (c for c in plain if _key(c) not in relays))
        self.live = self._live_regions()
        self._line = self._line_regions()
        self._supplies_at: dict[int, list[Supply]] = {}
        for supply in facts.supplies:
            self._supplies_at.setdefault(self.region(supply.hot), []).append(supply)
        self._commons = {self.region(supply.common) for supply in facts.supplies}
        self._neutral = {
            self.region(neutral)
            for mains in facts.of("mains")
            for neutral in mains.with_role("line-neutral")
        }
        self._of_control: dict[str, dict[Source, Terminal]] = {}
        self._outputs_at: dict[int, list[Output]] = {}
        for output in self.outputs:
            self._of_control.setdefault(output.control.key, {})[output.source] = output.terminal
            self._outputs_at.setdefault(self.region(output.terminal), []).append(output)
        for contact, output in relays.values():
            for region in {*self._regions.beside(contact)} - self.live - self._line:
                self._outputs_at.setdefault(region, []).append(output)

    def region(self, terminal: Terminal) -> int:
        """The region of a terminal."""
        return self._regions.of(terminal)

    def reaching(self, terminal: Terminal) -> list[Output]:
        """The outputs that feed a terminal, directly, through contacts or through a relay."""
        return self._outputs_at.get(self.region(terminal), [])

    def is_live(self, terminal: Terminal) -> bool:
        """Whether a supply's hot side or the call reaches a terminal past the controls.

        The hot side of the line counts at a terminal made for line volts: what it does to one
        made for 24 V is not a matter of which valve opens.
        """
        region = self.region(terminal)
        return region in (self._line if self.is_of_line(terminal) else self.live)

    def is_of_line(self, terminal: Terminal) -> bool:
        """Whether a terminal is made for line volts."""
        spec = self._facts.diagram.spec(terminal)
        return spec is not None and spec.circuit == "line"

    def of_control(self, control: Part) -> dict[Source, Terminal]:
        """The outputs of a control."""
        return self._of_control[control.key]

    def is_common(self, terminal: Terminal, control: Part) -> bool:
        """Whether a terminal is on the common of a control, or else on that of its supply.

        A valve of line volts, which a relay drives, has its common on the neutral.
        """
        region = self.region(terminal)
        if self.is_of_line(terminal):
            return region in self._neutral
        (common,) = control.with_role("valve-common")
        (call,) = control.with_role("call")
        if region == self.region(common):
            return True
        supplies = self._supplies_at.get(self.region(call))
        if supplies is None:
            return region in self._commons
        return any(region == self.region(supply.common) for supply in supplies)

    def may_join(self, a: Terminal, b: Terminal) -> bool:
        """Whether two terminals may become one conductor while the controls are off."""
        return self.region(a) == self.region(b)

    def _relays_of_outputs(
        self, contacts: list[Element]
    ) -> dict[tuple[Terminal, Terminal], tuple[Element, Output]]:
        """The relay contacts that close when an output feeds the relay's coil."""
        regions = _Regions(self._facts, contacts)
        outputs = {regions.of(output.terminal): output for output in reversed(self.outputs)}
        found = {}
        for contact in contacts:
            switch = _switch(contact)
            if switch.coil is None or switch.normal != "open":
                continue
            for load in self._facts.nets.elements_of[contact.part.key]:
                if load.type == "load" and load.name == switch.coil:
                    driven_by = [outputs.get(region) for region in regions.beside(load)]
                    for output in filter(None, driven_by):
                        found[_key(contact)] = (contact, output)
        return found

    def _live_regions(self) -> set[int]:
        """Where the hot side or the call gets; with no supply drawn, 24 V is where it belongs."""
        terminals = [supply.hot for supply in self._facts.supplies]
        roles = _CALL_ROLES if terminals else (*_CALL_ROLES, *_HOT_ROLES)
        for control in self._facts.of("ignition-control"):
            terminals += control.with_role(*roles)
        return {self.region(terminal) for terminal in terminals}

    def _line_regions(self) -> set[int]:
        return {
            self.region(hot)
            for mains in self._facts.of("mains")
            for hot in mains.with_role("line-hot", "line-hot-2", "line-hot-3")
        }


def _outputs(facts: Facts) -> Iterator[Output]:
    for control in facts.of("ignition-control"):
        for role, source in OUTPUTS.items():
            for terminal in control.with_role(role):
                yield Output(control, terminal, source)


def _contacts(facts: Facts) -> Iterator[Element]:
    edges = facts.conduction.contacts.edges(data="element")
    return (contact for _a, _b, contact in edges)


def _key(contact: Element) -> tuple[Terminal, Terminal]:
    return contact.a, contact.b


def _switch(contact: Element) -> SwitchSpec:
    return cast(SwitchSpec, contact.spec)
