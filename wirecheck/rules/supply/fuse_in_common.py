"""The fuse of the 24 V secondary stands in the hot side.

In the common side it guards nothing against an earth fault, and when it opens, the burner ground
goes on carrying the current.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.nets import Element
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source

_GOOD = """\
part xfmr is transformer
part fuse is fuse: 3 A
part stat is thermostat
part fan is relay
wire xfmr.R to fuse to stat.R
wire stat.W to fan to xfmr.C
wire xfmr.C to earth: green
"""
_BAD = _GOOD.replace("xfmr.R to fuse to stat.R", "xfmr.R to stat.R").replace(
    "stat.W to fan to xfmr.C", "stat.W to fan to fuse to xfmr.C"
)

RULE = Rule(
    name="fuse-in-common",
    title="The fuse of the secondary stands in the hot side",
    family="supply",
    breaks=Breaks.SAFETY,
    why=(
        "A hot lead that chafes through feeds the fault around a fuse in the earthed side: nothing "
        "opens. And an open fuse there leaves every load hot, waiting for a way to earth."
    ),
    blind_spots="A fuse inside the transformer, in its hot side, is not drawn.",
    caution=MOVING_LEADS,
    sources=(
        PRACTICE,
        Source("NFPA 79", "standard", "8.3.1"),
    ),
    faults={
        "earthed": Fault(
            "{fuse} stands in the common side of {supply}, which is earthed: put it in the lead "
            "from {hot} and run the common straight through",
            "An earth fault in a hot lead burns the transformer out, the fuse whole.",
        ),
        "floating": Fault(
            "{fuse} stands in the common side of {supply}: put it in the lead from {hot} and run "
            "the common straight through",
            "It works; once the common is earthed, or a lead touches metal, it guards nothing.",
            Breaks.WORKMANSHIP,
        ),
    },
    bad=(
        Example(_BAD, (("earthed", "fuse"),)),
        Example(_BAD.replace("wire xfmr.C to earth: green\n", ""), (("floating", "fuse"),)),
    ),
    good=(Example(_GOOD),),
    stands_back_for=("hot-and-common-exchanged", "call-fed-from-common", "hot-side-earthed"),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find fuses and breakers among the contacts of a common side, where the hot side has none."""
    sides = facts.sides
    fuses: dict[int, list[Element]] = {}
    for part in facts.of("overcurrent"):
        for element in facts.nets.elements_of[part.key]:
            fuses.setdefault(sides.area(element.a), []).append(element)
    for supply in facts.supplies if fuses else ():
        hot, common = sides.area(supply.hot), sides.area(supply.common)
        if hot == common or hot in fuses:
            continue
        for fuse in fuses.get(common, ()):
            ends = (fuse.a, fuse.b)
            if all(facts.is_wired(end) and facts.is_traced(end) for end in ends):
                yield RULE.finding(
                    facts,
                    "earthed" if facts.is_grounded(supply.common) else "floating",
                    facts.place(fuse.a),
                    leads=facts.nets.leads_at(fuse.a),
                    terminals=(fuse.a, fuse.b, supply.hot, supply.common),
                    fuse=fuse.part.name,
                    supply=supply.part.name,
                    hot=facts.show(supply.hot),
                )
