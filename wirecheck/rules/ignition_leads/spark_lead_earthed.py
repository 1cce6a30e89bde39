"""The spark lead reaches the electrode and touches no metal on its way.

What the spark coil makes goes to ground where the lead touches; at the electrode there is
nothing left to jump.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import swap_ends
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.rules.astray import astray_lead
from wirecheck.rules.cautions import IGNITION_VOLTAGE
from wirecheck.rules.facts import Facts
from wirecheck.rules.ignition_leads.hookup import Hookup
from wirecheck.rules.ignition_leads.landing import Mistake, landed_wrong
from wirecheck.rules.ignition_leads.touching import Touching, touching_metal
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_HEAD = "part box is pilot-ignition-control\npart pilot is pilot-burner: one-rod\n"
_SPARK = "wire box.SPARK to pilot.SPARK: ignition-cable\n"
_GROUND = "wire box.GND to pilot.HOOD: green\n"

RULE = Rule(
    name="spark-lead-earthed",
    title="The spark lead touches nothing but the electrode",
    family="ignition leads",
    breaks=Breaks.OPERATION,
    why=(
        "The spark takes the shortest way to ground. If that is a nicked lead on the cabinet or a "
        "lead on the wrong terminal, the gas is opened and nothing lights it."
    ),
    blind_spots="A cracked insulator, and a lead that sparks over only when it is damp.",
    caution=IGNITION_VOLTAGE,
    sources=(PRACTICE,),
    faults={
        "landed": Fault(
            "the ignition lead of {spark} is landed on grounded metal at {wrong}: run it from "
            "{spark} to {electrode} and take it off {wrong}",
            "No spark at the electrode, unlit {gas} until the trial ends.",
        ),
        "touches": Fault(
            "the ignition lead {lead} touches metal: replace it, and keep it clear of the cabinet",
            "The spark jumps where the lead touches, none at the electrode; unlit {gas} until the "
            "trial ends.",
        ),
        "exchanged-with-ground": Fault(
            "the spark and ground leads are exchanged at the burner: {spark} goes to the metal "
            "{metal} and {ground} to the electrode {electrode}; exchange them",
            "The burner and the metal it is screwed to carry the ignition voltage while it sparks.",
            Breaks.SAFETY,
        ),
    },
    bad=(
        Example(
            _HEAD + "wire box.SPARK to box.COM: ignition-cable\n" + _GROUND,
            (("landed", "box.COM"),),
        ),
        Example(
            _HEAD + _SPARK.replace("cable", "cable, touches earth") + _GROUND,
            (("touches", "box.SPARK to pilot.SPARK"),),
        ),
        Example(
            _HEAD
            + _SPARK.replace("pilot.SPARK", "pilot.HOOD")
            + _GROUND.replace("pilot.HOOD", "pilot.SPARK"),
            (("exchanged-with-ground", "pilot.HOOD"),),
        ),
    ),
    good=(Example(_HEAD + _SPARK + _GROUND),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find spark leads landed on grounded metal, and those found touching it."""
    for landing in landed_wrong(facts, Mistake.SPARK_EARTHED):
        yield _landed(facts, landing.hookup)
    for touching in touching_metal(facts):
        if touching.ignition:
            yield _touches(facts, touching)


def _landed(facts: Facts, hookup: Hookup) -> Finding:
    exchanged = hookup.exchanged_with_ground(facts.as_wired)
    astray = astray_lead(facts, hookup.spark, hookup.electrode)
    wrong = hookup.metal if exchanged else astray[1] if astray else hookup.ground
    return RULE.finding(
        facts,
        "exchanged-with-ground" if exchanged else "landed",
        facts.end_span(*astray) if astray else facts.place(wrong),
        leads=astray[:1] if astray else (),
        terminals=(hookup.spark, hookup.electrode),
        edits=_exchange(facts, hookup) if exchanged else (),
        breaks=None if exchanged else hookup.sparkless,
        spark=facts.show(hookup.spark),
        electrode=facts.show(hookup.electrode),
        metal=facts.show(hookup.metal),
        ground=facts.show(hookup.ground),
        wrong=facts.show(wrong),
        gas=hookup.gas,
    )


def _exchange(facts: Facts, hookup: Hookup) -> tuple[Edit, ...]:
    at_metal = facts.nets.leads_at(hookup.metal)
    at_electrode = facts.nets.leads_at(hookup.electrode)
    if len(at_metal) != 1 or len(at_electrode) != 1:
        return ()
    return swap_ends(facts.diagram, at_metal[0], hookup.metal, at_electrode[0], hookup.electrode)


def _touches(facts: Facts, touching: Touching) -> Finding:
    lead = facts.diagram.leads[touching.lead]
    return RULE.finding(
        facts,
        "touches",
        facts.lead_span(touching.lead),
        leads=(touching.lead,),
        terminals=(lead.a, lead.b),
        breaks=touching.hookup.sparkless,
        lead=facts.lead(touching.lead),
        gas=touching.hookup.gas,
    )
