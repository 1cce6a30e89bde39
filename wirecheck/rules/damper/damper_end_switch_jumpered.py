"""No conductor leads past the damper's end switch.

With its call and proved leads joined the control takes the damper for open as soon as there is a
call.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.bridge import Bridge
from wirecheck.rules.call_chain.loops import Bridged
from wirecheck.rules.damper.hookup import CALL, PROVED, hookups
from wirecheck.rules.damper.words import SHUT_VENT
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part box is pilot-ignition-control
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
    name="damper-end-switch-jumpered",
    title="No lead or jumper joins the damper's call to its proved lead",
    family="vent damper",
    breaks=Breaks.SAFETY,
    why=(
        "The end switch is what keeps the burner from lighting into a shut vent; past it the call "
        "arrives at once, damper open or not."
    ),
    blind_spots="A jumper at the unit that was not typed.",
    caution=SHUT_VENT,
    sources=(PRACTICE, Source("ANSI Z21.66", "standard", from_memory=True)),
    faults={
        "joined": Fault(
            "{way} joins {call} to {proved} past the end switch of {damper}: take it off",
            "The burner lights at once while the damper opens, and burns on if the damper sticks.",
        ),
    },
    bad=(
        Example(
            _GOOD + "jumper box.D-CALL to box.D-PROVED\n",
            (("joined", "box.D-CALL to box.D-PROVED"),),
        ),
        Example(
            _GOOD + "jumper vent.CALL to vent.PROVED\n",
            (("joined", "vent.CALL to vent.PROVED"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find dampers whose end switch has both sides on one conductor, the plug being out."""
    wired = facts.as_wired
    for hookup in facts.once(hookups):
        call, proved = hookup.at_damper(CALL), hookup.at_damper(PROVED)
        if hookup.plugged and not hookup.in_call_lead:
            continue
        if not wired.sides.same(call, proved):
            continue
        switches = tuple(
            element
            for element in wired.nets.elements_of[hookup.damper.key]
            if element.type == "switch"
        )
        bridge = Bridge(facts, Bridged(switches, (call, proved), wired.net(call)))
        yield RULE.finding(
            facts,
            "joined",
            bridge.span,
            leads=bridge.leads,
            terminals=(call, proved, hookup.at_control(CALL), hookup.at_control(PROVED)),
            edits=bridge.edits,
            way=bridge.words,
            call=facts.show(call),
            proved=facts.show(proved),
            damper=hookup.damper.name,
        )
