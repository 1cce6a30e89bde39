"""The fuse of a control circuit is small enough to open on a short.

A control transformer gives only a few times its rated current into a short: a fuse made for ten
amperes watches it burn.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.circuit.supplies import source_behind
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.electrical.overcurrent import devices
from wirecheck.rules.electrical.words import amps
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source

#: The largest fuse of a 24 V control circuit (common practice, no source).
LARGEST_A: Final = 5.0
#: A fuse that makes a source Class 2 has no more than so many volt-amperes by the highest volts.
CLASS_2_VA: Final = 100.0

_GOOD = """\
part xfmr is transformer: 40 VA
part fuse is fuse: 3 A
part stat is thermostat
part fan is relay
wire xfmr.R to fuse to stat to fan to xfmr.C
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="fuse-too-large",
    title=f"The fuse of a 24 V control circuit is no larger than {LARGEST_A:.0f} A",
    family="electrical",
    breaks=Breaks.WORKMANSHIP,
    why=(
        "It is there to open before the transformer or a thin lead burns. One too large carries "
        "the short current of a small transformer for minutes, or for good."
    ),
    blind_spots="A fuse or breaker inside the transformer.",
    caution="",
    sources=(
        PRACTICE,
        Source("NFPA 70 (NEC)", "standard", "chapter 9, table 11(A)", from_memory=True),
    ),
    faults={
        "too-large": Fault(
            "{fuse} is rated {rating}, and {part} gives no more than about {short} into a short: "
            "use 3 to 5 A; where the fuse is what makes the circuit Class 2, {class_2} at most",
            "Nothing, until a lead chafes through: then the transformer burns, not the fuse.",
        ),
    },
    bad=(Example(_GOOD.replace("3 A", "10 A"), (("too-large", "10 A"),)),),
    good=(Example(_GOOD),),
    stands_back_for=("fuse-in-common",),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find devices in the hot side of a control circuit that are rated too high for it."""
    wired = facts.as_wired
    for device in devices(wired):
        if device.loading is None or device.rated_a <= LARGEST_A:
            continue
        supply = device.loading.supply
        behind = source_behind(supply.part, device.loading.spec)
        yield RULE.finding(
            wired,
            "too-large",
            device.rating.span,
            terminals=[device.part.terminal(name) for name in device.part.structure.terminals],
            fuse=device.part.name,
            rating=str(device.rating.value),
            part=supply.part.name,
            short=amps(behind.unloaded_v / abs(behind.ohms)),
            class_2=amps(CLASS_2_VA / behind.unloaded_v),
        )
