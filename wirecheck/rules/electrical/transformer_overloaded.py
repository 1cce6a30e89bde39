"""A transformer is rated for all that it feeds at one time.

Beyond its rating it runs hot and its volts fall: the last coil to be called, the main valve, no
longer pulls in.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.quantity import Quantity
from wirecheck.rules.electrical.load_on_other_volts import MOST
from wirecheck.rules.electrical.loads import Loading, Taker, loadings
from wirecheck.rules.electrical.states import cooling, running
from wirecheck.rules.electrical.words import takers_words, volt_amperes
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

#: So little too much is no fault: what loads state is rounded (common practice, no source).
ROUNDING_VA: Final = 0.5

_GOOD = """\
part xfmr is transformer: 40 VA
part stat-1 is thermostat
part stat-2 is thermostat
part one is zone-valve: 0.9 A
part two is zone-valve: 0.7 A
wire xfmr.R to stat-1 to one to xfmr.C
wire xfmr.R to stat-2 to two to xfmr.C
wire xfmr.C to earth: green
"""
_COOLED = """\
part xfmr is transformer: 40 VA
part stat is thermostat
part zone is zone-valve
part ac is contactor: 20 VA
wire xfmr.R to stat to zone to xfmr.C
wire stat.Y to ac to xfmr.C
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="transformer-overloaded",
    title="A transformer is rated for all that it feeds at one time",
    family="electrical",
    breaks=Breaks.OPERATION,
    why=(
        "Its volts fall below what coils need to pull in, valves and relays chatter, and the "
        "winding runs hot until it opens."
    ),
    blind_spots=(
        "The rush of current as a coil or motor starts; loads that are not drawn. What a load "
        "takes is its usual value where none is typed."
    ),
    caution="",
    sources=(PRACTICE,),
    faults={
        "in-run": Fault(
            "{part} has to give {load} with everything on ({takers}) and is rated {rating}: put "
            "in a transformer of at least {load}, or feed some of it from another",
            "Relays and valves chatter or do not pull in when all call; the transformer runs hot.",
        ),
        "in-cooling": Fault(
            "{part} has to give {load} on a call for cooling ({takers}) and is rated {rating}: "
            "put in a transformer of at least {load}, or feed some of it from another",
            "The cooling contactor chatters or does not pull in; the transformer runs hot.",
        ),
    },
    bad=(
        Example(_GOOD.replace("0.7 A", "1.2 A"), (("in-run", "40 VA"),)),
        Example(_COOLED.replace("20 VA", "45 VA"), (("in-cooling", "40 VA"),)),
    ),
    good=(Example(_GOOD), Example(_COOLED)),
    stands_back_for=("transformers-in-parallel",),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find transformers with a typed rating that is less than what they feed."""
    wired = facts.as_wired
    for loading in loadings(wired):
        if loading.rating is None or not loading.alone or not _exceeds(loading, loading.takers):
            continue
        for fault, state in (("in-run", running), ("in-cooling", cooling)):
            solved = state(wired)
            takers = [taker for taker in _made_for(loading) if solved.is_on(taker)]
            if _exceeds(loading, takers):
                supply = loading.supply
                yield RULE.finding(
                    wired,
                    fault,
                    loading.rating.span,
                    terminals=(supply.hot, supply.common),
                    part=supply.part.name,
                    load=volt_amperes(_together(takers)),
                    rating=str(loading.rating.value),
                    takers=takers_words(takers),
                )
                break


def _made_for(loading: Loading) -> list[Taker]:
    """Its loads but for those made for more volts, which take little on these: told elsewhere."""
    return [taker for taker in loading.takers if taker.rated_v <= MOST * loading.rated_v]


def _exceeds(loading: Loading, takers: list[Taker]) -> bool:
    rating = loading.rating.value if loading.rating else None
    rated = rating.high_base if isinstance(rating, Quantity) else 0.0
    return 0 < rated < _together(takers) - ROUNDING_VA


def _together(takers: list[Taker]) -> float:
    return sum(taker.volt_amperes for taker in takers)
