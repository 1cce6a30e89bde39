"""A control that waits, is held back by a flame signal or is locked out has no gas on.

So no start can be made while a flame signal is there already, and none right after a loss of
power: the control begins in standby, and in standby no gas may flow, whoever calls.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks
from wirecheck.properties.gas import control_states, flows, possible, trains
from wirecheck.properties.heater import otherwise
from wirecheck.properties.property import GAS_CAUTION, Broken, Property
from wirecheck.properties.states import States

PROPERTY = Property(
    name="gas-past-the-control",
    title="No gas flows while the control waits, is held by a flame signal, or is locked out.",
    breaks=Breaks.SAFETY,
    why="Gas flows with nothing that lights it and nothing that watches its flame.",
    blind_spots="The control itself is taken to work as its kind says.",
    caution=GAS_CAUTION,
    bad=otherwise("plug box to valve: PV,", "wire box.TH to valve.PV\nplug box to valve:"),
)


def broken(states: States) -> Iterator[Broken]:
    """Gas while its control has nothing on."""
    for settled in states.all_settled:
        can_be = possible(states, settled)
        for control, valves in trains(states.whole, states):
            if control is None:
                continue
            standby = control_states(control, states, settled).standby
            for flow in flows(valves, states, settled):
                shown = flow.flows & standby & can_be
                if shown:
                    what = f"{flow.name} flows while {control.name} has no gas on"
                    yield PROPERTY.broken(
                        settled, shown, what, loads=flow.operators, about=(control.key,)
                    )
                    return
