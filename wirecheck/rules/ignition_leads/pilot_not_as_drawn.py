"""The control is set up for the pilot burner that is there.

One-rod and two-rod are two hook-ups of one control; the wrong one lights and never proves.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import set_attribute
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts
from wirecheck.rules.ignition_leads.hookup import hookups
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_BAD = """\
part box is pilot-ignition-control: pilot one-rod
part pilot is pilot-burner: two-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD: green
"""

RULE = Rule(
    name="pilot-not-as-drawn",
    title="The control is set up for as many rods as the pilot burner has",
    family="ignition leads",
    breaks=Breaks.OPERATION,
    why=(
        "The number of rods decides whether the sense link is in and which lead carries the flame "
        "signal. Set up for the other pilot, the control lights it and does not prove it."
    ),
    blind_spots="A pilot that was exchanged since the file was typed.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "mismatch": Fault(
            "{control} is set up for a {stated} pilot, and {burner} is {drawn}: set the control up "
            "for {drawn}, or use the burner it is made for",
            "The pilot lights and is proved erratically or not at all.",
        ),
    },
    bad=(Example(_BAD, (("mismatch", "pilot one-rod"),)),),
    good=(Example(_BAD.replace("pilot one-rod", "pilot two-rod")),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find controls typed for one kind of pilot whose burner is typed as the other."""
    for hookup in facts.as_wired.once(hookups):
        stated = hookup.control.given.get("pilot")
        drawn = hookup.burner.given.get("pilot")
        if stated is None or drawn is None or stated.value == drawn.value:
            continue
        yield RULE.finding(
            facts,
            "mismatch",
            stated.span,
            terminals=(hookup.sense, hookup.electrode),
            edits=(set_attribute(facts.diagram, hookup.control.key, "pilot", str(drawn.value)),),
            control=hookup.control.name,
            burner=hookup.burner.name,
            stated=str(stated.value),
            drawn=str(drawn.value),
        )
