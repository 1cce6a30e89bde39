"""An ignition control is not mounted with its terminals up.

Condensate and wash-down water run down the leads into the terminals and stay there.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import set_attribute
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_CONTROL = """\
part box is pilot-ignition-control: mounting {mounting}
part pilot is pilot-burner: one-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.GND to pilot.HOOD: green
"""

RULE = Rule(
    name="control-mounted-terminals-up",
    title="The ignition control is mounted with its terminals down or to the side",
    family="control",
    breaks=Breaks.WORKMANSHIP,
    why=(
        "Water on the terminals leaks the flame signal away and corrodes the contacts; inside the "
        "control it ends it."
    ),
    blind_spots="What the control's maker allows, and a cabinet in which no water can drip.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "terminals-up": Fault(
            "{control} is mounted with its terminals up, where water collects: turn it with its "
            "terminals down or sideways, with a loop in the leads below them",
            "It works until it is damp; then the flame signal fades or the control fails.",
        ),
    },
    bad=(
        Example(
            _CONTROL.format(mounting="terminals-up"), (("terminals-up", "mounting terminals-up"),)
        ),
    ),
    good=(
        Example(_CONTROL.format(mounting="terminals-down")),
        Example(_CONTROL.format(mounting="sideways")),
    ),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find controls typed as mounted with their terminals up."""
    for control in facts.of("ignition-control"):
        mounting = control.given.get("mounting")
        if mounting is not None and mounting.value == "terminals-up":
            yield RULE.finding(
                facts,
                "terminals-up",
                mounting.span,
                edits=(set_attribute(facts.diagram, control.key, "mounting", "terminals-down"),),
                control=control.name,
            )
