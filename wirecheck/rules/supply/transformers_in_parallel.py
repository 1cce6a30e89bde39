"""Two transformers are joined on one side at most.

Joined on both they are one supply: in phase, the one that is off is fed backwards and its primary
is live; out of phase, each shorts the other.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.language.edit import remove_lead
from wirecheck.model.diagram import LeadRole
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.nearest import both
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts, Supply
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source
from wirecheck.rules.sides import Trace

_GOOD = """\
part heat is transformer
part cool is transformer
part stat is thermostat: feeds two
part valve is gas-valve-2-wire
part fan is relay
wire heat.R to stat.Rh
wire stat.W to valve to heat.C
wire cool.R to stat.Rc
wire stat.G to fan to cool.C
wire heat.C to earth: green
wire cool.C to earth: green
"""

#: Stands for the area of every common that reaches earth.
_EARTH: Final = -1

RULE = Rule(
    name="transformers-in-parallel",
    title="Two transformers are joined on one side at most",
    family="supply",
    breaks=Breaks.SAFETY,
    why=(
        "Commons may share an earth, and that is harmless alone. With the hot sides joined as well "
        "each transformer feeds the other: switched off, its primary is live from behind."
    ),
    blind_spots="Two transformers bought as a pair to be run together.",
    caution=MOVING_LEADS + " Switching one transformer off does not make it dead.",
    sources=(
        PRACTICE,
        Source("NEC", "law", "725.121(B)", from_memory=True),
    ),
    faults={
        "both-sides": Fault(
            "the {noun} {lead} joins the hot sides of {supplies}, whose common sides are joined "
            "too: take it out and let each feed its own circuit",
            "In phase each feeds the other, and the primary of one that is switched off is live; "
            "out of phase there are 48 V between them and each shorts the other.",
        ),
    },
    bad=(Example(_GOOD + "jumper stat.Rh to stat.Rc\n", (("both-sides", "stat.Rh to stat.Rc"),)),),
    good=(Example(_GOOD),),
    stands_back_for=("hot-side-earthed", "secondary-shorted", "line-and-24-volts-joined"),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find supplies joined on both sides; one finding for each group of them."""
    sides = facts.sides
    groups: dict[frozenset[int], list[Supply]] = {}
    for supply in facts.supplies:
        if supply.part.family != "boiler-call":
            common = _EARTH if facts.is_grounded(supply.common) else sides.area(supply.common)
            groups.setdefault(frozenset((sides.area(supply.hot), common)), []).append(supply)
    for group in groups.values():
        trace = next(_ways(facts, group), None)
        if trace is not None:
            cause = sides.cause(trace.leads)
            is_jumper = facts.diagram.leads[cause].role is LeadRole.JUMPER
            yield RULE.finding(
                facts,
                "both-sides",
                facts.lead_span(cause),
                leads=dict.fromkeys((cause, *trace.leads)),
                terminals=[side for supply in group for side in (supply.hot, supply.common)],
                edits=(remove_lead(facts.diagram, cause),) if is_jumper else (),
                noun="jumper" if is_jumper else "lead",
                lead=facts.lead(cause),
                supplies=both([supply.part.name for supply in group]),
            )


def _ways(facts: Facts, group: list[Supply]) -> Iterator[Trace]:
    """Ways by which the first supply's hot side can meet another supply."""
    first = group[0]
    for other in group[1:]:
        trace = facts.sides.search((first.hot,), {other.hot, other.common}.__contains__)
        if trace is not None and trace.leads and trace.can_close:
            yield trace
