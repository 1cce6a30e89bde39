"""No lead carries more than its gauge is protected for.

A blower on bell wire runs, and the wire is the fuse.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.circuit.copper import most_amps
from wirecheck.circuit.resistances import lead_size
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.electrical.loads import loadings
from wirecheck.rules.electrical.overcurrent import line_amps
from wirecheck.rules.electrical.states import running
from wirecheck.rules.electrical.words import amps
from wirecheck.rules.facts import Facts
from wirecheck.rules.line_voltage.cautions import LINE_VOLTAGE
from wirecheck.rules.rule import Example, Fault, Rule, Source

#: What flows beyond this share of all that the loads of one supply take is the current of a short.
MOST_BEYOND: Final = 1.5

_GOOD = """\
part line is mains: 120 V
part fan is blower: one-speed, 9 A
part disc is service-switch
wire line.L1 to disc.1: black, 14 AWG
wire disc.2 to fan.L: black, 14 AWG
wire line.N to fan.N: white, 14 AWG
wire line.G to earth: green, 14 AWG
"""

RULE = Rule(
    name="lead-overloaded",
    title="No lead carries more than its gauge is protected for",
    family="electrical",
    breaks=Breaks.SAFETY,
    why="The lead heats for as long as the load runs; its insulation goes, then a fire starts.",
    blind_spots=(
        "Leads whose gauge is not typed; leads bundled or in hot places, which may carry less; "
        "leads of an appliance's own, tested by its maker, which may carry more."
    ),
    caution=LINE_VOLTAGE,
    sources=(Source("NFPA 70 (NEC)", "standard", "240.4(D)", from_memory=True),),
    faults={
        "too-thin": Fault(
            "the lead {lead} is {size} and carries {current} with everything on, more than the "
            "{most} it may: run it in {heavier}",
            "The lead gets hot while the load runs.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("fan.L: black, 14", "fan.L: black, 18"),
            (("too-thin", "disc.2 to fan.L"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find leads of known gauge in which more runs than that allows."""
    wired = facts.as_wired
    amounts = [*line_amps(wired).values(), *(loading.amps for loading in loadings(wired))]
    highest = max(amounts, default=0.0)
    least = most_amps()
    if highest <= min(least.values()):
        return
    shorted = _shorted(wired)
    for number, lead in enumerate(wired.diagram.leads):
        if wired.sides.area(lead.a) in shorted:
            continue
        size = lead_size(lead)
        most = least.get(size.low) if size and size.dimension == "gauge" else None
        if most is None or highest <= most:
            continue
        current = running(wired).lead_amps(number)
        if most < current <= MOST_BEYOND * highest:
            heavier = [gauge for gauge, carries in least.items() if carries >= current]
            yield RULE.finding(
                wired,
                "too-thin",
                wired.lead_span(number),
                leads=(number,),
                terminals=(lead.a, lead.b),
                lead=wired.lead(number),
                size=str(size),
                current=amps(current),
                most=amps(most),
                heavier=f"{max(heavier):g} AWG" if heavier else "a conductor made for that",
            )


def _shorted(facts: Facts) -> set[int]:
    """Where a supply may be shorted: what flows there then is the short's, which others tell."""
    sides = facts.sides
    return {
        sides.area(supply.hot)
        for supply in facts.supplies
        if sides.may_join(supply.hot, supply.common)
    }
