"""The damper's motor gets the call, not constant power.

On constant power it never shuts, and through its end switch the control is fed with no call.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import remove_lead
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.damper.hookup import CALL, HOT, PROVED, Hookup, hookups, is_constant
from wirecheck.rules.damper.words import SHUT_VENT
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

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
    name="damper-always-powered",
    title="The damper's motor is fed by the call",
    family="vent damper",
    breaks=Breaks.SAFETY,
    why=(
        "Its call terminal on constant power holds the damper open; the warm flue pulls room air "
        "out all day, and the closed end switch feeds whatever hangs on it."
    ),
    blind_spots="Terminals whose printed labels were read wrong when the file was typed.",
    caution=SHUT_VENT,
    sources=(PRACTICE,),
    faults={
        "constant": Fault(
            "{call} is on constant 24 V: feed it from {right}",
            "The damper never shuts{and_then}.",
        ),
        "beside-call": Fault(
            "the lead {lead} puts constant 24 V on {call}, and by way of {right} on the whole "
            "call: take it off",
            "The damper never shuts, and the burner fires as soon as there is power; nothing that "
            "stands in the call stops it.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("D-CALL to CALL", "D-HOT to CALL"),
            (("constant", "CALL"),),
        ),
        Example(
            _GOOD + "wire box.24V to vent.CALL\n",
            (("beside-call", "box.24V to vent.CALL"),),
        ),
    ),
    good=(Example(_GOOD),),
    covers=True,  # what is bypassed by that lead follows from it
)


_FIRES = (
    ", and its end switch feeds the control with no call: the burner fires as soon as there is "
    "power"
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find dampers whose call terminal is on the hot side itself."""
    for hookup in facts.once(hookups):
        on = hookup.landed[CALL]
        if HOT not in on or HOT not in hookup.landed[HOT]:
            continue
        if CALL in on:
            yield from _beside_call(facts, hookup)
            continue
        call = hookup.at_damper(CALL)
        feeds = {PROVED, CALL} & hookup.landed[PROVED]
        yield RULE.finding(
            facts,
            "constant",
            facts.place(call),
            leads=facts.nets.leads_at(call),
            terminals=(call, hookup.at_control(CALL)),
            breaks=Breaks.SAFETY if feeds else Breaks.OPERATION,
            and_then=_FIRES if feeds else "",
            call=facts.show(call),
            right=facts.show(hookup.at_control(CALL)),
        )


def _beside_call(facts: Facts, hookup: Hookup) -> Iterator[Finding]:
    """A lead from constant 24 V on the damper's call terminal, beside the right one."""
    call, right = hookup.at_damper(CALL), hookup.at_control(CALL)
    ends = {n: facts.other_end(n, call) for n in facts.nets.leads_at(call)}
    own = any(facts.role(end) in (CALL, "call") for end in ends.values())
    for number, end in ends.items():
        if own and _is_hot_terminal(facts, hookup, end):
            yield RULE.finding(
                facts,
                "beside-call",
                facts.lead_span(number),
                leads=(number,),
                terminals=(call, right),
                edits=(remove_lead(facts.diagram, number),),
                lead=facts.lead(number),
                call=facts.show(call),
                right=facts.show(right),
            )


def _is_hot_terminal(facts: Facts, hookup: Hookup, end: Terminal) -> bool:
    """Whether a terminal is constant 24 V by what it is: of the control, damper or supply."""
    if end.part in (hookup.control.key, hookup.damper.key):
        return facts.role(end) in (HOT, "control-hot") and is_constant(facts.as_wired, end)
    return any(end == supply.hot for supply in facts.supplies)
