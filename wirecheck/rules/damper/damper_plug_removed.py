"""Without a damper the shorting plug is in the control.

The socket passes the call on to the ignition: with nothing in it, the control stays dead.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import set_attribute
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.bridge import Bridge
from wirecheck.rules.call_chain.loops import Bridged
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
        "jumpered": Fault(
            "{way} stands in for the shorting plug of {control}: fit the plug itself; if that is "
            "the plug, type damper-plug fitted in its place",
            "It works; the next technician looks for the damper that belongs there.",
            Breaks.WORKMANSHIP,
        ),
    },
    bad=(
        Example(
            _GOOD.replace("plug fitted", "plug removed"),
            (("nothing-fitted", "damper-plug removed"),),
        ),
        Example(
            _GOOD.replace(": damper-plug fitted", "") + "jumper box.D-CALL to box.D-PROVED\n",
            (("jumpered", "box.D-CALL to box.D-PROVED"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find controls with no damper and no plug between the call and the rest of the control."""
    with_damper = {hookup.control.key for hookup in facts.once(hookups)}
    for control in facts.of("ignition-control"):
        if control.key in with_damper or str(control.values.get("damper-plug")) == "fitted":
            continue
        call, proved = control.with_role(CALL)[0], control.with_role(PROVED)[0]
        if facts.as_wired.sides.same(call, proved):
            yield _jumpered(facts, control, call, proved)
        elif _is_cut_off(facts.as_wired, call, proved):
            yield _nothing_fitted(facts, control, call, proved)


def _is_cut_off(facts: Facts, call: Terminal, proved: Terminal) -> bool:
    may_join = facts.conduction.may_join(facts.net(call), facts.net(proved))
    return not may_join and facts.is_traced(proved)


def _jumpered(facts: Facts, control: Part, call: Terminal, proved: Terminal) -> Finding:
    bridge = Bridge(facts, Bridged((), (call, proved), facts.as_wired.net(call)))
    return RULE.finding(
        facts,
        "jumpered",
        bridge.span,
        leads=bridge.leads,
        terminals=_socket(control),
        way=bridge.words,
        control=control.name,
    )


def _nothing_fitted(facts: Facts, control: Part, call: Terminal, proved: Terminal) -> Finding:
    typed = control.given.get("damper-plug")
    return RULE.finding(
        facts,
        "nothing-fitted",
        typed.span if typed else control.name_span,
        terminals=_socket(control),
        edits=(set_attribute(facts.diagram, control.key, "damper-plug", "fitted"),),
        control=control.name,
        call=facts.show(call),
        proved=facts.show(proved),
    )


def _socket(control: Part) -> tuple[Terminal, ...]:
    """The terminals that a damper would need."""
    return (*control.with_role(*ROLES), *control.with_role("control-hot"))
