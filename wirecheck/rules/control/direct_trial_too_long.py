"""A direct ignition control tries to light the main burner for some seconds only.

In a pilot trial a pilot's worth of gas may flow unlit; here it is the main burner's.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.quantity import Quantity
from wirecheck.rules.cautions import UNLIT_GAS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import Example, Fault, Rule, Source

#: Longest trial of main gas, in seconds (common practice, no source; NFPA 86 has the same for
#: ovens, from memory).
LONGEST_S: Final = 15.0

_CONTROL = """\
part box is direct-ignition-control: trial {trial}
part main is direct-burner
wire box.SPARK to main.SPARK: ignition-cable
wire box.SENSE to main.ROD
wire box.GND to main.FRAME: green
"""

RULE = Rule(
    name="direct-trial-too-long",
    title=f"A trial of main gas lasts {LONGEST_S:g} s at most",
    family="control",
    breaks=Breaks.SAFETY,
    why=(
        "Each second of a trial that does not light puts main gas into the fire chamber. Late "
        "light-up burns all of it at once."
    ),
    blind_spots="The appliance maker may allow less; 4 to 10 s is usual.",
    caution=UNLIT_GAS,
    sources=(
        Source("trials of 4 to 15 s", "practice"),
        Source("NFPA 86 (ovens)", "standard", from_memory=True),
    ),
    faults={
        "too-long": Fault(
            "{control} tries to light the main burner for {trial}, {limit} is the most: use a "
            "control with a shorter trial",
            "When it does not light, main gas flows unlit for {trial}.",
        ),
    },
    bad=(Example(_CONTROL.format(trial="90 s"), (("too-long", "trial 90 s"),)),),
    good=(Example(_CONTROL.format(trial="15 s")),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find controls without a pilot whose trial is typed longer than that."""
    for control in facts.of("ignition-control"):
        trial = control.given.get("trial")
        if trial is None or not control.with_role("valve-feed"):
            continue
        if isinstance(trial.value, Quantity) and trial.value.high_base > LONGEST_S:
            yield RULE.finding(
                facts,
                "too-long",
                trial.span,
                terminals=control.with_role("valve-feed"),
                control=control.name,
                trial=str(trial.value),
                limit=f"{LONGEST_S:g} s",
            )
