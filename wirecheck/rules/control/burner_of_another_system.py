"""A pilot ignition control lights a pilot, a direct ignition control lights the main burner.

The two look alike in the hand.  On the other's burner the one proves a flame that is not the one
that counts, and the other tries main gas for a whole pilot trial.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.cautions import UNLIT_GAS
from wirecheck.rules.facts import Facts
from wirecheck.rules.ignition_leads.hookup import hookups
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source

_UNIT = """\
part box is {control}
part flame is {burner}
wire box.SPARK to flame.SPARK: ignition-cable
wire box.SENSE to flame.ROD
wire box.GND to flame.HOOD: green
"""

RULE = Rule(
    name="burner-of-another-system",
    title="The control is made for the burner that it lights: a pilot or a main burner",
    family="control",
    breaks=Breaks.SAFETY,
    why=(
        "A direct ignition control opens the main gas with the spark: on a pilot it proves the "
        "pilot only. A pilot control gives its trial to a pilot's gas: at a main burner that is "
        "far too long."
    ),
    blind_spots="A burner that was typed as the wrong kind.",
    caution=UNLIT_GAS,
    sources=(Source("GOST 33009.1-2014", "standard", "5.7.6.1"), PRACTICE),
    faults={
        "direct-on-pilot": Fault(
            "{control} is a direct ignition control and {burner} is a pilot: use a pilot ignition "
            "control, which opens the main gas only once the pilot is proved",
            "Main gas opens with the spark, before the pilot is proved.",
        ),
        "pilot-on-direct": Fault(
            "{control} is a pilot ignition control and {burner} has no pilot: use a direct "
            "ignition control, with its short trial",
            "Gas flows unlit for a whole pilot trial, far too long for a main burner.",
        ),
    },
    bad=(
        Example(
            _UNIT.format(control="direct-ignition-control", burner="pilot-burner: two-rod"),
            (("direct-on-pilot", "box"),),
        ),
        Example(
            _UNIT.format(control="pilot-ignition-control", burner="direct-burner"),
            (("pilot-on-direct", "box"),),
        ),
    ),
    good=(
        Example(_UNIT.format(control="direct-ignition-control", burner="direct-burner")),
        Example(_UNIT.format(control="pilot-ignition-control", burner="pilot-burner: two-rod")),
    ),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find pilots on direct ignition controls, and main burners on pilot ignition controls."""
    for hookup in facts.as_wired.once(hookups):
        is_pilot = "pilot" in hookup.burner.kind.attributes
        if hookup.direct == is_pilot:
            yield RULE.finding(
                facts,
                "direct-on-pilot" if is_pilot else "pilot-on-direct",
                hookup.control.name_span,
                terminals=(hookup.spark, hookup.electrode),
                control=hookup.control.name,
                burner=hookup.burner.name,
            )
