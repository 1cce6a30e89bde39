"""No more leads run in a cable than it has conductors."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
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
    name="cable-overfilled",
    title="No more leads run in a cable than it has conductors",
    family="workmanship",
    breaks=Breaks.WORKMANSHIP,
    why="One of the leads runs elsewhere than the drawing says, and will be looked for in vain.",
    blind_spots="Two leads that share a conductor by a splice within the cable count as one.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "too-many": Fault(
            "{count} leads are typed in cable {cable}, which has {conductors} conductors: correct "
            "the cable, or say where {lead} really runs",
            "Nothing; the drawing cannot be true.",
        ),
    },
    bad=(Example(_GOOD.replace("18/2", "18/1"), (("too-many", "run"),)),),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find cables with more conductors in use than they have."""
    for cable, conductors in facts.once(conductors_of):
        if cable.conductors and len(conductors) > cable.conductors:
            yield RULE.finding(
                facts,
                "too-many",
                cable.name_span,
                leads=[conductor[0] for conductor in conductors],
                count=str(len(conductors)),
                cable=cable.name,
                conductors=str(cable.conductors),
                lead=facts.lead(conductors[cable.conductors][0]),
            )
