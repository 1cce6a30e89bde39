"""The sense link suits the burner: fitted for one rod, cut for two.

The link ties the sense terminal to the cold end of the spark coil, so that a single electrode can
also sense.  With a separate rod it puts rod and electrode in parallel.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import set_attribute
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts
from wirecheck.rules.ignition_leads.hookup import hookups
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_TWO_ROD = """\
part box is pilot-ignition-control: sense-link {link}
part pilot is pilot-burner: two-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD: green
"""
_ONE_ROD = """\
part box is pilot-ignition-control: sense-link {link}
part pilot is pilot-burner: one-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.GND to pilot.HOOD: green
"""

RULE = Rule(
    name="sense-link-wrong",
    title="The sense link is fitted for a one-rod pilot and cut for a two-rod one",
    family="ignition leads",
    breaks=Breaks.OPERATION,
    why=(
        "With one rod the link is the only way of the flame signal into the amplifier. With two it "
        "puts the spark electrode in parallel with the rod, and the signal of both is erratic."
    ),
    blind_spots="A link that is there but cracked, or cut and touching.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "fitted-on-two-rod": Fault(
            "the sense link of {control} is fitted, and {burner} has a rod of its own on {sense}: "
            "cut the link",
            "Rod and electrode sense in parallel: the pilot lights and is proved now and then.",
        ),
        "cut-on-one-rod": Fault(
            "the sense link of {control} is cut, and the only rod of {burner} is its electrode: "
            "fit the link again, or use the control that suits one rod",
            "The pilot lights and is never proved; the trial ends.",
        ),
    },
    bad=(
        Example(_TWO_ROD.format(link="fitted"), (("fitted-on-two-rod", "sense-link fitted"),)),
        Example(_ONE_ROD.format(link="cut"), (("cut-on-one-rod", "sense-link cut"),)),
    ),
    good=(Example(_TWO_ROD.format(link="cut")), Example(_ONE_ROD.format(link="fitted"))),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find sense links typed otherwise than the burner drawn needs."""
    for hookup in facts.as_wired.once(hookups):
        control = hookup.control
        link = control.given.get("sense-link")
        needed = "fitted" if hookup.rod is None else "cut"
        if link is None or link.value == needed:
            continue
        yield RULE.finding(
            facts,
            "cut-on-one-rod" if hookup.rod is None else "fitted-on-two-rod",
            link.span,
            terminals=(hookup.sense, hookup.electrode),
            edits=(set_attribute(facts.diagram, control.key, "sense-link", needed),),
            control=control.name,
            burner=hookup.burner.name,
            sense=facts.show(hookup.sense),
        )
