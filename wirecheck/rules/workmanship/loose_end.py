"""Every lead lands at both ends, or its loose end is capped.

A bare end finds metal sooner or later.  Most often it is a lead that somebody took off and did not
land again.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import set_lead_attribute
from wirecheck.model.diagram import OPEN_END, Lead, Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.empty import counterparts, needed_and_empty
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_VALVE = """\
part box is pilot-ignition-control
part valve is gas-valve-3-wire
part pilot is pilot-burner: two-rod
plug box to valve: PV, MV, VC to C
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD: green
"""
_LINE = """\
part line is mains: 120 V
part pump is circulator
wire line.L1 to pump.L: black
wire line.N to pump.N: white
wire line.G to earth: green
"""

RULE = Rule(
    name="loose-end",
    title="Every lead lands at both ends, or its loose end is capped",
    family="workmanship",
    breaks=Breaks.WORKMANSHIP,
    why="A bare end touches metal or a terminal sooner or later: a short, or a circuit by chance.",
    blind_spots="Whether a cap holds.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "bare": Fault(
            "the lead from {terminal} ends loose: land it where it belongs, cap it, or take it out",
            "Nothing, until the bare end touches something.",
        ),
        "live-line": Fault(
            "the lead from {terminal} ends loose and is at line voltage: cap it in a box, or take "
            "it out",
            "A bare end at line voltage: shock, or a short where it touches metal.",
            Breaks.SAFETY,
        ),
        "both-ends": Fault(
            "this lead lands nowhere: cap both its ends, or take it out",
            "Nothing, until a bare end touches something.",
        ),
    },
    bad=(
        Example(_VALVE + "wire valve.C to open\n", (("bare", "open"),)),
        Example(_LINE + "wire line.L1 to open\n", (("live-line", "open"),)),
        Example(_LINE + "wire open to open\n", (("both-ends", "open to open"),)),
    ),
    good=(Example(_VALVE + "wire valve.C to open: capped\n"), Example(_LINE)),
    general=True,
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find leads with an open end; of one whose own place is empty, that is what is told."""
    for number, lead in enumerate(facts.diagram.leads):
        loose = [end for end in (lead.a, lead.b) if end.part == OPEN_END]
        if len(loose) == 1:
            yield from _one_end(facts, number, lead, loose[0])
        elif loose and "capped" not in lead.given:
            yield RULE.finding(
                facts,
                "both-ends",
                facts.lead_span(number),
                leads=(number,),
                edits=(set_lead_attribute(facts.diagram, number, "capped", "capped"),),
            )


def _one_end(facts: Facts, number: int, lead: Lead, loose: Terminal) -> Iterator[Finding]:
    landed = lead.b if lead.a == loose else lead.a
    homes = facts.once(counterparts).get(landed, ())
    is_told = any(home in facts.once(needed_and_empty) for home in homes)
    if not is_told and "capped" not in lead.given:
        yield RULE.finding(
            facts,
            "live-line" if facts.once(Legs).is_hot(landed) else "bare",
            facts.end_span(number, loose),
            leads=(number,),
            terminals=(landed,),
            edits=(set_lead_attribute(facts.diagram, number, "capped", "capped"),),
            terminal=facts.show(landed),
        )
