"""With any safety open no gas flows: each limit, cut-off and switch of the unit by itself.

A safety is there for the day on which everything else has failed.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks
from wirecheck.properties.gas import flows, possible, trains
from wirecheck.properties.heater import otherwise
from wirecheck.properties.property import GAS_CAUTION, Broken, Property
from wirecheck.properties.safeties import own_safeties
from wirecheck.properties.states import States

PROPERTY = Property(
    name="gas-with-a-safety-open",
    title="No gas flows with any safety open.",
    breaks=Breaks.SAFETY,
    why="The safety opens and the burner goes on: nothing is left that stops it.",
    blind_spots="A safety on no way to the control stops nothing; a rule of its own asks for it.",
    caution=GAS_CAUTION,
    bad=otherwise("wire xfmr.C to box", "wire xfmr.R to limit.2: red\nwire xfmr.C to box"),
)


def broken(states: States) -> Iterator[Broken]:
    """Gas although what a safety watches has it open."""
    for settled in states.all_settled:
        can_be = possible(states, settled)
        for control, valves in trains(states.whole, states):
            for safety, opened in own_safeties(states, control):
                if safety.variable.what == "blade":
                    continue  # a damper's own property
                for flow in flows(valves, states, settled):
                    shown = flow.flows & opened & can_be
                    if shown:
                        what = f"{flow.name} flows with {safety.name} open"
                        keys = (safety.part, *((control.key,) if control else ()))
                        yield PROPERTY.broken(
                            settled, shown, what, loads=flow.operators, about=keys
                        )
                        break
