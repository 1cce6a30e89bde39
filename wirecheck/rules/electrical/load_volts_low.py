"""Every load gets the volts it needs with everything on and the line weak.

A coil pulls in surely from 85 % of its rated volts.  Long thin leads, a transformer that gives way
under load and a line on its lowest day add up.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.circuit.resistances import lead_length_m, lead_size
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.quantity import INCH_M
from wirecheck.model.text import Span
from wirecheck.rules.electrical.drop import (
    LEAST,
    WEAK_LINE,
    copper_by_region,
    gauge_for,
    is_fed_right,
    leads_to,
    suited,
    surely_enough,
)
from wirecheck.rules.electrical.loads import Loading, Taker, loadings
from wirecheck.rules.electrical.states import running
from wirecheck.rules.electrical.words import amps, volts
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part line is mains: 120 V
part xfmr is transformer: 40 VA
part stat is thermostat
part zone is zone-valve: 0.9 A
cable wall: 18/2, 90 ft
wire line.L1 to xfmr.L1: black
wire line.N to xfmr.N: white
wire line.G to earth: green
wire xfmr.R to stat.R: red, in wall
wire stat.W to zone.M1: white, in wall
wire zone.M2 to xfmr.C: blue
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="load-volts-low",
    title=(
        f"Every load gets {LEAST:.0%} of its rated volts with everything on and the line "
        f"{1 - WEAK_LINE:.0%} low"
    ),
    family="electrical",
    breaks=Breaks.OPERATION,
    why=(
        f"Below {LEAST:.0%} of its volts a coil may not pull in, or chatters: the valve does not "
        "open on the coldest night, when the line is loaded most."
    ),
    blind_spots=(
        "Leads whose length is not typed count for nothing. What a load takes and how far a "
        "transformer gives way are usual values where none are typed."
    ),
    caution="",
    sources=(PRACTICE,),
    faults={
        "leads": Fault(
            "with everything on and the line 10 % low {load} gets {volts} of its {rated}, and "
            "needs {least}: {cause}; {mend}",
            "{load} chatters or does not pull in when the line is low; on another day it works.",
        ),
        "supply": Fault(
            "with everything on and the line 10 % low {load} gets {volts} of its {rated}, and "
            "needs {least}: {cause}; {mend}",
            "{load} chatters or does not pull in when the line is low; on another day it works.",
        ),
    },
    bad=(
        Example(_GOOD.replace("18/2", "24/2"), (("leads", "xfmr.R to stat.R"),)),
        Example(
            _GOOD.replace("mains: 120 V", "mains: 110 V").replace("0.9 A", "1.6 A"),
            (("supply", "xfmr"),),
        ),
    ),
    good=(Example(_GOOD),),
    stands_back_for=("transformer-overloaded", "wrong-primary-tap"),
)


class _Short(NamedTuple):
    """A load that gets too little: ``volts`` with the line weak, and what each lead to it drops."""

    loading: Loading
    taker: Taker
    volts: float
    drops: dict[int, float]

    @property
    def missing(self) -> float:
        """Volts by which it falls short."""
        return LEAST * self.taker.rated_v - self.volts


class _Cause(NamedTuple):
    """Why: the fault, its place, the leads concerned, in words, and what mends it."""

    fault: str
    span: Span
    leads: tuple[int, ...]
    words: str
    mend: str


def check(facts: Facts) -> Iterator[Finding]:
    """Find the load of each supply that gets least, where that is too little."""
    wired = facts.as_wired
    copper = wired.once(copper_by_region)
    for loading in loadings(wired):
        if loading.alone and loading.takers and not surely_enough(loading, copper):
            short = _worst(wired, loading)
            cause = short and (_by_leads(wired, short) or _by_supply(wired, short))
            if short is not None and cause is not None:
                yield _finding(wired, short, cause)


def _worst(facts: Facts, loading: Loading) -> _Short | None:
    """The load farthest below its rated volts, if that is too far."""
    solved = running(facts)
    on = [taker for taker in suited(loading) if solved.is_on(taker)]
    if not on or not is_fed_right(solved, loading):
        return None
    worst = min(on, key=lambda taker: solved.load_v(taker) / taker.rated_v)
    weak = WEAK_LINE * solved.load_v(worst)
    if weak >= LEAST * worst.rated_v:
        return None
    drops = {
        number: WEAK_LINE * solved.lead_amps(number) * solved.lead_ohms(number)
        for number in leads_to(facts, loading, worst)
        if lead_length_m(facts.nets, facts.diagram.leads[number])
    }
    return _Short(loading, worst, weak, drops)


def _by_leads(facts: Facts, short: _Short) -> _Cause | None:
    """The leads, if without what they drop it would do."""
    drop = sum(short.drops.values())
    if drop < short.missing or not drop:
        return None
    number = max(short.drops, key=lambda number: short.drops[number])
    lead = facts.diagram.leads[number]
    gauge = gauge_for(facts, number, 1 - short.missing / drop)
    size = lead_size(lead)
    length = f"{lead_length_m(facts.nets, lead) / INCH_M / 12:.0f} ft"
    through = amps(running(facts).lead_amps(number))
    return _Cause(
        "leads",
        facts.lead_span(number),
        tuple(number for number, dropped in short.drops.items() if dropped),
        f"the leads drop {volts(drop)} of it, most of that {facts.lead(number)} "
        f"({f'{size}, ' if size else ''}{length}) at {through}",
        f"run them in {gauge}" if gauge else "bring the transformer nearer to the load",
    )


def _by_supply(facts: Facts, short: _Short) -> _Cause | None:
    """The transformer, where its rating was typed."""
    loading = short.loading
    if loading.rating is None:
        return None
    solved = running(facts)
    gives = WEAK_LINE * solved.volts(loading.supply.hot, loading.supply.common)
    name = loading.supply.part.name
    return _Cause(
        "supply",
        loading.supply.part.name_span,
        (),
        f"{name} gives {volts(gives)} under this load",
        "a higher rating, or a primary tap for what the line really has, puts that right",
    )


def _finding(facts: Facts, short: _Short, cause: _Cause) -> Finding:
    supply, load = short.loading.supply, short.taker.element
    return RULE.finding(
        facts,
        cause.fault,
        cause.span,
        leads=cause.leads,
        terminals=(supply.hot, load.a, load.b),
        load=short.taker.name,
        volts=volts(short.volts),
        rated=volts(short.taker.rated_v),
        least=volts(LEAST * short.taker.rated_v),
        cause=cause.words,
        mend=cause.mend,
    )
