"""The spark lead goes to the electrode and the sense lead to the rod, not the other way round.

Exchanged, the spark jumps from the rod, and the electrode in the flame may even prove it: it
works by luck, over a lead that is not made for the ignition voltage.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import swap_ends
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.rules.cautions import IGNITION_VOLTAGE
from wirecheck.rules.facts import Facts
from wirecheck.rules.ignition_leads.hookup import Hookup
from wirecheck.rules.ignition_leads.landing import Mistake, landed_wrong
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_BAD = """\
part box is pilot-ignition-control
part pilot is pilot-burner: two-rod
wire box.SPARK to pilot.ROD: ignition-cable
wire box.SENSE to pilot.SPARK
wire box.GND to pilot.HOOD: green
"""
_GOOD = """\
part box is pilot-ignition-control
part pilot is pilot-burner: two-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD: green
"""

RULE = Rule(
    name="spark-and-sense-exchanged",
    title="The spark lead ends at the electrode, the sense lead at the rod",
    family="ignition leads",
    breaks=Breaks.SAFETY,
    why=(
        "The rod's insulator and lead are made for a signal of microamps, the electrode's for the "
        "spark. Exchanged, it lights by luck and proves by luck, until an insulator gives way."
    ),
    blind_spots="Electrode and rod exchanged inside the burner assembly, behind right labels.",
    caution=IGNITION_VOLTAGE,
    sources=(PRACTICE,),
    faults={
        "exchanged": Fault(
            "the spark and sense leads are exchanged: {spark} goes to the rod {rod} and {sense} to "
            "the electrode {electrode}; exchange them at the burner",
            "The spark jumps from the rod; the electrode in the flame may prove it. It works by "
            "luck, and stops without warning.",
        ),
    },
    bad=(Example(_BAD, (("exchanged", "pilot.ROD"),)),),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find controls that spark on the rod and sense on the electrode."""
    for landing in landed_wrong(facts, Mistake.EXCHANGED):
        hookup = landing.hookup
        yield RULE.finding(
            facts,
            "exchanged",
            facts.place(hookup.senses),
            leads=(*facts.nets.leads_at(hookup.spark), *facts.nets.leads_at(hookup.sense)),
            terminals=(hookup.spark, hookup.senses, hookup.sense, hookup.electrode),
            edits=_back(facts, hookup),
            spark=facts.show(hookup.spark),
            rod=facts.show(hookup.senses),
            sense=facts.show(hookup.sense),
            electrode=facts.show(hookup.electrode),
        )


def _back(facts: Facts, hookup: Hookup) -> tuple[Edit, ...]:
    """Exchange the two ends at the burner, if one lead lands on each."""
    at_rod = facts.nets.leads_at(hookup.senses)
    at_electrode = facts.nets.leads_at(hookup.electrode)
    if len(at_rod) != 1 or len(at_electrode) != 1:
        return ()
    return swap_ends(facts.diagram, at_rod[0], hookup.senses, at_electrode[0], hookup.electrode)
