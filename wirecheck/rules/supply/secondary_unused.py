"""A transformer feeds something.

One whose secondary has no lead at all is either left over from an older job, or its leads were
landed on its neighbour.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.empty import any_wired
from wirecheck.rules.facts import Facts
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
_BAD = "\n".join(line for line in _GOOD.splitlines() if "xfmr.C" not in line) + "\n"

RULE = Rule(
    name="secondary-unused",
    title="Every transformer feeds something",
    family="supply",
    breaks=Breaks.OPERATION,
    why=(
        "What it was to feed stays dead, or hangs on another transformer that was not sized for it."
    ),
    blind_spots="A spare transformer left in place on purpose.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "no-lead": Fault(
            "nothing is wired to the secondary of {supply}: run its leads from {hot} and {common}, "
            "or take the transformer out",
            "Whatever it is to feed is dead.",
        ),
    },
    bad=(
        Example(
            _BAD.replace("part fan is relay\npart stat is thermostat\n", ""),
            (("no-lead", "xfmr"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find transformers that are wired, but not on their secondary."""
    for supply in facts.supplies:
        is_wired = facts.is_wired(supply.hot) or facts.is_wired(supply.common)
        if supply.part.family == "transformer" and not is_wired and any_wired(facts, supply.part):
            yield RULE.finding(
                facts,
                "no-lead",
                supply.part.name_span,
                terminals=(supply.hot, supply.common),
                supply=supply.part.name,
                hot=facts.show(supply.hot),
                common=facts.show(supply.common),
            )
