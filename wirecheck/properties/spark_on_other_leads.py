"""The ignition voltage is on ignition terminals only."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks
from wirecheck.properties.property import VOLTS_CAUTION, Broken, Property
from wirecheck.properties.states import States

PROPERTY = Property(
    name="spark-on-other-leads",
    title="The ignition voltage reaches nothing but the ignition lead and its electrode.",
    breaks=Breaks.SAFETY,
    why="Some 20 kV on a lead or a part not made for it: it jumps, shocks and destroys.",
    blind_spots="What it jumps to through the air is not looked at.",
    caution=VOLTS_CAUTION,
)


def broken(states: States) -> Iterator[Broken]:
    """Terminals of other circuits on the net of a spark terminal, in some position."""
    whole, settled = states.whole, states.idle_first
    for control in states.unit.controls:
        for spark in control.with_role("spark"):
            for net, table in settled.network.reached(whole.nets.net(spark)).items():
                for terminal in whole.nets.members[net]:
                    spec = whole.diagram.spec(terminal)
                    if spec is not None and spec.circuit not in ("ignition", "any"):
                        shown = whole.diagram.show(terminal)
                        yield PROPERTY.broken(
                            settled,
                            table,
                            f"the ignition voltage of {control.name} reaches {shown}",
                            about=(control.key,),
                            terminals=(spark, terminal),
                        )
                        break
