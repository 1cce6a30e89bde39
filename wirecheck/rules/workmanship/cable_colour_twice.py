"""In a cable each colour is one conductor.

Two leads of one colour in one cable cannot both be there: a colour was misread, or a lead runs in
another cable.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding, Related
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule
from wirecheck.rules.workmanship.conductors import conductors_of

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part fan is relay
cable run: 18/2, 30 ft
wire xfmr.R to stat.R: red, in run
wire stat.W to fan.A: white, in run
wire fan.B to xfmr.C
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="cable-colour-twice",
    title="In a cable each colour is one conductor",
    family="workmanship",
    breaks=Breaks.WORKMANSHIP,
    why="The colour is how the conductor is found at the other end of the cable.",
    blind_spots="Cables with numbered conductors of one colour: type the numbers instead.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "twice": Fault(
            "the leads {lead} and {first} are both {colour} in cable {cable}, which has each "
            "colour once: look again which conductor it is",
            "Nothing; the drawing cannot be true, and at the far end the leads may be exchanged.",
        ),
    },
    bad=(Example(_GOOD.replace("white, in run", "red, in run"), (("twice", "stat.W to fan.A"),)),),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find conductors of one cable that were typed with one colour, by two statements."""
    leads = facts.diagram.leads
    for cable, conductors in facts.once(conductors_of):
        first_of: dict[object, int] = {}
        for conductor in conductors:
            number = conductor[0]
            colour = leads[number].given.get("colour")
            if colour is None or "number" in leads[number].given:
                continue
            first = first_of.setdefault(colour.value, number)
            if leads[first].run != leads[number].run:
                yield RULE.finding(
                    facts,
                    "twice",
                    facts.lead_span(number),
                    leads=(number, first),
                    related=(Related(facts.lead_span(first), "the other one"),),
                    lead=facts.lead(number),
                    first=facts.lead(first),
                    colour=str(colour.value),
                    cable=cable.name,
                )
