"""A damper that needs power to shut has it all the time.

With the thermostat ahead of its constant supply it is dead between calls, just when it should
shut.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.contacts import makes_call, names
from wirecheck.rules.damper.hookup import HOT, hookups
from wirecheck.rules.damper.words import SHUT_VENT
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part box is pilot-ignition-control
part vent is vent-damper: power-both
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
    name="damper-hot-switched",
    title="Nothing that makes the call stands ahead of the damper's constant supply",
    family="vent damper",
    breaks=Breaks.OPERATION,
    why="A damper that is powered shut cannot shut without its constant 24 V.",
    blind_spots="A damper whose action was not typed is taken as shut by a spring.",
    caution=SHUT_VENT,
    sources=(PRACTICE,),
    faults={
        "on-call-only": Fault(
            "{hot} has power only while {contact} calls: feed it from the hot side itself",
            "The damper opens for the burner and does not shut after it.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("xfmr.R to box.24V", "stat.W to box.24V"),
            (("on-call-only", "HOT"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find dampers powered shut whose constant supply hangs on the call."""
    wired = facts.as_wired
    for hookup in facts.once(hookups):
        hot = hookup.at_damper(HOT)
        if hookup.shut_by_spring:
            continue
        for supply in wired.hot_supplies(hot)[:1]:
            way = wired.conduction.way(wired.net(supply.hot), wired.net(hot))
            switched = [contact for contact in way.series if makes_call(contact)]
            if switched:
                yield RULE.finding(
                    facts,
                    "on-call-only",
                    facts.place(hot),
                    terminals=(hot, hookup.at_control(HOT)),
                    hot=facts.show(hot),
                    contact=names(wired, switched),
                )
