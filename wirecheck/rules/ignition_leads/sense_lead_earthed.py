"""Rod and sense lead touch no metal: the flame alone closes the circuit to the burner.

A grounded rod gives no direct current, and that is what the control takes for a flame.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.astray import astray_lead
from wirecheck.rules.facts import Facts
from wirecheck.rules.ignition_leads.landing import Landing, Mistake, landed_wrong
from wirecheck.rules.ignition_leads.touching import Touching, touching_metal
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source

_GOOD = """\
part box is pilot-ignition-control
part pilot is pilot-burner: two-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD: green
"""

_ONE_ROD = """\
part box is pilot-ignition-control
part pilot is pilot-burner: one-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.GND to pilot.HOOD: green
"""

RULE = Rule(
    name="sense-lead-earthed",
    title="The flame rod and its lead are insulated from all metal",
    family="ignition leads",
    breaks=Breaks.OPERATION,
    why=(
        "The flame passes more current one way than the other; the control proves it by that "
        "difference. Metal on metal passes both alike, so a grounded rod proves nothing."
    ),
    blind_spots="A cracked insulator, soot, or a rod bent against the hood.",
    caution="",
    sources=(
        PRACTICE,
        Source(
            "Jones, Application of Combustion Principles to Domestic Gas Burner Design (1990)",
            "textbook",
            "p. 161",
        ),
    ),
    faults={
        "landed": Fault(
            "the sense lead is landed on grounded metal at {wrong}: run it from {sense} to {rod} "
            "and nowhere else",
            "The {flame} lights and is never proved; the trial ends.",
        ),
        "not-needed": Fault(
            "{sense} is landed on grounded metal at {wrong}: take the lead off; a one-rod pilot "
            "needs nothing on {sense}",
            "The {flame} lights and is never proved; the trial ends.",
        ),
        "touches": Fault(
            "the sense lead {lead} touches metal: replace it and keep it clear of metal and heat",
            "The {flame} lights and is not proved while the lead touches; the trial ends.",
        ),
    },
    bad=(
        Example(_GOOD + "wire pilot.ROD to pilot.HOOD\n", (("landed", "pilot.HOOD"),)),
        Example(_ONE_ROD + "wire box.SENSE to pilot.HOOD\n", (("not-needed", "pilot.HOOD"),)),
        Example(
            _GOOD.replace("pilot.ROD", "pilot.ROD: touches earth"),
            (("touches", "box.SENSE to pilot.ROD"),),
        ),
    ),
    good=(Example(_GOOD), Example(_ONE_ROD)),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find sense leads landed on grounded metal, and those found touching it."""
    for landing in landed_wrong(facts, Mistake.SENSE_EARTHED):
        yield _landed(facts, landing)
    for touching in touching_metal(facts):
        if not touching.ignition:
            yield _touches(facts, touching)


def _landed(facts: Facts, landing: Landing) -> Finding:
    hookup = landing.hookup
    astray = astray_lead(facts, *hookup.sense_lead)
    return RULE.finding(
        facts,
        "landed" if hookup.rod else "not-needed",
        facts.end_span(*astray) if astray else facts.place(hookup.sense),
        leads=astray[:1] if astray else (),
        terminals=(hookup.sense, hookup.senses),
        sense=facts.show(hookup.sense),
        rod=facts.show(hookup.senses),
        wrong=facts.show(astray[1] if astray else hookup.ground),
        flame=hookup.flame,
    )


def _touches(facts: Facts, touching: Touching) -> Finding:
    lead = facts.diagram.leads[touching.lead]
    return RULE.finding(
        facts,
        "touches",
        facts.lead_span(touching.lead),
        leads=(touching.lead,),
        terminals=(lead.a, lead.b),
        lead=facts.lead(touching.lead),
        flame=touching.hookup.flame,
    )
