"""A lead of a chain that ends loose is landed on the one terminal that waits for it.

Somebody took it off to measure, and went home: the loose end and the empty terminal are one
mistake.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import move_end
from wirecheck.model.diagram import OPEN_END
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.empty import homes_of_loose
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part fan is relay
wire xfmr.R to stat to fan.A
wire fan.B to xfmr.C
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="lead-not-landed",
    title="A lead of a chain of switches is landed on the terminal that waits for it",
    family="workmanship",
    breaks=Breaks.OPERATION,
    why="The chain ends in the air: what hangs on it does not work, and a bare end finds metal.",
    blind_spots="A lead left off on purpose, which is capped then.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "loose": Fault(
            "the lead from {landed} ends loose, and {home} has no lead: land it on {home}",
            "The circuit ends there: what hangs on {home} does not work.",
        ),
    },
    bad=(Example(_GOOD.replace("to fan.A", "to open"), (("loose", "open"),)),),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find the open lead that has one place to go."""
    for number, home in facts.once(homes_of_loose).items():
        lead = facts.diagram.leads[number]
        loose, landed = (lead.a, lead.b) if lead.a.part == OPEN_END else (lead.b, lead.a)
        edit = move_end(facts.diagram, number, loose, home)
        yield RULE.finding(
            facts,
            "loose",
            facts.end_span(number, loose),
            leads=(number,),
            terminals=(landed, home),
            edits=(edit,) if edit else (),
            landed=facts.show(landed),
            home=facts.show(home),
        )
