"""The ignition voltage is on ignition terminals only."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks
from wirecheck.properties.heater import otherwise
from wirecheck.properties.property import VOLTS_CAUTION, Broken, Property
from wirecheck.properties.states import States

PROPERTY = Property(
    name="spark-on-other-leads",
    title="The ignition voltage reaches nothing but the ignition lead and its electrode.",
    breaks=Breaks.SAFETY,
    why="Some 20 kV on a lead or a part not made for it: it jumps, shocks and destroys.",
    blind_spots="What it jumps to through the air is not looked at.",
    caution=VOLTS_CAUTION,
    bad=otherwise("wire box.SENSE to", "wire box.SPARK to"),
)


def broken(states: States) -> Iterator[Broken]:
    """Terminals of other circuits on the net of a spark terminal, in some position."""
    whole, settled = states.whole, states.idle_first
    nets = whole.nets
    for control in states.unit.controls:
        grounds = {nets.net(each) for each in control.with_role("burner-ground")} | {whole.earth}
        for spark in control.with_role("spark"):
            reached = settled.network.reached(nets.net(spark))
            for net, table in reached.items():
                if grounds & reached.keys():
                    break  # it runs to ground: there is no high voltage at all
                terminal = _other(states, net)
                if terminal is not None:
                    yield PROPERTY.broken(
                        settled,
                        table,
                        f"the ignition voltage of {control.name} reaches "
                        f"{whole.diagram.show(terminal)}",
                        about=(control.key,),
                        terminals=(spark, terminal),
                    )
                    break


def _other(states: States, net: int) -> Terminal | None:
    """A terminal of a net that is not made for the ignition voltage."""
    for terminal in states.whole.nets.members[net]:
        spec = states.whole.diagram.spec(terminal)
        if spec is not None and spec.circuit not in ("ignition", "any"):
            return terminal
    return None
