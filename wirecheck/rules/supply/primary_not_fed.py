"""The primary of every transformer lies across the line that is drawn.

Both ends on one leg, or a hot lead that ends short of it, and the whole 24 V circuit is dead.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.empty import any_wired, needed_and_empty
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part line is mains: 120 V
part xfmr is transformer
part fan is relay
part stat is thermostat
wire line.L1 to xfmr.L1: black
wire line.N to xfmr.N: white
wire line.G to earth: green
wire xfmr.R to stat to fan to xfmr.C
wire xfmr.C to earth: green
"""
_LAMP = "part shine is lamp: 120 V\nwire line.L1 to shine to line.N\n"

RULE = Rule(
    name="primary-not-fed",
    title="The primary of every transformer lies across the line",
    family="supply",
    breaks=Breaks.OPERATION,
    why="Without volts on its primary a transformer gives none: the 24 V circuit is dead.",
    blind_spots="A transformer fed from a supply that is not drawn beside the one that is.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "unwired": Fault(
            "the primary of {part} has no leads: run them from the line to {ends}",
            "No 24 V: nothing responds to the thermostat.",
        ),
        "one-leg": Fault(
            "both ends of the primary of {part}, {ends}, are on {leg}: land one of them on another "
            "leg of the line",
            "No volts across the primary, no 24 V: nothing responds to the thermostat.",
        ),
        "not-reached": Fault(
            "the primary of {part} at {ends} does not reach the line: lead it back to the supply",
            "No 24 V: nothing responds to the thermostat.",
        ),
    },
    bad=(
        Example(
            _LAMP
            + _GOOD.replace("wire line.L1 to xfmr.L1: black\n", "").replace(
                "wire line.N to xfmr.N: white\n", ""
            ),
            (("unwired", "xfmr"),),
        ),
        Example(
            _GOOD.replace("line.L1 to xfmr.L1: black", "line.N to xfmr.L1: white"),
            (("one-leg", "xfmr.L1"),),
        ),
        Example(
            _LAMP
            + _GOOD.replace("line.L1 to xfmr.L1: black", "xfmr.L1 to joint: black")
            + "splice joint\n",
            (("not-reached", "xfmr.L1"),),
        ),
    ),
    good=(Example(_GOOD),),
    stands_back_for=("line-and-24-volts-joined",),
)


class _Winding(NamedTuple):
    hot: Terminal
    neutral: Terminal


def check(facts: Facts) -> Iterator[Finding]:
    """Find primaries that no two legs of a drawn supply reach."""
    legs = facts.once(Legs)
    if not legs.sources:
        return
    for part, windings in _primaries(facts):
        ends = tuple(dict.fromkeys(end for winding in windings for end in winding))
        wired = [w for w in windings if all(facts.is_wired(end) for end in w)]
        fault = None
        if not any(facts.is_wired(end) for end in ends):
            fault = "unwired" if any_wired(facts, part) else None
        elif wired and not any(_is_fed(legs, winding) for winding in wired):
            traced = all(facts.is_traced(end) for end in wired[0])
            ends = wired[0]
            if traced and not any(facts.sides.area(end) in facts.once(_open) for end in ends):
                one_leg = legs.at(ends[0]) and legs.at(ends[1])
                fault = "one-leg" if one_leg else "not-reached"
        if fault is not None:
            yield _finding(facts, fault, part, ends)


def _open(facts: Facts) -> frozenset[int]:
    """Areas that end at a needed terminal with no lead: that is what is told."""
    return frozenset(facts.sides.area(terminal) for terminal in facts.once(needed_and_empty))


def _primaries(facts: Facts) -> Iterator[tuple[Part, list[_Winding]]]:
    for part in facts.diagram.parts.values():
        for spec in part.structure.sources:
            if spec.fed_by:
                yield part, [_Winding(part.terminal(a), part.terminal(b)) for a, b in spec.fed_by]


def _is_fed(legs: Legs, winding: _Winding) -> bool:
    return any(
        hot.terminal != other.terminal
        for hot in legs.at(winding.hot)
        for other in legs.at(winding.neutral)
    )


def _finding(facts: Facts, fault: str, part: Part, ends: tuple[Terminal, ...]) -> Finding:
    legs = facts.once(Legs).at(ends[0])
    astray = next((end for end in ends if not facts.once(Legs).at(end)), ends[0])
    return RULE.finding(
        facts,
        fault,
        part.name_span if fault == "unwired" else facts.place(astray),
        leads=[number for end in ends for number in facts.nets.leads_at(end)],
        terminals=ends,
        part=part.name,
        ends=" and ".join(facts.show(end) for end in ends),
        leg=facts.show(legs[0].terminal) if legs else "",
    )
