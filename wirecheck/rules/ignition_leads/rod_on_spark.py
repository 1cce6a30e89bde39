"""Only the spark electrode is on the control's spark terminal; the flame rod is on its own.

Two leads that both find a free blade on the spark terminal are an old story: it lights, the
flame is never proved, and a lead made for microamps carries the ignition voltage.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import move_end
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.rules.astray import astray_lead
from wirecheck.rules.cautions import IGNITION_VOLTAGE
from wirecheck.rules.facts import Facts
from wirecheck.rules.ignition_leads.landing import Mistake, landed_wrong
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_HEAD = "part box is pilot-ignition-control\npart pilot is pilot-burner: two-rod\n"
_TAIL = "wire box.GND to pilot.HOOD: green\n"
_SPARK = "wire box.SPARK to pilot.SPARK: ignition-cable\n"

RULE = Rule(
    name="rod-on-spark",
    title="The spark terminal feeds the spark electrode alone",
    family="ignition leads",
    breaks=Breaks.SAFETY,
    why=(
        "The rod senses only through the sense terminal. On the spark terminal it is never "
        "proved, and its lead, mostly ordinary wire, carries the ignition voltage to wherever "
        "its insulation is weak."
    ),
    blind_spots="Two leads under one push-on that the file lists as one.",
    caution=IGNITION_VOLTAGE,
    sources=(PRACTICE,),
    faults={
        "rod-lead-on-spark": Fault(
            "the rod {rod} is on {spark}, the ignition voltage: land its lead on {sense}",
            "It may light, the flame is never proved, the trial ends. Some 20 kV stands on a lead "
            "that is not made for it.",
        ),
        "terminals-joined": Fault(
            "{spark} and {sense} are joined: take them apart, so that {spark} goes to {electrode} "
            "alone",
            "The ignition voltage goes into the flame amplifier; no flame is proved and the "
            "control may be destroyed.",
        ),
    },
    bad=(
        Example(
            _HEAD + _SPARK + "wire box.SPARK to pilot.ROD\n" + _TAIL,
            (("rod-lead-on-spark", "box.SPARK"),),
        ),
        Example(
            _HEAD + _SPARK + "wire box.SENSE to pilot.ROD\njumper box.SPARK to box.SENSE\n" + _TAIL,
            (("terminals-joined", "box.SPARK"),),
        ),
    ),
    good=(Example(_HEAD + _SPARK + "wire box.SENSE to pilot.ROD\n" + _TAIL),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find rods, and sense terminals, on the net of the spark terminal."""
    for landing in landed_wrong(facts, Mistake.ROD_ON_SPARK):
        spark, sense = landing.hookup.spark, landing.hookup.sense
        electrode, senses = landing.hookup.electrode, landing.hookup.senses
        astray = astray_lead(facts, *landing.hookup.sense_lead)
        joined = facts.as_wired.joined(spark, sense)
        yield RULE.finding(
            facts,
            "terminals-joined" if joined else "rod-lead-on-spark",
            facts.end_span(*astray) if astray else facts.place(spark),
            leads=astray[:1] if astray else (),
            terminals=(spark, sense, senses, electrode),
            edits=_to_sense(facts, astray[0], spark, sense) if astray and not joined else (),
            rod=facts.show(senses),
            spark=facts.show(spark),
            sense=facts.show(sense),
            electrode=facts.show(electrode),
        )


def _to_sense(facts: Facts, number: int, spark: Terminal, sense: Terminal) -> list[Edit]:
    lead = facts.diagram.leads[number]
    edit = move_end(facts.diagram, number, spark, sense) if spark in (lead.a, lead.b) else None
    return [edit] if edit else []
