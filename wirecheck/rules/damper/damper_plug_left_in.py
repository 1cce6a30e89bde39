"""Where a damper is wired, the shorting plug is out of the control.

The plug passes the call on at once: the burner lights while the damper is still shut, and burns on
if it sticks.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import set_attribute
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.damper.hookup import CALL, PROVED, ROLES, hookups
from wirecheck.rules.damper.words import SHUT_VENT
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part box is pilot-ignition-control: damper-plug removed
part vent is vent-damper
part pilot is pilot-burner
wire xfmr.R to stat to box.TH
wire xfmr.R to box.24V
wire xfmr.C to box.COM
plug box to vent: D-HOT to HOT, D-CALL to CALL, D-PROVED to PROVED, D-COM to COM
wire box.GND to pilot.HOOD: green
wire box.SENSE to pilot.ROD
wire box.SPARK to pilot.SPARK: ignition-cable
"""

RULE = Rule(
    name="damper-plug-left-in",
    title="With a damper wired, the shorting plug is out",
    family="vent damper",
    breaks=Breaks.SAFETY,
    why=(
        "The plug takes the damper's end switch out of the call: ignition no longer waits until "
        "the vent is open."
    ),
    blind_spots="A plug whose state was not looked at: with leads on the socket it counts as out.",
    caution=SHUT_VENT,
    sources=(
        PRACTICE,
        Source("ANSI Z21.66", "standard", from_memory=True),
    ),
    faults={
        "fitted": Fault(
            "{damper} is wired to {control} and the shorting plug is still in: it joins {call} to "
            "{proved} past the end switch; take the plug out",
            "The burner lights at once while the damper opens, and burns on if the damper sticks.",
        ),
    },
    bad=(
        Example(_GOOD.replace("plug removed", "plug fitted"), (("fitted", "damper-plug fitted"),)),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find controls with a damper in their socket and the plug in it too."""
    for hookup in facts.once(hookups):
        if not hookup.plugged or hookup.in_call_lead or CALL not in hookup.landed[CALL]:
            continue
        control = hookup.control
        typed = control.given.get("damper-plug")
        yield RULE.finding(
            facts,
            "fitted",
            typed.span if typed else facts.place(hookup.at_damper(CALL)),
            terminals=[
                *map(hookup.at_control, ROLES),
                *map(hookup.at_damper, (CALL, PROVED)),
            ],
            edits=(set_attribute(facts.diagram, control.key, "damper-plug", "removed"),),
            damper=hookup.damper.name,
            control=control.name,
            call=facts.show(hookup.at_control(CALL)),
            proved=facts.show(hookup.at_control(PROVED)),
        )
