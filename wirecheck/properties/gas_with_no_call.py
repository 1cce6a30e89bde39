"""With nobody calling for heat no gas flows, whether the call never came or has ended.

That is so from standstill and after any state that the unit can have been in before: a relay that
holds itself must let go with the call.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.diagram import Part
from wirecheck.model.finding import Breaks
from wirecheck.properties.gas import flows, possible, trains
from wirecheck.properties.heater import otherwise
from wirecheck.properties.property import GAS_CAUTION, Broken, Property
from wirecheck.properties.states import States

PROPERTY = Property(
    name="gas-with-no-call",
    title="No gas flows with no call, and the end of the call reaches standby.",
    breaks=Breaks.SAFETY,
    why="The burner fires by itself and nothing but a limit stops it.",
    blind_spots="A file in which nothing calls for heat has no such state.",
    caution=GAS_CAUTION,
    bad=otherwise("wire xfmr.C to box", "wire rollout.2 to box.TH: red\nwire xfmr.C to box"),
)


def broken(states: States) -> Iterator[Broken]:
    """Gas although no thermostat calls."""
    if not states.calls:
        return
    for settled in states.all_settled:
        shown_in = states.no_call & possible(states, settled)
        for control, valves in trains(states.whole, states):
            for flow in flows(valves, states, settled):
                shown = flow.flows & shown_in
                if shown:
                    after = "" if settled is states.idle_first else ", once it has run"
                    yield PROPERTY.broken(
                        settled,
                        shown,
                        f"{flow.name} flows with no call{after}",
                        loads=flow.operators,
                        about=_about(states, control),
                    )
                    return


def _about(states: States, control: Part | None) -> tuple[str, ...]:
    """The control and all that can call for heat."""
    return (*((control.key,) if control else ()), *(each.part for each in states.calls))
