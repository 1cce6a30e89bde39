"""Thermostat cable and leads thinner than 18 AWG hang on a Class 2 transformer only.

Class 2 ends at 100 VA.  A larger transformer makes a Class 1 circuit, whose leads are those of
light and power: not thermostat cable, and nothing under 18 AWG.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.circuit.resistances import lead_size
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.nearest import both
from wirecheck.model.quantity import Quantity
from wirecheck.rules.electrical.loads import Loading, loadings
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import Example, Fault, Rule, Source

#: Highest nameplate of a Class 2 transformer of more than 20 and up to 30 V.
CLASS_2_VA: Final = 100.0
#: So many leads are named one by one.
MOST_NAMED: Final = 3
#: The thinnest lead of a Class 1 circuit.
THINNEST_AWG: Final = 18

_GOOD = """\
part xfmr is transformer: 75 VA
part stat is thermostat
part fan is relay
cable wall: 18/2, 30 ft
wire xfmr.R to stat.R: red, in wall
wire stat.W to fan.A: white, in wall
wire fan.B to xfmr.C: blue
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="class-2-exceeded",
    title="Thermostat cable and thin leads hang on a transformer of no more than 100 VA",
    family="electrical",
    breaks=Breaks.WORKMANSHIP,
    why=(
        "A larger transformer feeds enough into a fault to set thin insulation alight; its "
        "circuit is wired like light and power."
    ),
    blind_spots=(
        "Cable made for Class 1 circuits; a source listed as Class 2 by other means than its "
        "nameplate."
    ),
    caution="",
    sources=(
        Source("NFPA 70 (NEC)", "standard", "chapter 9, table 11(A) and 725.49", from_memory=True),
    ),
    faults={
        "cable": Fault(
            "{part} is rated {rating}: above {most} VA it is no Class 2 source, and {which} in "
            "the cable {cable} may not hang on it; use a transformer of up to {most} VA, or wire "
            "them as a Class 1 circuit",
            "Nothing, until a fault: then the cable heats before anything opens.",
        ),
        "thin": Fault(
            "{part} is rated {rating}: above {most} VA it is no Class 2 source, and {which} of "
            "{size} may not hang on it; use a transformer of up to {most} VA, or 18 AWG wired as "
            "a Class 1 circuit",
            "Nothing, until a fault: then the lead heats before anything opens.",
        ),
    },
    bad=(
        Example(_GOOD.replace("75 VA", "150 VA"), (("cable", "150 VA"),)),
        Example(
            _GOOD.replace("75 VA", "150 VA")
            .replace("cable wall: 18/2, 30 ft\n", "")
            .replace("in wall", "20 AWG"),
            (("thin", "150 VA"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find transformers of more than 100 VA with such leads on either side."""
    for loading in loadings(facts):
        rating = loading.rating
        if rating is None or not isinstance(rating.value, Quantity):
            continue
        if rating.value.high_base <= CLASS_2_VA:
            continue
        in_cable, thin = _leads(facts, loading)
        for fault, leads in (("cable", in_cable), ("thin", thin)):
            if leads:
                first = facts.diagram.leads[leads[0]]
                yield RULE.finding(
                    facts,
                    fault,
                    rating.span,
                    leads=leads,
                    terminals=(loading.supply.hot, loading.supply.common),
                    part=loading.supply.part.name,
                    rating=str(rating.value),
                    most=f"{CLASS_2_VA:.0f}",
                    which=_named(facts, leads),
                    cable=str(first.given["in"].value) if fault == "cable" else "",
                    size=str(lead_size(first)),
                )
                break


def _leads(facts: Facts, loading: Loading) -> tuple[list[int], list[int]]:
    """Leads on its two sides that run in a cable, and those that are too thin."""
    sides = facts.sides
    areas = {sides.area(loading.supply.hot), sides.area(loading.supply.common)}
    in_cable: list[int] = []
    thin: list[int] = []
    for number, lead in enumerate(facts.diagram.leads):
        size = lead_size(lead)
        is_thin = size is not None and size.dimension == "gauge" and size.low > THINNEST_AWG
        if ("in" in lead.given or is_thin) and sides.area(lead.a) in areas:
            (in_cable if "in" in lead.given else thin).append(number)
    return in_cable, thin


def _named(facts: Facts, leads: list[int]) -> str:
    if len(leads) > MOST_NAMED:
        return f"{len(leads)} leads"
    return (
        f"{'the leads ' if len(leads) > 1 else 'the lead '}{both([facts.lead(n) for n in leads])}"
    )
