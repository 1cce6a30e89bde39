"""The secondary gives what its loads are made for, and never more than a 24 V circuit may have.

A transformer for 28 V on 24 V controls shortens the life of every coil; and unloaded it gives a
tenth more than its nameplate.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.circuit.supplies import source_behind
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.nearest import both
from wirecheck.parts.structure import LOW_VOLTAGE_V
from wirecheck.rules.electrical.loads import Loading, Taker, loadings
from wirecheck.rules.electrical.words import volts
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source

#: Of a load's rated volts, by the nameplate of what feeds it (common practice, no source).
MOST: Final = 1.1
#: What a control circuit usually has; a load for less on that is a mistake of the load.
USUAL_V: Final = 24.0

_GOOD = """\
part xfmr is transformer: secondary 24 V
part stat is thermostat
part fan is relay: 24 V
wire xfmr.R to stat to fan to xfmr.C
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="secondary-volts-high",
    title=f"The secondary suits what it feeds, and gives no more than {LOW_VOLTAGE_V:.0f} V",
    family="electrical",
    breaks=Breaks.OPERATION,
    why=(
        "Coils on too many volts run hot and burn out early, electronics at once. Above "
        f"{LOW_VOLTAGE_V:.0f} V the circuit is no longer the kind that its thin leads are allowed "
        "for."
    ),
    blind_spots=(
        "What the line really has. Where the rise to no load is not typed, the usual 10 % counts."
    ),
    caution="",
    sources=(
        PRACTICE,
        Source("NFPA 70 (NEC)", "standard", "chapter 9, table 11(A)", from_memory=True),
    ),
    faults={
        "nameplate": Fault(
            "{part} gives {given} by its nameplate, and {loads} made for {rated}: put in a "
            "transformer of {rated}",
            "Coils hum and run hot; controls fail early.",
        ),
        "unloaded": Fault(
            "{part} gives {unloaded} with nothing on: more than the {most} a 24 V circuit may "
            "have; put in one of lower secondary volts or of less rise",
            "Whatever is on alone gets too much: coils run hot, controls fail early.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("secondary 24 V", "secondary 28 V"), (("nameplate", "secondary 28 V"),)
        ),
        Example(
            _GOOD.replace("secondary 24 V", "secondary 26 V, regulation 18 %"),
            (("unloaded", "secondary 26 V"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find supplies whose typed secondary is too high for their loads, or by itself."""
    for loading in loadings(facts.as_wired):
        attribute = loading.spec.volts
        typed = loading.supply.part.given.get(attribute) if isinstance(attribute, str) else None
        if typed is None:
            continue
        over = too_high_for(loading)
        unloaded = source_behind(loading.supply.part, loading.spec).unloaded_v
        if over or unloaded > LOW_VOLTAGE_V:
            yield RULE.finding(
                facts,
                "nameplate" if over else "unloaded",
                typed.span,
                terminals=(loading.supply.hot, loading.supply.common),
                part=loading.supply.part.name,
                given=volts(loading.rated_v),
                unloaded=volts(unloaded),
                most=volts(LOW_VOLTAGE_V),
                loads=_are(over),
                rated=volts(min((taker.rated_v for taker in over), default=0.0)),
            )


def too_high_for(loading: Loading) -> list[Taker]:
    """Loads for which a supply of more than the usual volts gives too many by its nameplate."""
    if loading.rated_v <= MOST * USUAL_V:
        return []
    return [t for t in loading.takers if t.volts_known and loading.rated_v > MOST * t.rated_v]


def _are(over: list[Taker]) -> str:
    names = list(dict.fromkeys(taker.part.name for taker in over))
    return f"{both(names)} {'is' if len(names) == 1 else 'are'}"
