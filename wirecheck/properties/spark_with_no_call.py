"""With nobody calling for heat no control has volts at its ignition: it would spark."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.diagram import Part
from wirecheck.model.finding import Breaks
from wirecheck.properties.gas import possible, powered
from wirecheck.properties.heater import HEATER_WITHOUT_VALVE, otherwise
from wirecheck.properties.property import GAS_CAUTION, Broken, Property
from wirecheck.properties.states import States

PROPERTY = Property(
    name="ignition-with-no-call",
    title="Without a call no control tries to light.",
    breaks=Breaks.SAFETY,
    why="The control starts its trial by itself: spark, and gas as soon as a valve is joined.",
    blind_spots="A file in which nothing calls for heat has no such state.",
    caution=GAS_CAUTION,
    bad=otherwise(
        "wire xfmr.C to box",
        "wire limit.2 to box.TH: red\nwire xfmr.C to box",
        HEATER_WITHOUT_VALVE,
    ),
    good=HEATER_WITHOUT_VALVE,
)


def broken(states: States) -> Iterator[Broken]:
    """Volts at the electronics although no thermostat calls."""
    if not states.calls:
        return
    for settled in states.all_settled:
        for control in states.unit.controls:
            shown = powered(control, states, settled) & states.no_call & possible(states, settled)
            if shown:
                keys = tuple(states.whole.loads_of(control, "electronics"))
                after = "" if settled is states.idle_first else ", once it has run"
                yield PROPERTY.broken(
                    settled,
                    shown,
                    f"{control.name} tries to light with no call{after}",
                    loads=keys,
                    about=_about(states, control),
                )


def _about(states: States, control: Part) -> tuple[str, ...]:
    """The control and all that can call for heat."""
    return (control.key, *(each.part for each in states.calls))
