"""The hold-open switch of a damper is clear once the service is done.

It holds the damper open whatever the call says, for a test.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

RULE = Rule(
    name="damper-held-open",
    title="The damper's hold-open switch is clear",
    family="vent damper",
    breaks=Breaks.WORKMANSHIP,
    why="Held open, the damper saves nothing, and nobody sees whether it still moves.",
    blind_spots="A damper held open on purpose until it is repaired.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "set": Fault(
            "the hold-open switch of {damper} is set: clear it and watch the damper through one "
            "full cycle",
            "The burner works; the vent stays open and draws warm air off all day.",
        ),
    },
    bad=(Example("part vent is vent-damper: hold-open set\n", (("set", "hold-open set"),)),),
    good=(Example("part vent is vent-damper\n"),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find dampers with the hold-open switch set."""
    for damper in facts.of("vent-damper"):
        typed = damper.given.get("hold-open")
        if typed is not None and typed.value == "set":
            yield RULE.finding(facts, "set", typed.span, damper=damper.name)
