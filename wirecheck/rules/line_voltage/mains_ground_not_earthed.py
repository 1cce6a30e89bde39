"""The ground of the line supply reaches the unit's earth.

It is what trips the breaker when a line lead touches the cabinet.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import add_lead
from wirecheck.model.diagram import EARTH, Part
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
_UNIT = """\
part line is mains: 120 V
part xfmr is transformer
part stat is thermostat
part fan is relay
wire line.L1 to xfmr.L1: black
wire line.N to xfmr.N: white
wire xfmr.R to stat to fan to xfmr.C
wire xfmr.C to earth: green
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
    blind_spots="A ground terminal with no lead at all, where no lead to earth is drawn either.",
    caution=LINE_VOLTAGE,
    sources=(PRACTICE, Source("NEC", "law", "250.119, which reserves green for this lead")),
    faults={
        "not-reached": Fault(
            "the ground lead from {ground} does not reach the unit's earth: land it on the unit's "
            "ground screw",
            "Nothing to see, until a line lead touches the cabinet and the cabinet is live.",
        ),
        "no-lead": Fault(
            "no ground lead runs from {ground} to the unit's earth: run one to the unit's ground "
            "screw",
            "Nothing to see, until a line lead touches the cabinet and the cabinet is live.",
        ),
    },
    bad=(
        Example(_GOOD.replace("joint to earth", "joint"), (("not-reached", "line.G"),)),
        Example(_UNIT, (("no-lead", "line"),)),
    ),
    good=(Example(_GOOD), Example(_UNIT + "wire line.G to earth: green\n")),
    stands_back_for=("line-shorted",),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find ground terminals of the line that are not on earth, where earth is drawn."""
    for mains in facts.of("mains"):
        for ground in mains.with_role("line-ground"):
            if facts.net(ground) == facts.earth or not facts.is_traced(ground):
                continue
            leads = facts.nets.leads_at(ground)
            if not leads and not (facts.is_wired(EARTH) and _is_in_use(facts, mains)):
                continue  # a sketch that leaves all grounds out
            is_broken = not all(facts.diagram.leads[number].conducts for number in leads)
            yield RULE.finding(
                facts,
                "not-reached" if leads else "no-lead",
                facts.place(ground),
                leads=leads,
                terminals=(ground,),
                edits=() if is_broken else (add_lead(facts.diagram, ground, EARTH, "green"),),
                ground=facts.show(ground),
            )


def _is_in_use(facts: Facts, mains: Part) -> bool:
    return any(facts.is_wired(leg) for leg in mains.with_role("line-hot"))
