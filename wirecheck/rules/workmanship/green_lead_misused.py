"""A green lead on the burner ground is a ground, and runs to the burner.

Used for something else it is taken for the ground by the next one, who then takes the real one for
a spare.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source

_GREEN: Final = frozenset({"green", "green/yellow", "yellow/green"})

_GOOD = """\
part box is pilot-ignition-control
part valve is gas-valve-3-wire
part pilot is pilot-burner: two-rod
plug box to valve: PV, MV
wire box.VC to valve.C: blue
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD: green
"""

RULE = Rule(
    name="green-lead-misused",
    title="A green lead on the burner ground runs to the burner",
    family="workmanship",
    breaks=Breaks.WORKMANSHIP,
    why="A green lead is taken for a ground, whatever it carries.",
    blind_spots="Splices and strips: what lies beyond them is not followed.",
    caution="",
    sources=(PRACTICE, Source("NEC", "law", "250.119")),
    faults={
        "other-use": Fault(
            "the {colour} lead {lead} is on the burner ground and serves {other}: run a lead of "
            "another colour from the terminal meant for it",
            "It works; the next one takes it for the burner ground.",
        ),
    },
    bad=(
        Example(
            _GOOD + "wire box.GND to valve.C: green\n",
            (("other-use", "box.GND to valve.C"),),
        ),
    ),
    good=(Example(_GOOD),),
    general=True,
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find green leads from a burner ground to a terminal that is no ground."""
    for number, lead in enumerate(facts.diagram.leads):
        colour = lead.given.get("colour")
        if colour is None or colour.value not in _GREEN:
            continue
        for here, there in ((lead.a, lead.b), (lead.b, lead.a)):
            if facts.role(here) == "burner-ground" and _is_other_use(facts, there):
                yield RULE.finding(
                    facts,
                    "other-use",
                    facts.lead_span(number),
                    leads=(number,),
                    terminals=(here, there),
                    lead=facts.lead(number),
                    colour=str(colour.value),
                    other=facts.show(there),
                )


def _is_other_use(facts: Facts, end: Terminal) -> bool:
    """Whether a lead from a burner ground to this end is one of the 24 V circuit."""
    spec = facts.diagram.spec(end)
    return spec is not None and spec.circuit == "24V" and spec.role != "burner-ground"
