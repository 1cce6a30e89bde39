"""Without a damper the shorting plug is in the control.

The socket passes the call on to the ignition: with nothing in it, the control stays dead.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import set_attribute
from wirecheck.model.diagram import Part
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.damper.hookup import CALL, PROVED, ROLES, hookups
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part box is pilot-ignition-control: damper-plug fitted
part pilot is pilot-burner
wire xfmr.R to stat to box.TH
wire xfmr.C to box.COM
wire box.GND to pilot.HOOD: green
wire box.SENSE to pilot.ROD
wire box.SPARK to pilot.SPARK: ignition-cable
"""

RULE = Rule(
    name="damper-plug-removed",
    title="Without a damper the shorting plug is in",
    family="vent damper",
    breaks=Breaks.OPERATION,
    why="Nothing else joins the call to what it has to start.",
    blind_spots="A damper that is there and was not drawn.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "nothing-fitted": Fault(
            "the shorting plug of {control} is out and no damper is in its place: nothing joins "
            "{call} to {proved}; put the plug in",
            "The burner never lights.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("plug fitted", "plug removed"),
            (("nothing-fitted", "damper-plug removed"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find controls with nothing between the call and the rest of the control."""
    with_damper = {hookup.control.key for hookup in facts.once(hookups)}
    for control in facts.of("ignition-control"):
        if control.key in with_damper or not _is_cut_off(facts.as_wired, control):
            continue
        typed = control.given.get("damper-plug")
        yield RULE.finding(
            facts,
            "nothing-fitted",
            typed.span if typed else control.name_span,
            terminals=[*control.with_role(*ROLES), *control.with_role("control-hot")],
            edits=(set_attribute(facts.diagram, control.key, "damper-plug", "fitted"),),
            control=control.name,
            call=facts.show(control.with_role(CALL)[0]),
            proved=facts.show(control.with_role(PROVED)[0]),
        )


def _is_cut_off(facts: Facts, control: Part) -> bool:
    call, proved = control.with_role(CALL)[0], control.with_role(PROVED)[0]
    may_join = facts.conduction.may_join(facts.net(call), facts.net(proved))
    return not may_join and facts.is_traced(proved)
