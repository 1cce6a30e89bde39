"""In which states gas flows, by which operators, and what a control lets happen."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.circuit.netlist import ElementKey
from wirecheck.model.diagram import Part
from wirecheck.properties.states import Settled, States
from wirecheck.properties.unit import Whole
from wirecheck.sequence.answers import Answer
from wirecheck.sequence.flame import flame_path
from wirecheck.sequence.gas import Feeds, GasTrain


class Flow(NamedTuple):
    """One gas of one burner.

    Attributes:
        name: ``main gas`` or ``pilot gas``.
        flows: in which states.
        operators: the operators that let it.
    """

    name: str
    flows: int
    operators: tuple[ElementKey, ...]


class ControlStates(NamedTuple):
    """In which states a control is what.

    Attributes:
        standby: neither gas nor spark on: idle, waiting, held back or locked out.
        trial: the first gas on, and the spark.
        run: the flame proved, all gas on.
    """

    standby: int
    trial: int
    run: int

    @property
    def any(self) -> int:
        """All of them: the states that can be."""
        return self.standby | self.trial | self.run


def trains(whole: Whole, states: States) -> Iterator[tuple[Part | None, list[tuple[Part, Feeds]]]]:
    """Each control of a unit with its valves; last, without a control, the valves of none."""
    owned: set[str] = set()
    for control in states.unit.controls:
        train = GasTrain(control, whole.companions, whole.valves_drawn)
        owned.update(valve.key for valve, _feeds in train.valves)
        yield control, list(train.valves)
    lone: list[tuple[Part, Feeds]] = [
        (valve, "both") for valve in states.unit.valves if valve.key not in owned
    ]
    if lone:
        yield None, lone


def flows(valves: list[tuple[Part, Feeds]], states: States, settled: Settled) -> list[Flow]:
    """Main gas and pilot gas of one burner, whatever of its valves lets them flow."""
    found = []
    through = [(_through(valve, feeds, states, settled)) for valve, feeds in valves]
    for name in ("main gas", "pilot gas"):
        some = [flow for each in through for flow in each if flow.name == name]
        table = 0
        for flow in some:
            table |= flow.flows
        operators = dict.fromkeys(key for flow in some for key in flow.operators)
        found.append(Flow(name, table, tuple(operators)))
    return found


def _through(valve: Part, feeds: Feeds, states: States, settled: Settled) -> list[Flow]:
    def acting(*names: str) -> tuple[int, tuple[ElementKey, ...]]:
        keys = [key for name in names for key in states.whole.loads_of(valve, name)]
        table = 0
        for key in keys:
            table |= settled.acts.get(key, 0)
        return table, tuple(keys)

    if not valve.with_role("pilot-operator"):
        table, keys = acting("operator", "main operator")
        return [
            Flow(name, table, keys)
            for name, not_fed in (("pilot gas", "main"), ("main gas", "pilot"))
            if feeds != not_fed
        ]
    pilot, pilot_keys = acting("pilot operator")
    main, main_keys = acting("main operator")
    if valve.values.get("seats") != "single-seat":
        main &= pilot
    return [Flow("pilot gas", pilot, pilot_keys), Flow("main gas", main, main_keys + pilot_keys)]


def control_states(control: Part, states: States, settled: Settled) -> ControlStates:
    """When a control is in standby, in a trial and in its run, as far as it can get there.

    It leaves standby only with volts at its electronics, and a trial only if the wiring lets it
    see a flame.
    """
    but = states.positions.but
    powered = 0
    for key in states.whole.loads_of(control, "electronics"):
        powered |= settled.acts.get(key, 0)
    first = states.control_on("first gas", control.key)
    if not control.with_role("main-valve"):
        return ControlStates(but(first), first & powered, first & powered)
    main = states.control_on("main gas", control.key)
    seen = flame_path(states.whole.nets, control).answer
    can_run = seen is Answer.YES or seen.counts(states.view)
    return ControlStates(
        but(first) & but(main),
        first & but(main) & powered,
        first & main & powered if can_run else 0,
    )


def possible(states: States, settled: Settled) -> int:
    """The states that can be, of all controls together."""
    table = states.positions.always
    for control in states.unit.controls:
        table &= control_states(control, states, settled).any
    return table


def powered(control: Part, states: States, settled: Settled) -> int:
    """When a control's electronics have volts: it would spark."""
    table = 0
    for key in states.whole.loads_of(control, "electronics"):
        table |= settled.acts.get(key, 0)
    return table
