"""At line voltage white is the neutral, green is the ground, and neither is ever a hot lead.

In 24 V cable white W and green G are normal.  At line voltage the colour is what the next one
trusts before measuring.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.model.diagram import EARTH, Lead, Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs
from wirecheck.rules.line_voltage.cautions import LINE_VOLTAGE
from wirecheck.rules.line_voltage.crossings import mixed_areas
from wirecheck.rules.line_voltage.line_and_neutral_reversed import reversals
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source

_WHITE: Final = frozenset({"white"})
_GREEN: Final = frozenset({"green", "green/yellow", "yellow/green"})
_HOT_ROLES: Final = frozenset({"line-hot", "line-hot-2", "line-hot-3", "load-hot"})
_NEUTRAL_ROLES: Final = frozenset({"line-neutral", "load-neutral"})

_GOOD = """\
part line is mains: 120 V
part disc is service-switch
part pump is circulator
wire line.L1 to disc to pump.L: black
wire line.N to pump.N: white
wire line.G to earth: green
"""

RULE = Rule(
    name="line-lead-colour",
    title="At line voltage no hot lead is white or green, and no neutral green",
    family="line voltage",
    breaks=Breaks.WORKMANSHIP,
    why="Whoever opens the box takes a white lead for the neutral and a green one for the ground.",
    blind_spots=(
        "A white lead in a cable that is re-marked at both ends: type the colour of the mark."
    ),
    caution=LINE_VOLTAGE,
    sources=(
        PRACTICE,
        Source("NEC", "law", "250.119"),
        Source("NEC", "law", "200.6(A)", from_memory=True),
    ),
    faults={
        "white-hot": Fault(
            "the white lead {lead} is hot at line voltage: use another colour, or re-mark it at "
            "both ends",
            "It works; the next one takes it for the neutral.",
        ),
        "green-hot": Fault(
            "the {colour} lead {lead} is hot at line voltage: green is for the ground alone; run "
            "a lead of another colour",
            "It works; the next one takes it for the ground, and gets a shock.",
        ),
        "green-neutral": Fault(
            "the {colour} lead {lead} is a neutral: green is for the ground alone; run a white one",
            "It works; the next one takes it for the ground, and opens or earths the neutral.",
        ),
    },
    bad=(
        Example(_GOOD.replace("black", "white"), (("white-hot", "line.L1 to disc"),)),
        Example(_GOOD.replace("black", "green"), (("green-hot", "line.L1 to disc"),)),
        Example(_GOOD.replace("white", "green"), (("green-neutral", "line.N to pump.N"),)),
    ),
    good=(Example(_GOOD),),
    general=True,
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find white and green leads on legs of the line, one finding for each wire typed."""
    told: set[int] = set()
    for number, lead in enumerate(facts.diagram.leads):
        colour = lead.given.get("colour")
        if colour is None or colour.value not in _WHITE | _GREEN or lead.run in told:
            continue
        fault = _fault(facts, lead, is_green=colour.value in _GREEN)
        if fault is not None:
            told.add(lead.run)
            yield RULE.finding(
                facts,
                fault,
                facts.lead_span(number),
                leads=(number,),
                terminals=(lead.a, lead.b),
                lead=facts.lead(number),
                colour=str(colour.value),
            )


def _fault(facts: Facts, lead: Lead, *, is_green: bool) -> str | None:
    ends = (lead.a, lead.b)
    if any(end == EARTH or _circuit(facts, end) == "earth" for end in ends):
        return None
    if _is(facts, ends, hot=True):
        return "green-hot" if is_green else "white-hot"
    return "green-neutral" if is_green and _is(facts, ends, hot=False) else None


def _is(facts: Facts, ends: tuple[Terminal, Terminal], *, hot: bool) -> bool:
    """Whether a lead is hot, or neutral; by its terminals where no supply is drawn."""
    legs = facts.once(Legs)
    if facts.sides.area(ends[0]) in facts.once(_told_otherwise):
        return False
    if legs.sources:
        return legs.is_hot(ends[0]) if hot else legs.is_neutral(ends[0])
    roles = _HOT_ROLES if hot else _NEUTRAL_ROLES
    return any(facts.role(end) in roles and _circuit(facts, end) == "line" for end in ends)


def _told_otherwise(facts: Facts) -> frozenset[int]:
    """Areas whose leads are landed wrong: their colours may be right."""
    turned = (ends for found in facts.once(reversals) for ends in found.devices)
    sources = facts.once(Legs).sources
    joined = (source.a for source in sources if facts.sides.may_join(source.a, source.b))
    ends = (*(end for ends in turned for end in ends), *joined)
    return frozenset((*(facts.sides.area(end) for end in ends), *facts.once(mixed_areas)))


def _circuit(facts: Facts, end: Terminal) -> str:
    spec = facts.diagram.spec(end)
    return spec.circuit if spec else ""
