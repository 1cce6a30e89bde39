"""The ground lead goes to the burner itself, not to the cabinet.

Between the cabinet and the burner there is only the burner's mounting: paint, rust, a gasket.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import add_lead
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.burner_ground.way_back import Ends, astray, bond_closes
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_HEAD = """\
part box is pilot-ignition-control
part pilot is pilot-burner: two-rod{bond}
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
"""
_TO_CABINET = "wire box.GND to earth: green\n"

RULE = Rule(
    name="burner-ground-to-cabinet",
    title="The ground lead of the control ends on the burner, not on the cabinet",
    family="burner ground",
    breaks=Breaks.OPERATION,
    why=(
        "Cabinet and burner are joined by whatever the burner is screwed to. That carries a fault "
        "current and the spark, not the microamps of a flame signal."
    ),
    blind_spots="A burner that is bonded by a strap nobody typed.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "cabinet-only": Fault(
            "the ground lead of {end} goes to the cabinet only: run a green lead from {ground} to "
            "{metal} itself",
            "The {flame} lights, the spark goes on, the flame is not proved; the trial ends.",
        ),
        "cabinet-only-but-bonded": Fault(
            "the ground lead of {end} goes to the cabinet, and only the burner's mounting goes on "
            "from there: run a green lead from {ground} to {metal} itself",
            "It may work today. Once the mounting rusts, the {flame} lights and is not proved.",
        ),
    },
    bad=(
        Example(_HEAD.format(bond="") + _TO_CABINET, (("cabinet-only", "earth"),)),
        Example(
            _HEAD.format(bond=", bond solid") + _TO_CABINET,
            (("cabinet-only-but-bonded", "earth"),),
        ),
    ),
    good=(Example(_HEAD.format(bond="") + "wire box.GND to pilot.HOOD: green\n"),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find ground leads, of the control or of the burner, that end at earth and go no further."""
    for found in astray(facts, Ends.AT_CABINET):
        ground, metal = found.hookup.ground, found.hookup.metal
        bonded = bond_closes(facts, found.hookup)
        yield RULE.finding(
            facts,
            "cabinet-only-but-bonded" if bonded else "cabinet-only",
            facts.end_span(found.lead, found.far),
            leads=(found.lead,),
            terminals=(ground, metal),
            edits=(add_lead(facts.diagram, ground, metal, "green"),),
            end=facts.show(found.start),
            ground=facts.show(ground),
            metal=facts.show(metal),
            flame=found.hookup.flame,
        )
