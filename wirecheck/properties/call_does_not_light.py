"""With all safeties closed and a call the burner lights, runs, and the spark goes off.

Each step needs the one before: volts at the control's electronics, spark and first gas, the flame
seen, main gas with the electronics still fed.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.netlist import ElementKey
from wirecheck.model.diagram import Part
from wirecheck.model.finding import Breaks
from wirecheck.properties.gas import Flow, control_states, flows, powered, trains
from wirecheck.properties.heater import otherwise
from wirecheck.properties.property import Broken, Property
from wirecheck.properties.states import Settled, States
from wirecheck.sequence.answers import View
from wirecheck.sequence.flame import flame_path
from wirecheck.sequence.gas import Feeds
from wirecheck.sequence.spark import spark_path

PROPERTY = Property(
    name="call-does-not-light",
    title="All safeties closed and a call reach the run, with the spark off.",
    breaks=Breaks.OPERATION,
    why="The room stays cold.",
    blind_spots="Only a unit drawn whole is looked at: its supply, thermostat, valve and burner.",
    caution="",
    bad=otherwise("wire box.GND to pilot.HOOD: green\n", ""),
)


def broken(states: States) -> Iterator[Broken]:
    """The first step of a call that fails, for each control drawn with all that it needs.

    Args:
        states: of the unit, looked at for whether it works.
    """
    if states.view is not View.OPERATION:
        raise ValueError("whether it works is asked in the view of operation")
    settled = states.idle_first
    for control, valves in trains(states.whole, states):
        if control is not None and is_whole(states, control, valves):
            yield from _first_failing(states, settled, control, flows(valves, states, settled))


def is_whole(states: States, control: Part, valves: list[tuple[Part, Feeds]]) -> bool:
    """Whether everything a control needs to light is drawn."""
    whole = states.whole
    burner = whole.companions.of(control, "burner")
    fed = any(whole.element(key).part.family != "mains" for key in states.unit.sources)
    return bool(valves and burner and fed and states.calls and not whole.untraced)


def steps(
    states: States, settled: Settled, control: Part, gas: list[Flow]
) -> Iterator[tuple[str, int, tuple[ElementKey, ...]]]:
    """The steps of a call: what fails if it fails, when it succeeds, and by which loads."""
    main, pilot = gas
    nets, always = states.whole.nets, states.positions.always
    is_direct = not control.with_role("main-valve")
    phases = control_states(control, states, settled)
    electronics = tuple(states.whole.loads_of(control, "electronics"))
    fed = powered(control, states, settled)
    yield (
        f"the call does not reach the ignition of {control.name}",
        fed & phases.standby,
        (electronics),
    )
    spark = spark_path(nets, control)
    yield f"there is no spark: {spark.reason}", always if spark.gap else 0, ()
    first = main if is_direct else pilot
    yield f"no {first.name} in the trial", first.flows & phases.trial, first.operators
    seen = flame_path(nets, control)
    is_seen = seen.answer.counts(View.OPERATION)
    yield f"the flame is not proved: {seen.reason}", always if is_seen else 0, ()
    yield "no main gas in the run", main.flows & phases.run & fed, main.operators


def _first_failing(
    states: States, settled: Settled, control: Part, gas: list[Flow]
) -> Iterator[Broken]:
    calling = states.positions.always
    for variable in states.calls:
        calling &= states.contacts.on(variable)
    for what, table, loads in steps(states, settled, control, gas):
        if not table & calling:
            yield PROPERTY.broken(settled, calling, what, loads=loads, about=(control.key,))
            return
