"""A lead runs from a separate flame rod to the control's sense terminal.

A two-rod burner sends its flame signal over a lead of its own.  Without it the flame burns and
the control does not know.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import add_lead
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.facts import Facts
from wirecheck.rules.ignition_leads.landing import Mistake, landed_wrong
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_BAD = """\
part box is pilot-ignition-control
part pilot is pilot-burner: two-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.GND to pilot.HOOD: green
"""
_GOOD = _BAD + "wire box.SENSE to pilot.ROD\n"

RULE = Rule(
    name="sense-lead-missing",
    title="A separate flame rod is connected to the sense terminal",
    family="ignition leads",
    breaks=Breaks.OPERATION,
    why=(
        "The flame signal has no other way to the control. It lights every time and is never "
        "proved."
    ),
    blind_spots="A dirty rod, a cracked insulator, or a broken lead look the same at the unit.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "no-lead": Fault(
            "no lead runs from the flame rod {rod} to {sense}: run one, well clear of the spark "
            "lead",
            "The {flame} lights and is not proved; the trial ends.",
        ),
    },
    bad=(Example(_BAD, (("no-lead", "box"),)),),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find rods that do not reach the sense terminal of their control."""
    for landing in landed_wrong(facts, Mistake.SENSE_MISSING):
        sense, rod = landing.hookup.sense, landing.hookup.senses
        wired = [end for end in (sense, rod) if facts.is_wired(end)]
        yield RULE.finding(
            facts,
            "no-lead",
            facts.place(wired[0]) if wired else landing.hookup.control.name_span,
            leads=[number for end in wired for number in facts.nets.leads_at(end)],
            terminals=(sense, rod),
            edits=() if wired else (add_lead(facts.diagram, sense, rod),),
            sense=facts.show(sense),
            rod=facts.show(rod),
            flame=landing.hookup.flame,
        )
