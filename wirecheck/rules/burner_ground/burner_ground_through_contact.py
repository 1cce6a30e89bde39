"""Nothing opens or fuses the burner ground.

A contact in the ground lead is a joint more for a signal of microamps, and one that is meant to
open.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.burner_ground.way_back import Ends, astray
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part box is pilot-ignition-control
part pilot is pilot-burner: two-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD: green
"""
_BAD = _GOOD.replace("part pilot", "part fuse1 is fuse\npart pilot").replace(
    "box.GND to", "box.GND to fuse1 to"
)

RULE = Rule(
    name="burner-ground-through-contact",
    title="The burner ground is a plain lead, without switch or fuse",
    family="burner ground",
    breaks=Breaks.OPERATION,
    why=(
        "Spark and flame signal come back over the ground lead. When the contact opens, or is only "
        "dirty, the flame is not proved, and the spark has no way back but through the metal."
    ),
    blind_spots="A plug and socket, which is one conductor as long as it is plugged in.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "contact": Fault(
            "the burner ground from {ground} to {metal} goes through {contact}: run a green lead "
            "straight from {ground} to {metal}",
            "It works while {contact} is closed and clean; else the {flame} lights and is not "
            "proved.",
        ),
    },
    bad=(Example(_BAD, (("contact", "fuse1"),)),),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find burner grounds that only contacts complete."""
    for found in astray(facts, Ends.AT_CONTACT):
        ground, metal = found.hookup.ground, found.hookup.metal
        part = facts.part(found.far)
        yield RULE.finding(
            facts,
            "contact",
            facts.end_span(found.lead, found.far),
            leads=(found.lead,),
            terminals=(ground, metal, found.far),
            ground=facts.show(ground),
            metal=facts.show(metal),
            contact=part.name if part else facts.show(found.far),
            flame=found.hookup.flame,
        )
