"""A control proves the flame of the burner it lights.

Where two units stand side by side, a sense lead is easily taken to the neighbour's rod: then the
neighbour's flame holds this unit's gas open.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.cautions import UNLIT_GAS
from wirecheck.rules.facts import Facts
from wirecheck.rules.ignition_leads.landing import Mistake, landed_wrong
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source

_UNITS = """\
part box1 is pilot-ignition-control
part box2 is pilot-ignition-control
part pilot1 is pilot-burner: two-rod
part pilot2 is pilot-burner: two-rod
wire box1.SPARK to pilot1.SPARK: ignition-cable
wire box1.SENSE to {one}.ROD
wire box1.GND to pilot1.HOOD: green
wire box2.SPARK to pilot2.SPARK: ignition-cable
wire box2.SENSE to {two}.ROD
wire box2.GND to pilot2.HOOD: green
"""
_BAD = _UNITS.format(one="pilot2", two="pilot1")
_GOOD = _UNITS.format(one="pilot1", two="pilot2")

RULE = Rule(
    name="sense-from-another-burner",
    title="A control senses the flame of the burner that it sparks",
    family="ignition leads",
    breaks=Breaks.SAFETY,
    why=(
        "The proof of a flame is worth something only for the gas it proves. The neighbour's "
        "flame says nothing about this burner."
    ),
    blind_spots="Which valve feeds which burner: gas pipes are not drawn.",
    caution=UNLIT_GAS,
    sources=(Source("ANSI Z21.20-2005", "standard", "1.1.1"), PRACTICE),
    faults={
        "other-rod": Fault(
            "{sense} senses {wrong}, while {spark} lights {burner}: land the sense lead on {rod}",
            "The flame at {wrong_burner} holds this unit's gas open, whether {burner} burns or "
            "not; with {wrong_burner} off, {burner} lights and is never proved.",
        ),
    },
    bad=(Example(_BAD, (("other-rod", "pilot2.ROD"),)),),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find sense terminals on the rod of a burner that another control lights."""
    for landing in landed_wrong(facts, Mistake.SENSE_FROM_ANOTHER_BURNER):
        hookup, wrong = landing.hookup, landing.at
        yield RULE.finding(
            facts,
            "other-rod",
            facts.place(wrong),
            leads=facts.nets.leads_at(hookup.sense),
            terminals=(hookup.sense, wrong, hookup.senses),
            sense=facts.show(hookup.sense),
            wrong=facts.show(wrong),
            spark=facts.show(hookup.spark),
            burner=hookup.burner.name,
            rod=facts.show(hookup.senses),
            wrong_burner=facts.diagram.parts[wrong.part].name,
        )
