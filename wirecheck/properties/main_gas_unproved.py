"""Main gas flows only with the flame proved, on a direct system only in a trial or run.

Gas that comes before its flame gathers until something lights it all at once.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks
from wirecheck.properties.gas import control_states, flows, possible, trains
from wirecheck.properties.heater import otherwise
from wirecheck.properties.property import GAS_CAUTION, Broken, Property
from wirecheck.properties.states import States

PROPERTY = Property(
    name="main-gas-unproved",
    title="Main gas flows only while the flame is proved, or in a direct trial.",
    breaks=Breaks.SAFETY,
    why="Main gas with no flame proved gathers in the unit and lights all at once.",
    blind_spots="The control itself is taken to work as its kind says.",
    caution=GAS_CAUTION,
    bad=otherwise("wire box.SPARK", "jumper box.PV to box.MV\nwire box.SPARK"),
)


def broken(states: States) -> Iterator[Broken]:
    """Main gas in a pilot trial, or while the control has nothing on."""
    for settled in states.all_settled:
        can_be = possible(states, settled)
        for control, valves in trains(states.whole, states):
            if control is None:
                continue
            main = flows(valves, states, settled)[0]
            phases = control_states(control, states, settled)
            is_direct = not control.with_role("main-valve")
            for when, table in (
                ("in the trial, before a flame is proved", 0 if is_direct else phases.trial),
                (f"while {control.name} has no gas on", phases.standby),
            ):
                shown = main.flows & table & can_be
                if shown:
                    what = f"main gas flows {when}"
                    yield PROPERTY.broken(
                        settled, shown, what, loads=main.operators, about=(control.key,)
                    )
                    return
