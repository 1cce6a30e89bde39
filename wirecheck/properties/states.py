"""Everything a unit does in every position of its switches: what is fed, what acts, what is short.

What a load gets is decided by the ways to it: between both ends of a source it has that source's
volts; with no way for a current it has none.  Only where loads lie in series do volts decide, and
there the circuit is solved, once for all states that join the same nets
(`wirecheck.properties.volts`).  Relays, motors and fans follow their volts until nothing changes.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cached_property
from typing import NamedTuple

from wirecheck.circuit.found_wrong import condition
from wirecheck.circuit.netlist import ElementKey, highest
from wirecheck.circuit.nets import Element
from wirecheck.circuit.steady import Steady
from wirecheck.circuit.switching import Network, Positions
from wirecheck.model.kind import LoadSpec
from wirecheck.properties.contacts import Contacts, Switch
from wirecheck.properties.sources import Feeds
from wirecheck.properties.unit import Unit, Whole
from wirecheck.properties.volts import SeriesVolts
from wirecheck.sequence.answers import View

#: Rounds in which relays follow each other before they are taken never to come to rest.
MOST_ROUNDS = 24


class Settled(NamedTuple):
    """A unit in all its states, relays and motors at rest.

    Attributes:
        closed: when each contact is closed.
        network: the nets, joined by those contacts and by metal.
        feeds: the sources, and what each reaches.
        fed: when each load has the volts of a source across it.
        acts: when each load is taken to act.
        series: when some load lies in series with another, so that volts decide.
    """

    closed: Mapping[ElementKey, int]
    network: Network[int]
    feeds: Feeds
    fed: Mapping[ElementKey, int]
    acts: Mapping[ElementKey, int]
    series: int


class States:
    """One unit in every position of its switches, looked at in one way.

    Attributes:
        whole, unit: the diagram, and which of its units.
        view: whether what may act is taken to.
        contacts: its switches.
        matter: the states somebody will ask about; in others loads in series are left out.
        bounded: why not every state was looked at, or "".
    """

    def __init__(self, whole: Whole, unit: Unit, view: View, contacts: Contacts) -> None:
        """Nothing is worked out before it is asked for."""
        self.whole = whole
        self.unit = unit
        self.view = view
        self.contacts = contacts
        self.matter = contacts.positions.always
        self.bounded = ""
        self._volts = SeriesVolts(whole, unit, view, contacts)
        self._rated = {key: rated_volts(whole.element(key)) for key in unit.loads}
        self._loads = {
            key: element for key in unit.loads if _takes_current(element := whole.element(key))
        }

    @property
    def positions(self) -> Positions:
        """Every position of the independent switches."""
        return self.contacts.positions

    @cached_property
    def idle_first(self) -> Settled:
        """From standstill: the power has just come on, every relay had let go."""
        return self._settle(dict.fromkeys(self.unit.loads, 0))

    @cached_property
    def latched(self) -> Settled:
        """From where every relay has pulled in that can: it stays where it holds itself."""
        always = self.positions.always
        before = self.idle_first.acts
        if not self._follow:
            return self.idle_first
        start = {key: always if before.get(key) else 0 for key in self.unit.loads}
        if all(start[key] == before[key] for key in self._follow):
            return self.idle_first
        return self._settle(start, known=self.idle_first)

    @cached_property
    def all_settled(self) -> tuple[Settled, ...]:
        """From standstill, and, where some relay holds itself, from there."""
        if self.latched.acts == self.idle_first.acts:
            return (self.idle_first,)
        return self.idle_first, self.latched

    @cached_property
    def _follow(self) -> frozenset[ElementKey]:
        """The loads that move contacts."""
        return frozenset(key for each in self.unit.contacts for key in self.whole.moved_by(each))

    def _settle(self, acts: dict[ElementKey, int], known: Settled | None = None) -> Settled:
        """Go round until it rests; ``known`` is a rest that it may come to as well."""
        seen: dict[ElementKey, int] = {}
        for number in range(MOST_ROUNDS):
            settled = self._once(acts)
            changed = [key for key in self._follow if settled.acts[key] != acts[key]]
            if not changed:
                return settled
            acts = dict(settled.acts)
            if known is not None and all(acts[key] == known.acts[key] for key in self._follow):
                return known
            if number > MOST_ROUNDS // 2:  # what goes round and round is on and off in turn
                for key in changed:
                    acts[key] = seen[key] = acts[key] | seen.get(key, 0)
        return settled

    def _once(self, acts: Mapping[ElementKey, int]) -> Settled:
        closed = self.contacts.closed(acts)
        network = self._network(closed)
        feeds = Feeds(self.whole, self.unit, network, self.positions)
        fed = {key: self._fed(key, element, feeds) for key, element in self._loads.items()}
        series = feeds.in_series(self._loads.values()) & self.matter
        result = dict.fromkeys(self.unit.loads, 0)
        for key, table in fed.items():
            result[key] = table if self._is_well(key) else 0
        if series:
            some = self._volts.acting(series, closed, network, fed)
            for key, table in some.items():
                if self._is_well(key):
                    result[key] = (result[key] & ~series) | table
            self.bounded = self.bounded or self._volts.bounded
        return Settled(closed, network, feeds, fed, result, series)

    def solved(self, settled: Settled, state: int) -> Steady:
        """The circuit of the unit in one state."""
        return self._volts.at(settled.closed, state)

    def _is_well(self, key: ElementKey) -> bool:
        return condition(self.whole.element(key)) == "well"

    def _network(self, closed: Mapping[ElementKey, int]) -> Network[int]:
        network: Network[int] = Network(self.positions.always)
        for key, table in closed.items():
            element = self.whole.element(key)
            network.add(element.net_a, element.net_b, table)
        for key in self.unit.sources:
            bond = self.whole.service_bond(self.whole.element(key).part)
            if bond is not None:
                network.add(*bond, self.positions.always)
        for key in self.unit.bonds:
            element = self.whole.element(key)
            conducts = element.name == "solid" or (
                element.name == "poor" and self.view is View.DANGER
            )
            if conducts:
                network.add(element.net_a, element.net_b, self.positions.always)
        return network

    def _fed(self, key: ElementKey, element: Element, feeds: Feeds) -> int:
        """When a source that gives it enough volts lies across a load."""
        rated = self._rated[key]
        least = 0.85 if self.view is View.OPERATION else 0.4
        table = 0
        for feed in feeds.each:
            if feed.volts >= least * rated:
                table |= feed.across(element.net_a, element.net_b)
        return table

    # ---- for the properties -----------------------------------------------------------------

    def control_on(self, what: str, control: str) -> int:
        """When a control has its first or its main gas on."""
        return self.contacts.on(Switch(what, control))

    @cached_property
    def calls(self) -> tuple[Switch, ...]:
        """The variables that are calls for heat; none where no thermostat is drawn.

        A switch worked by hand, or an operating control, that can start the burner beside a
        thermostat is a call too; one without which nothing starts is not.
        """
        variables = dict.fromkeys(self.contacts.variable.values())
        stats = [each for each in variables if each.what == "call" and not each.name]
        if not stats:
            return ()
        powered = 0
        for control in self.unit.controls:
            for key in self.whole.loads_of(control, "electronics"):
                powered |= self.idle_first.acts.get(key, 0)
        beside = [each for each in variables if self._is_by_choice(each)]
        return (
            *stats,
            *(each for each in beside if powered & self.positions.but(self.contacts.on(each))),
        )

    def _is_by_choice(self, variable: Switch) -> bool:
        part = self.whole.diagram.parts[variable.part]
        return variable.what == "contact" and part.family in ("hand-switch", "operating-control")

    @cached_property
    def no_call(self) -> int:
        """When nobody calls for heat."""
        table = self.positions.always
        for variable in self.calls:
            table &= self.positions.but(self.contacts.on(variable))
        return table


def rated_volts(element: Element) -> float:
    """Rated volts of a load; 0 where it has none."""
    volts = element.spec.volts if isinstance(element.spec, LoadSpec) else None
    return highest(element.part.values.get(volts)) if isinstance(volts, str) else volts or 0.0


def _takes_current(element: Element) -> bool:
    return isinstance(element.spec, LoadSpec) and element.spec.volts is not None
