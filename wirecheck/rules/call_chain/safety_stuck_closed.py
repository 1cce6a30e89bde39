"""The contact of every safety opens.

Welded or jammed shut, a safety is a jumper that looks like a safety.  A switch that proves air or
pressure must even block the start while it is shut with the fan at rest.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Attribute
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.contacts import contacts, is_safety, names, sides, switch
from wirecheck.rules.call_chain.words import SAFETY_CAUTION, dangers
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source

_GOOD = """\
part xfmr is transformer
part limit is high-limit
part air is air-switch
part stat is thermostat
part box is direct-ignition-control
part burner is direct-burner
wire xfmr.R to limit to air to stat to box.TH
wire xfmr.C to box.COM
wire box.GND to burner.FRAME: green
wire box.SENSE to burner.ROD
wire box.SPARK to burner.SPARK: ignition-cable
"""

RULE = Rule(
    name="safety-stuck-closed",
    title="The contact of a safety opens when it should",
    family="call and safety chain",
    breaks=Breaks.SAFETY,
    why=(
        "A safety that was found stuck closed stops nothing. One that proves air or pressure "
        "must also be seen open before each start, or a burner lights with the fan standing still."
    ),
    blind_spots="A contact that sticks and was not tested.",
    caution=SAFETY_CAUTION,
    sources=(
        PRACTICE,
        Source("ICC Performance Code 2009", "standard", "chapter 13"),
    ),
    faults={
        "stops-nothing": Fault(
            "{safety} was found stuck closed: replace it and find out why it had to act; do not "
            "run the burner until then",
            "{safety} stays closed and the burner runs on through {danger}.",
        ),
        "proves-nothing": Fault(
            "{safety} was found stuck closed: it proves nothing and must block the start; replace "
            "it, and do not run the burner until then",
            "The burner starts and runs with {danger}; a control that looks for an open switch "
            "before the start does not start at all.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("is high-limit", "is high-limit: stuck closed"),
            (("stops-nothing", "stuck closed"),),
        ),
        Example(
            _GOOD.replace("is air-switch", "is air-switch: stuck closed"),
            (("proves-nothing", "stuck closed"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find safeties recorded as stuck closed."""
    for contact in contacts(facts):
        found = _stuck(contact) if is_safety(contact) else None
        if found is not None:
            proves = switch(contact).normal == "open" and switch(contact).moved_by in (
                "air",
                "pressure",
                "flow",
            )
            yield RULE.finding(
                facts,
                "proves-nothing" if proves else "stops-nothing",
                found.span,
                terminals=sides(facts, contact),
                safety=names(facts, [contact]),
                danger=dangers([contact]),
            )


def _stuck(contact: Element) -> Attribute | None:
    """What the text records of this contact, if that is that it is stuck closed."""
    name = f"{contact.name}-stuck" if contact.name else "stuck"
    found = contact.part.given.get(name)
    return found if found is not None and found.value == "closed" else None
