"""On LP gas a control that does not light shuts all gas off and locks out.

LP is heavier than air.  What flows unlit in one trial lies in the bottom of the unit when the next
one sparks.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.cautions import UNLIT_GAS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_CONTROL = """\
part box is pilot-ignition-control: gas lp{retry}
part pilot is pilot-burner: one-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.GND to pilot.HOOD: green
"""

RULE = Rule(
    name="lp-without-lockout",
    title="A control on LP gas shuts off and locks out after a failed trial",
    family="control",
    breaks=Breaks.SAFETY,
    why=(
        "LP that flowed unlit does not rise and leave; it gathers low down. A control that tries "
        "again by itself lights what has gathered."
    ),
    blind_spots="A control whose retry pattern is set by a switch that nobody typed.",
    caution=UNLIT_GAS,
    sources=(PRACTICE,),
    faults={
        "retries": Fault(
            "{control} is on LP with retry {retry}: LP needs a control that shuts off all gas and "
            "locks out after a failed trial (retry lockout); fit one",
            "After a failed trial it opens the gas again and sparks into what has gathered.",
        ),
        "not-said": Fault(
            "{control} is on LP and its retry pattern is not given, so it is taken to try again: "
            "LP needs shut-off and lockout; say retry lockout if it has it, else fit one that has",
            "After a failed trial it opens the gas again and sparks into what has gathered.",
        ),
    },
    bad=(
        Example(_CONTROL.format(retry=", retry continuous"), (("retries", "retry continuous"),)),
        Example(_CONTROL.format(retry=""), (("not-said", "gas lp"),)),
    ),
    good=(Example(_CONTROL.format(retry=", retry lockout")),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find controls on LP whose pattern after a failed trial is not lockout."""
    for control in facts.of("ignition-control"):
        retry = control.values.get("retry")
        if control.values.get("gas") != "lp" or retry in (None, "lockout"):
            continue
        typed = control.given.get("retry")
        place = typed or control.given["gas"]
        yield RULE.finding(
            facts,
            "retries" if typed else "not-said",
            place.span,
            terminals=control.with_role("spark"),
            control=control.name,
            retry=str(retry),
        )
