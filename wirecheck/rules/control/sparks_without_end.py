"""A trial for ignition ends.

The old pattern holds the gas open and sparks until something lights, for hours if need be.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.cautions import UNLIT_GAS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source

_CONTROL = """\
part box is pilot-ignition-control: retry {retry}
part pilot is pilot-burner: one-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.GND to pilot.HOOD: green
"""

RULE = Rule(
    name="sparks-without-end",
    title="The control ends a trial that does not light",
    family="control",
    breaks=Breaks.SAFETY,
    why=(
        "Pilot gas flows unlit for as long as the call lasts. Whatever keeps the pilot from "
        "lighting also keeps the gas coming."
    ),
    blind_spots="A timer outside the control that ends the call.",
    caution=UNLIT_GAS,
    sources=(Source("ANSI Z21.20-2005", "standard", "1.1.1"), PRACTICE),
    faults={
        "no-end": Fault(
            "{control} sparks without end and never shuts the pilot gas off (retry none): replace "
            "it by a control that ends the trial",
            "With the pilot not lit, the spark and the unlit pilot gas go on as long as the call.",
        ),
    },
    bad=(Example(_CONTROL.format(retry="none"), (("no-end", "retry none"),)),),
    good=(Example(_CONTROL.format(retry="lockout")), Example(_CONTROL.format(retry="continuous"))),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find controls without an end of the trial; on LP that is a finding of its own."""
    for control in facts.of("ignition-control"):
        retry = control.given.get("retry")
        if retry is None or retry.value != "none" or control.values.get("gas") == "lp":
            continue
        yield RULE.finding(
            facts,
            "no-end",
            retry.span,
            terminals=control.with_role("spark"),
            control=control.name,
        )
