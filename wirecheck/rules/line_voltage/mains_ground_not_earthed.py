"""The ground of the line supply reaches the unit's earth.

It is what trips the breaker when a line lead touches the cabinet.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import add_lead
from wirecheck.model.diagram import EARTH
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.facts import Facts
from wirecheck.rules.line_voltage.cautions import LINE_VOLTAGE
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source

_GOOD = """\
part line is mains: 120 V
part pump is circulator
splice joint
wire line.L1 to pump.L: black
wire line.N to pump.N: white
wire line.G to joint to earth: green
"""

RULE = Rule(
    name="mains-ground-not-earthed",
    title="The ground of the line supply reaches the unit's earth",
    family="line voltage",
    breaks=Breaks.SAFETY,
    why=(
        "A line lead that touches the cabinet makes it live. Only the ground lead brings enough "
        "current back to trip the breaker."
    ),
    blind_spots="A ground terminal with no lead at all: a sketch leaves it out.",
    caution=LINE_VOLTAGE,
    sources=(PRACTICE, Source("NEC", "law", "250.119, which reserves green for this lead")),
    faults={
        "not-reached": Fault(
            "the ground lead from {ground} does not reach the unit's earth: land it on the unit's "
            "ground screw",
            "Nothing to see, until a line lead touches the cabinet and the cabinet is live.",
        ),
    },
    bad=(Example(_GOOD.replace("joint to earth", "joint"), (("not-reached", "line.G"),)),),
    good=(Example(_GOOD),),
    stands_back_for=("line-shorted",),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find wired ground terminals of the line that are not on earth."""
    for mains in facts.of("mains"):
        for ground in mains.with_role("line-ground"):
            is_wired = facts.is_wired(ground) and facts.is_traced(ground)
            if is_wired and facts.net(ground) != facts.earth:
                leads = facts.nets.leads_at(ground)
                is_broken = not all(facts.diagram.leads[number].conducts for number in leads)
                yield RULE.finding(
                    facts,
                    "not-reached",
                    facts.place(ground),
                    leads=leads,
                    terminals=(ground,),
                    edits=() if is_broken else (add_lead(facts.diagram, ground, EARTH, "green"),),
                    ground=facts.show(ground),
                )
