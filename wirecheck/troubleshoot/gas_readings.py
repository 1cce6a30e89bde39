"""Gas read by manometer behind a valve: whether it comes through on a call."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.nets import Nets
from wirecheck.troubleshoot.modes import costs
from wirecheck.troubleshoot.moments import Moments
from wirecheck.troubleshoot.part_faults import operators
from wirecheck.troubleshoot.reading import Reading, Stage
from wirecheck.troubleshoot.volt_readings import SPARK_CAUTION

TAP_CAUTION = (
    "Gas off while the manometer goes on and comes off; shut its tap again and leak-test it."
)
COMES_THROUGH = ("gas comes through", "none comes through")


def gas_readings(nets: Nets, moments: Moments) -> Iterator[Reading]:
    """One for each operator of the valve of each control."""
    for control in moments.controls:
        valve = moments.companions.of(control, "gas-valve")
        for element in operators(nets, valve) if valve is not None else ():
            assert valve is not None  # noqa: S101 - it has the operators
            number = nets.elements_of[valve.key].index(element)
            is_pilot = element.name.startswith("pilot")
            where = "pilot outlet" if is_pilot else "manifold"
            yield Reading(
                f"look:flow:{valve.key}:{number}",
                "look",
                Stage.RUN,
                f"Manometer at the {where} of {valve.name}, then a call: does gas come "
                f"through its {element.name or 'operator'}?",
                "",
                costs()["manometer"],
                COMES_THROUGH,
                (TAP_CAUTION, SPARK_CAUTION),
                (element.a, element.b),
                part=control.key,
                about="flow",
                at_s=moments.at_s(Stage.RUN, control),
            )
