"""At one device the hot lead and the common lead have different colours.

Alike, they are exchanged the next time they come off, and there it shorts the transformer or puts a
switch in the neutral.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Literal

from wirecheck.model.diagram import EARTH, Terminal
from wirecheck.model.finding import Breaks, Finding, Related
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part fan is relay
wire xfmr.R to stat.R: red
wire stat.W to fan.A: white
wire fan.B to xfmr.C: blue
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="one-colour-both-sides",
    title="At one device the hot lead and the common lead have different colours",
    family="workmanship",
    breaks=Breaks.WORKMANSHIP,
    why="Two leads alike on one device are landed the wrong way round sooner or later.",
    blind_spots="Leads that carry numbers or tags that were not typed.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "alike": Fault(
            "at {part} {hot} is on the hot side and {other} on the {side}, and both leads are "
            "{colour}: mark one of them",
            "It works; the next one to take them off may land them exchanged.",
        ),
    },
    bad=(Example(_GOOD.replace("xfmr.C: blue", "xfmr.C: red"), (("alike", "fan.B to xfmr.C"),)),),
    good=(Example(_GOOD),),
    general=True,
    stands_back_for=(
        "secondary-shorted",
        "secondary-shorted-on-call",
        "line-shorted",
        "line-and-24-volts-joined",
        "line-lead-colour",
    ),
)

_Side = Literal["hot", "common", "neutral"]


def check(facts: Facts) -> Iterator[Finding]:
    """Find devices with one colour on both sides of a supply, typed by different statements."""
    leads = facts.diagram.leads
    first_at: dict[tuple[str, object, bool], tuple[int, Terminal, _Side]] = {}
    told: set[frozenset[int]] = set()
    for number, lead in enumerate(leads):
        colour = lead.given.get("colour")
        if colour is None or "number" in lead.given or _goes_to_earth(facts, lead.a, lead.b):
            continue
        for end in (lead.a, lead.b):
            side = _side(facts, end)
            if side is None:
                continue
            is_line = bool(facts.once(Legs).at(end))
            here = (number, end, side)
            first = first_at.setdefault((end.part, colour.value, is_line), here)
            runs = frozenset((leads[first[0]].run, lead.run))
            if first[2] != side and len(runs) == 2 and runs not in told:
                told.add(runs)
                yield _finding(facts, here, first, str(colour.value))


def _goes_to_earth(facts: Facts, *ends: Terminal) -> bool:
    specs = (facts.diagram.spec(end) for end in ends)
    return EARTH in ends or any(spec is not None and spec.circuit == "earth" for spec in specs)


def _side(facts: Facts, end: Terminal) -> _Side | None:
    """The side of a supply that a device's terminal is on; strips are no device."""
    part = facts.part(end)
    if part is None or part.family == "strip":
        return None
    legs, sides = facts.once(Legs), facts.sides
    if legs.at(end):
        return "hot" if legs.is_hot(end) else "neutral" if legs.is_neutral(end) else None
    if sides.common_on(end):
        return "common"
    return "hot" if sides.hot_beyond(end) else None


def _finding(
    facts: Facts,
    here: tuple[int, Terminal, _Side],
    first: tuple[int, Terminal, _Side],
    colour: str,
) -> Finding:
    hot, other = (here, first) if here[2] == "hot" else (first, here)
    return RULE.finding(
        facts,
        "alike",
        facts.lead_span(here[0]),
        leads=(here[0], first[0]),
        terminals=(hot[1], other[1]),
        related=(Related(facts.lead_span(first[0]), "the other one"),),
        part=facts.diagram.parts[hot[1].part].name,
        hot=facts.show(hot[1]),
        other=facts.show(other[1]),
        side=other[2],
        colour=colour,
    )
