"""The lead from the thermostat lands on the call terminal.

On the terminal for constant 24 V it feeds the damper's supply at most: the control never hears
the call.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import move_end
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.rules.call_chain.calls import Calls
from wirecheck.rules.call_chain.contacts import makes_call, names
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part limit is high-limit
part stat is thermostat
part box is pilot-ignition-control
part pilot is pilot-burner
wire xfmr.R to limit to stat to box.TH
wire xfmr.C to box.COM
wire box.GND to pilot.HOOD: green
wire box.SENSE to pilot.ROD
wire box.SPARK to pilot.SPARK: ignition-cable
"""

RULE = Rule(
    name="call-on-the-hot-terminal",
    title="The call lead lands on the call terminal",
    family="call and safety chain",
    breaks=Breaks.OPERATION,
    why="The hot terminal feeds the damper's supply and nothing else: a call there lights nothing.",
    blind_spots="Terminals whose printed labels were read wrong when the file was typed.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "no-call": Fault(
            "the call from {thermostat} lands on {hot}, and nothing feeds {call}: move it to "
            "{call}",
            "The burner never lights.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("stat to box.TH", "stat to box.24V"),
            (("no-call", "box.24V"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find controls whose hot terminal has the thermostat ahead and whose call has no feed."""
    wired = facts.as_wired
    for found in facts.once(Calls).on_hot:
        if found.chain.feeds:
            continue
        yield RULE.finding(
            facts,
            "no-call",
            facts.place(found.hot),
            leads=facts.nets.leads_at(found.hot),
            terminals=(found.call, found.hot),
            edits=_move(facts, found.call, found.hot),
            thermostat=names(wired, filter(makes_call, found.ahead)),
            call=facts.show(found.call),
            hot=facts.show(found.hot),
        )


def _move(facts: Facts, call: Terminal, hot: Terminal) -> tuple[Edit, ...]:
    """Move the lead to the call terminal, where it is the only one and that is free."""
    at_hot = facts.nets.leads_at(hot)
    if len(at_hot) != 1 or facts.is_wired(call):
        return ()
    edit = move_end(facts.diagram, at_hot[0], hot, call)
    return (edit,) if edit else ()
