"""The control's burner ground has a lead of its own to the burner's metal.

The spark jumps a rusty bracket, the flame signal of a few microamps does not: without the lead
the pilot lights, the spark goes on, and the main valve never opens.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import add_lead
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.burner_ground.way_back import NoLead, bond_closes, no_lead
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_HEAD = """\
part box is pilot-ignition-control
part pilot is pilot-burner: two-rod{bond}
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
"""
_BARE = _HEAD.format(bond="")

RULE = Rule(
    name="burner-ground-missing",
    title="The burner ground of the control reaches the burner's metal by a lead",
    family="burner ground",
    breaks=Breaks.OPERATION,
    why=(
        "The flame signal comes back from the burner's metal to the control over this lead. "
        "Screws and brackets carry it while they are clean; rust and heat end that."
    ),
    blind_spots="A strap that is there but not typed, and a lead that is there but loose.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "no-lead": Fault(
            "no lead runs from {ground} to {metal}: run a green lead from the control to the "
            "burner itself, not to the cabinet",
            "The {flame} lights, the spark goes on, the flame is not proved; the trial ends.",
        ),
        "no-lead-but-bonded": Fault(
            "no lead runs from {ground} to {metal}, only the burner's mounting joins them: run a "
            "green lead from the control to the burner itself",
            "It may work today. Once the mounting rusts, the {flame} lights and is not proved.",
        ),
        "at-another-terminal": Fault(
            "no lead lands on {ground}; {metal} comes back to the control by way of its common: "
            "run a green lead from {ground} to {metal}",
            "It works while every joint of the longer way is good; then the {flame} lights and is "
            "not proved.",
            Breaks.WORKMANSHIP,
        ),
    },
    bad=(
        Example(_BARE, (("no-lead", "box"),)),
        Example(
            _HEAD.format(bond=", bond solid") + "wire box.COM to earth: green\n",
            (("no-lead-but-bonded", "box"),),
        ),
        Example(_BARE + "wire box.COM to pilot.HOOD: green\n", (("at-another-terminal", "box"),)),
    ),
    good=(Example(_BARE + "wire box.GND to pilot.HOOD: green\n"),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find ground terminals from which no lead goes to the burner."""
    for found in no_lead(facts):
        ground, metal = found.hookup.ground, found.hookup.metal
        yield RULE.finding(
            facts,
            _fault(facts, found),
            facts.place(ground) if facts.is_wired(ground) else found.hookup.control.name_span,
            leads=facts.nets.leads_at(ground),
            terminals=(ground, metal),
            edits=(add_lead(facts.diagram, ground, metal, "green"),),
            ground=facts.show(ground),
            metal=facts.show(metal),
            flame=found.hookup.flame,
        )


def _fault(facts: Facts, found: NoLead) -> str:
    if found.by_common:
        return "at-another-terminal"
    return "no-lead-but-bonded" if bond_closes(facts, found.hookup) else "no-lead"
