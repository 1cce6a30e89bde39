"""A lead runs from the control's spark terminal to the electrode.

Without it the control goes through its trial as if all were well: gas is opened, nothing sparks.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import add_lead
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.rules.cautions import UNLIT_GAS
from wirecheck.rules.facts import Facts
from wirecheck.rules.ignition_leads.landing import Landing, Mistake, landed_wrong
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_HEAD = "part box is pilot-ignition-control\npart pilot is pilot-burner: one-rod\n"
_SPARK = "wire box.SPARK to pilot.SPARK: ignition-cable\n"
_GROUND = "wire box.GND to pilot.HOOD: green\n"

RULE = Rule(
    name="spark-lead-missing",
    title="The spark terminal reaches the electrode by a lead",
    family="ignition leads",
    breaks=Breaks.OPERATION,
    why=(
        "No lead, no spark: gas is opened for a trial and nothing lights it. On a one-rod pilot "
        "the same lead also brings the flame signal back."
    ),
    blind_spots="A lead that is broken inside its insulation, or pulled out of its ferrule.",
    caution=UNLIT_GAS,
    sources=(PRACTICE,),
    faults={
        "no-lead": Fault(
            "no lead runs from {spark} to the electrode {electrode}: run an ignition cable "
            "between them, as short as it can be",
            "No spark at the {flame}; unlit {gas} until the trial ends.",
        ),
        "electrode-elsewhere": Fault(
            "the electrode {electrode} is on {wrong}, where there is no spark: take it off and run "
            "an ignition cable from {spark}",
            "No spark at the {flame}; unlit {gas} until the trial ends.",
        ),
    },
    bad=(
        Example(_HEAD + _GROUND, (("no-lead", "box"),)),
        Example(
            _HEAD + "wire box.MV to pilot.SPARK: ignition-cable\n" + _GROUND,
            (("electrode-elsewhere", "box.MV"),),
        ),
    ),
    good=(Example(_HEAD + _SPARK + _GROUND),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find controls whose spark reaches no electrode, though their burner is drawn."""
    for landing in landed_wrong(facts, Mistake.SPARK_MISSING):
        hookup, wrong = landing.hookup, landing.at
        elsewhere = wrong != hookup.spark
        yield RULE.finding(
            facts,
            "electrode-elsewhere" if elsewhere else "no-lead",
            facts.place(wrong) if facts.is_wired(wrong) else hookup.control.name_span,
            leads=facts.nets.leads_at(hookup.electrode if elsewhere else hookup.spark),
            terminals=(hookup.spark, hookup.electrode),
            edits=_run_one(facts, landing),
            breaks=hookup.sparkless,
            spark=facts.show(hookup.spark),
            electrode=facts.show(hookup.electrode),
            wrong=facts.show(wrong),
            flame=hookup.flame,
            gas=hookup.gas,
        )


def _run_one(facts: Facts, landing: Landing) -> list[Edit]:
    """Add the lead, where no lead is there that should be moved."""
    spark, electrode = landing.hookup.spark, landing.hookup.electrode
    if facts.is_wired(spark) or facts.is_wired(electrode):
        return []
    return [add_lead(facts.diagram, spark, electrode, "ignition-cable")]
