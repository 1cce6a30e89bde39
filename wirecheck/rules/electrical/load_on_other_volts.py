"""What is made for one voltage does not lie across another.

A 240 V motor on 120 V hums and does not start; a 120 V one across two hot legs burns out.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final, NamedTuple, cast

from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.kind import LoadSpec
from wirecheck.rules.electrical.loads import Taker, loadings, takers
from wirecheck.rules.electrical.secondary_volts_high import too_high_for
from wirecheck.rules.electrical.words import volts
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs
from wirecheck.rules.line_voltage.cautions import LINE_VOLTAGE
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

#: A load does with so much of its rated volts, by the nameplate of what feeds it (common
#: practice, no source).
LEAST: Final = 0.85
#: And it stands so much (common practice, no source).
MOST: Final = 1.1

_GOOD = """\
part line is mains: 240 V
part pump is circulator: 120 V
part disc is service-switch
wire line.L1 to disc to pump.L: black
wire line.N to pump.N: white
wire line.G to earth: green
"""

RULE = Rule(
    name="load-on-other-volts",
    title="What is made for one voltage does not lie across another",
    family="electrical",
    breaks=Breaks.OPERATION,
    why=(
        "On half its volts a motor stalls and a coil does not pull in; on twice as many either "
        "burns out within minutes."
    ),
    blind_spots=(
        "Nominal volts as typed: what the supply really has is measured, not drawn. A load whose "
        "volts are not typed is taken as made for what its kind usually is."
    ),
    caution=LINE_VOLTAGE,
    sources=(PRACTICE,),
    faults={
        "too-little": Fault(
            "{load} is made for {rated} and lies across {a} and {b}, which have {given}: feed it "
            "from {rated}, or put in one for {given}",
            "A motor hums and does not start, a coil does not pull in, a lamp stays dim.",
        ),
        "too-much": Fault(
            "{load} is made for {rated} and lies across {a} and {b}, which have {given}: feed it "
            "from {rated}, or put in one for {given}",
            "It runs hot and burns out.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("circulator: 120 V", "circulator: 240 V"), (("too-little", "240 V"),)
        ),
        Example(
            _GOOD.replace("line.N to pump.N: white", "line.L2 to pump.N: red"),
            (("too-much", "120 V"),),
        ),
    ),
    good=(
        Example(_GOOD),
        Example(
            _GOOD.replace("line.N to pump.N: white", "line.L2 to pump.N: red").replace(
                "circulator: 120 V", "circulator: 240 V"
            )
        ),
    ),
    stands_back_for=("line-and-24-volts-joined", "line-shorted", "coils-in-series"),
)


class _Fed(NamedTuple):
    """A load, nominal volts across it, and the two sides of what feeds it."""

    taker: Taker
    volts: float
    a: Terminal
    b: Terminal


def check(facts: Facts) -> Iterator[Finding]:
    """Find loads with typed rated volts across other nominal volts."""
    wired = facts.as_wired
    for fed in (*_on_24_volts(wired), *_on_the_line(wired)):
        share = fed.volts / fed.taker.rated_v
        if LEAST <= share <= MOST:
            continue
        ends = (fed.taker.element.a, fed.taker.element.b)
        yield RULE.finding(
            wired,
            "too-little" if share < LEAST else "too-much",
            fed.taker.part.given[_typed_volts(fed.taker)].span,
            leads=[number for end in ends for number in wired.nets.leads_at(end)],
            terminals=ends,
            load=fed.taker.name,
            rated=volts(fed.taker.rated_v),
            given=volts(fed.volts),
            a=wired.show(fed.a),
            b=wired.show(fed.b),
        )


def _typed_volts(taker: Taker) -> str:
    """The attribute by which the rated volts of a load were typed; "" if they were not."""
    volts = cast(LoadSpec, taker.element.spec).volts
    return volts if isinstance(volts, str) and volts in taker.part.given else ""


def _on_24_volts(facts: Facts) -> Iterator[_Fed]:
    for loading in loadings(facts):
        if loading.alone and not too_high_for(loading):
            hot, common = loading.supply.hot, loading.supply.common
            for taker in loading.takers:
                if _typed_volts(taker):
                    yield _Fed(taker, loading.rated_v, hot, common)


def _on_the_line(facts: Facts) -> Iterator[_Fed]:
    legs = facts.once(Legs)
    if not legs.sources or not all("volts" in source.part.given for source in legs.sources):
        return
    for taker in takers(facts):
        if _typed_volts(taker):
            a, b = taker.element.a, taker.element.b
            given = legs.volts(a, b)
            if given:
                yield _Fed(taker, given, legs.at(a)[0].terminal, legs.at(b)[0].terminal)
