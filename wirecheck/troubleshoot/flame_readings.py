"""Readings at spark and flame: microamps, the ground jumper, a cleaned rod, and what is looked at.

None of them puts a probe where the spark is, and none bridges a safety: the jumper lies where a
lead belongs, and comes out again.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.conduction import Conduction
from wirecheck.circuit.nets import Nets
from wirecheck.model.diagram import Part
from wirecheck.sequence.flame import terminal_of
from wirecheck.sequence.no_go import NoGo
from wirecheck.troubleshoot.modes import costs
from wirecheck.troubleshoot.moments import Moments
from wirecheck.troubleshoot.reading import Reading, Stage
from wirecheck.troubleshoot.volt_readings import SPARK_CAUTION

SERIES_CAUTION = "Put the meter in series with power and gas off; hands off it while it sparks."
JUMPER_CAUTION = (
    "The jumper is for this test only: clip it with power and gas off, and take it out again; it "
    "takes the place of no lead and of no safety."
)
SMELL_CAUTION = "Wait about five minutes and smell for gas, low down for LP, before another trial."
ROD_CAUTION = "Power and gas off and the burner cold; no sandpaper: its grit insulates."
CABLE_CAUTION = "Power off before you touch the ignition cable: some 20 kV while it sparks."

LIGHTS = ("the main burner does not light", "the main burner lights now")


def flame_readings(nets: Nets, moments: Moments) -> Iterator[Reading]:
    """Every such reading, control by control."""
    no_go = NoGo(nets, Conduction(nets))
    for control in moments.controls:
        burner = moments.companions.of(control, "burner")
        if burner is not None:
            yield from _of_burner(nets, moments, no_go, control, burner)


def _of_burner(
    nets: Nets, moments: Moments, no_go: NoGo, control: Part, burner: Part
) -> Iterator[Reading]:
    show = nets.diagram.show
    ground, metal = terminal_of(control, "burner-ground"), terminal_of(burner, "burner-metal")
    if ground is not None and metal is not None:
        lights = "the main" if control.with_role("main-valve") else "the burner"
        yield Reading(
            f"trial:ground-jumper:{control.key}",
            "trial",
            Stage.RUN,
            f"Jumper from {show(ground)} on the control to the metal of {burner.name} "
            f"({show(metal)}), then a call: does {lights} light now?",
            "",
            costs()["ground-jumper"],
            LIGHTS,
            (JUMPER_CAUTION, SMELL_CAUTION),
            (ground, metal),
            part=control.key,
            about="ground-jumper",
        )
    rod = terminal_of(burner, "rod") or burner.with_role("electrode")[0]
    yield Reading(
        f"trial:clean-rod:{burner.key}",
        "trial",
        Stage.RUN,
        f"Clean the flame rod of {burner.name} with fine steel wool or a soft scouring cloth, then "
        "a call: does the main burner light now?",
        "",
        costs()["clean-rod"],
        LIGHTS,
        (ROD_CAUTION, SMELL_CAUTION),
        (rod,),
        part=control.key,
        about="clean-rod",
    )
    sense = terminal_of(control, "sense")
    if sense is not None and not no_go.senses_by_spark_lead(control) and nets.leads_at(sense):
        yield Reading(
            f"microamps:{control.key}",
            "microamps",
            Stage.RUN,
            f"Put a DC microammeter in series with the sense lead at {show(sense)}, then a call: "
            "read it while the flame burns",
            "uA",
            costs()["microamps"],
            (),
            (SERIES_CAUTION, SPARK_CAUTION),
            (sense,),
            part=control.key,
            about="signal",
            at_s=moments.at_s(Stage.RUN, control),
        )
    yield from _looks(nets, control, burner)


def _looks(nets: Nets, control: Part, burner: Part) -> Iterator[Reading]:
    show = nets.diagram.show
    yield Reading(
        f"look:gap:{burner.key}",
        "look",
        Stage.OFF,
        f"Power and gas off: look at the spark gap of {burner.name}, and at its insulators",
        "",
        costs()["look"],
        ("the gap is as its maker says", "too wide, bridged, or an insulator cracked"),
        (CABLE_CAUTION,),
        part=burner.key,
        about="gap",
    )
    spark, electrode = terminal_of(control, "spark"), terminal_of(burner, "electrode")
    if spark is None or electrode is None or not nets.joined(spark, electrode):
        return
    for number in nets.path(spark, electrode):
        yield Reading(
            f"look:cable:{number}",
            "look",
            Stage.OFF,
            f"Power off: look along the ignition cable from {show(spark)} to {show(electrode)}",
            "",
            costs()["look"],
            ("seated at both ends, whole", "off, broken, or burnt through to metal"),
            (CABLE_CAUTION,),
            lead=number,
            part=control.key,
            about="cable",
        )
