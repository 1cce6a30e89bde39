"""A direct ignition control tries once, or up to three times with a purge between.

After that it locks out, so that somebody finds out why it does not light.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.model.diagram import Attribute, Part
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.quantity import Quantity
from wirecheck.rules.cautions import UNLIT_GAS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

#: Most tries before lockout (common practice, no source).
MOST_TRIES: Final = 3

_CONTROL = """\
part box is direct-ignition-control: {tries}
part main is direct-burner
wire box.SPARK to main.SPARK: ignition-cable
wire box.SENSE to main.ROD
wire box.GND to main.FRAME: green
"""

RULE = Rule(
    name="too-many-tries",
    title=f"Main gas is tried at most {MOST_TRIES} times, each after a purge",
    family="control",
    breaks=Breaks.SAFETY,
    why=(
        "Each try that does not light leaves main gas in the fire chamber. Without a purge "
        "between, or tried too often, the next spark lights what has gathered."
    ),
    blind_spots="How well the purge clears this fire chamber.",
    caution=UNLIT_GAS,
    sources=(PRACTICE,),
    faults={
        "tries": Fault(
            "{control} tries {tries} times before it locks out, {most} is the most: use a control "
            "that locks out earlier",
            "When it does not light, main gas is let in unlit {tries} times.",
        ),
        "no-purge": Fault(
            "{control} tries {tries} times with no purge between: use one that purges before each "
            "further try, or that tries once",
            "The second spark goes into the gas of the first try.",
        ),
    },
    bad=(
        Example(_CONTROL.format(tries="tries 5"), (("tries", "tries 5"),)),
        Example(_CONTROL.format(tries="tries 3, purge 0 s"), (("no-purge", "purge 0 s"),)),
    ),
    good=(
        Example(_CONTROL.format(tries="tries 3")),
        Example(_CONTROL.format(tries="tries 1, purge 0 s")),
    ),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find controls that let main gas in too often, or again without a purge."""
    for control in facts.of("ignition-control"):
        tries = control.values.get("tries")
        if not isinstance(tries, int) or tries < 2:
            continue
        fault, said = _fault(control, tries)
        if said is not None:
            yield RULE.finding(
                facts,
                fault,
                said.span,
                terminals=control.with_role("valve-feed"),
                control=control.name,
                tries=str(tries),
                most=str(MOST_TRIES),
            )


def _fault(control: Part, tries: int) -> tuple[str, Attribute | None]:
    purge = control.given.get("purge")
    if tries > MOST_TRIES:
        return "tries", control.given.get("tries")
    none = purge and isinstance(purge.value, Quantity) and purge.value.high_base == 0
    return "no-purge", purge if none else None
