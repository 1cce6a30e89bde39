"""The electrode is on the spark terminal, not on the sense terminal.

One push-on a blade further, and there is no spark at all, while the gas is opened for a whole
trial.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import move_end
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.rules.cautions import UNLIT_GAS
from wirecheck.rules.facts import Facts
from wirecheck.rules.ignition_leads.hookup import Hookup
from wirecheck.rules.ignition_leads.landing import Mistake, landed_wrong
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_BAD = """\
part box is pilot-ignition-control
part pilot is pilot-burner: one-rod
wire box.SENSE to pilot.SPARK: ignition-cable
wire box.GND to pilot.HOOD: green
"""
_GOOD = _BAD.replace("box.SENSE", "box.SPARK")

RULE = Rule(
    name="electrode-on-sense",
    title="The spark electrode is fed from the spark terminal",
    family="ignition leads",
    breaks=Breaks.SAFETY,
    why=(
        "The sense terminal gives no spark. The control opens the gas all the same and keeps it "
        "open, unlit, until the trial ends."
    ),
    blind_spots="Terminals whose printed labels were read wrong when the file was typed.",
    caution=UNLIT_GAS,
    sources=(PRACTICE,),
    faults={
        "no-spark": Fault(
            "the electrode {electrode} is on {sense}, and {spark} does not reach it: land the "
            "electrode's lead on {spark}",
            "No spark at the {flame}; unlit {gas} flows for a whole trial.",
        ),
    },
    bad=(Example(_BAD, (("no-spark", "box.SENSE"),)),),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find electrodes that only the sense terminal reaches."""
    for landing in landed_wrong(facts, Mistake.ELECTRODE_ON_SENSE):
        hookup = landing.hookup
        yield RULE.finding(
            facts,
            "no-spark",
            facts.place(hookup.sense),
            leads=facts.nets.leads_at(hookup.sense),
            terminals=(hookup.sense, hookup.electrode, hookup.spark),
            edits=_to_spark(facts, hookup),
            electrode=facts.show(hookup.electrode),
            sense=facts.show(hookup.sense),
            spark=facts.show(hookup.spark),
            flame=hookup.flame,
            gas=hookup.gas,
        )


def _to_spark(facts: Facts, hookup: Hookup) -> list[Edit]:
    """Move the end at the control, where it is plain which lead that is and nothing is there."""
    at_sense = facts.nets.leads_at(hookup.sense)
    if len(at_sense) != 1 or facts.is_wired(hookup.spark):
        return []
    edit = move_end(facts.diagram, at_sense[0], hookup.sense, hookup.spark)
    return [edit] if edit else []
