"""A fuse or breaker carries what runs through it with everything on.

One that is too small opens on the first cold day, when all zones call together.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.electrical.overcurrent import devices
from wirecheck.rules.electrical.states import running
from wirecheck.rules.electrical.words import amps
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part fuse is fuse: 3 A
part stat is thermostat
part zone is zone-valve: 0.9 A
wire xfmr.R to fuse to stat to zone to xfmr.C
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="fuse-too-small",
    title="A fuse or breaker carries what runs through it with everything on",
    family="electrical",
    breaks=Breaks.OPERATION,
    why="It opens without any fault, and whoever replaces it looks for one that is not there.",
    blind_spots=(
        "The rush of current as a motor starts. What a load takes is its usual value where none "
        "is typed."
    ),
    caution="",
    sources=(PRACTICE,),
    faults={
        "opens": Fault(
            "{fuse} is rated {rating} and carries {current} with everything on: put in one that "
            "carries this, no larger than its circuit allows",
            "{fuse} opens some time after the burner has started, with nothing shorted.",
        ),
    },
    bad=(Example(_GOOD.replace("3 A", "0.5 A"), (("opens", "0.5 A"),)),),
    good=(Example(_GOOD),),
    stands_back_for=("transformer-overloaded", "fuse-in-common"),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find devices of typed rating through which more runs than that."""
    wired = facts.as_wired
    for device in devices(wired):
        if device.most_a <= device.rated_a:
            continue
        current = running(wired).contact_amps((device.part.key, device.contact))
        if current > device.rated_a:
            yield RULE.finding(
                wired,
                "opens",
                device.rating.span,
                terminals=[device.part.terminal(name) for name in device.part.structure.terminals],
                fuse=device.part.name,
                rating=str(device.rating.value),
                current=amps(current),
            )
