"""No gas flows while a vent damper is not fully open."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.diagram import Part
from wirecheck.model.finding import Breaks
from wirecheck.properties.contacts import Switch
from wirecheck.properties.gas import flows, possible, trains
from wirecheck.properties.heater import HEATER_WITH_DAMPER, otherwise
from wirecheck.properties.property import GAS_CAUTION, Broken, Property
from wirecheck.properties.states import States

PROPERTY = Property(
    name="gas-with-the-damper-shut",
    title="No gas flows unless the vent damper is fully open.",
    breaks=Breaks.SAFETY,
    why="The burner fires into a shut vent, and products of combustion spill into the room.",
    blind_spots="Where several burners share a diagram, only dampers of the own unit.",
    caution=GAS_CAUTION,
    bad=otherwise("control: two-rod", "control: two-rod, damper-plug fitted", HEATER_WITH_DAMPER),
    good=HEATER_WITH_DAMPER,
)

#: The terminals of a control from which leads run to a damper, in its socket or in the call.
_DAMPER_SIDE = ("damper-hot", "damper-call", "damper-proved", "damper-common", "call")


def broken(states: States) -> Iterator[Broken]:
    """Gas although the blade of a damper is not open."""
    whole = states.whole
    for settled in states.all_settled:
        can_be = possible(states, settled)
        parts = whole.diagram.parts
        drawn = parts if whole.is_one_burner else sorted(states.unit.parts)
        for part in (parts[key] for key in drawn):
            if part.family != "vent-damper":
                continue
            variable = Switch("blade", part.key)
            is_known = variable in states.contacts.variable.values()
            shut = states.positions.but(states.contacts.on(variable)) if is_known else can_be
            joined = _joined(states, part)
            for control, valves in trains(whole, states):
                if joined and control is not None and control.key not in joined:
                    continue
                for flow in flows(valves, states, settled):
                    shown = flow.flows & shut & can_be
                    if shown:
                        what = f"{flow.name} flows while {part.name} is not open"
                        yield PROPERTY.broken(
                            settled, shown, what, loads=flow.operators, about=(part.key,)
                        )
                        return


def _joined(states: States, damper: Part) -> set[str]:
    """The controls that leads join to a damper; another control on the same call has none."""
    companions = states.whole.companions
    return {
        control.key
        for control in states.unit.controls
        if damper in companions.all_of(control, "vent-damper", *_DAMPER_SIDE)
    }
