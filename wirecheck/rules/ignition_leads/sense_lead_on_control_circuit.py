"""The sense terminal sees the flame rod and nothing else.

The flame amplifier listens for microamps.  24 V on it is no flame signal at best, and the end of
the amplifier at worst.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.astray import astray_lead
from wirecheck.rules.facts import Facts
from wirecheck.rules.ignition_leads.hookup import Hookup
from wirecheck.rules.ignition_leads.landing import Mistake, landed_wrong, wrong_end
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part box is pilot-ignition-control
part pilot is pilot-burner: two-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD: green
"""
_BAD = _GOOD.replace("box.SENSE", "box.24V")

RULE = Rule(
    name="sense-lead-on-control-circuit",
    title="The flame rod is connected to the sense terminal and to no other circuit",
    family="ignition leads",
    breaks=Breaks.OPERATION,
    why=(
        "The flame signal is some microamps of direct current; the control circuit's alternating "
        "current drowns it and may destroy the flame amplifier."
    ),
    blind_spots="Leakage between terminals that are only dirty or damp.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "joined": Fault(
            "the flame signal's circuit is joined to {wrong}: take that lead off; {belongs}",
            "The {flame} lights and is not proved; the flame amplifier may be destroyed.",
        ),
    },
    bad=(Example(_BAD, (("joined", "box.24V"),)),),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find terminals of other circuits on the net of a sense terminal or rod."""
    for landing in landed_wrong(facts, Mistake.SENSE_ON_CONTROL_CIRCUIT):
        hookup = landing.hookup
        astray = astray_lead(facts, *hookup.sense_lead)
        wrong = wrong_end(facts, landing, astray)
        yield RULE.finding(
            facts,
            "joined",
            facts.end_span(*astray) if astray else facts.place(wrong),
            leads=astray[:1] if astray else (),
            terminals=(hookup.sense, hookup.senses, wrong),
            belongs=_belongs(facts, hookup),
            wrong=facts.show(wrong),
            flame=hookup.flame,
        )


def _belongs(facts: Facts, hookup: Hookup) -> str:
    sense = facts.show(hookup.sense)
    if hookup.rod is None:
        return f"a one-rod pilot needs nothing on {sense}"
    return f"the sense lead runs from {sense} to {facts.show(hookup.rod)} alone"
