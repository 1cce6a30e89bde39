"""The call of a control comes from the hot side of the supply.

Fed from the common like COM, the control has the same side on both terminals: nothing happens.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import move_end
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part fan is relay
part box is pilot-ignition-control
part pilot is pilot-burner: two-rod
wire xfmr.R to stat.R
wire stat.G to fan to xfmr.C
wire stat.W to box.TH
wire xfmr.C to box.COM
wire xfmr.C to earth: green
wire box.GND to pilot.HOOD: green
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
"""
_BAD = (
    _GOOD.replace("part fan is relay\n", "part limit is high-limit\npart fan is relay\n")
    .replace("wire stat.W to box.TH", "wire xfmr.C to limit to box.TH")
    .replace("wire stat.G", "wire stat.W")
)

RULE = Rule(
    name="call-fed-from-common",
    title="The call of a control comes from the hot side of the supply",
    family="common",
    breaks=Breaks.OPERATION,
    why="With the common on both its call and its COM a control never has any volts across it.",
    blind_spots="Which of the leads on the way was meant for the hot side.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "common-on-call": Fault(
            "the call at {call} comes from {common}, as {com} does: feed it from {hot}",
            "Dead: the control never has volts across it, whatever calls.",
        ),
    },
    bad=(Example(_BAD, (("common-on-call", "xfmr.C"),)),),
    good=(Example(_GOOD),),
    stands_back_for=("secondary-shorted", "secondary-shorted-on-call", "hot-side-earthed"),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find controls with the common of one supply on both their call and their COM."""
    sides = facts.sides
    for control in facts.of("ignition-control"):
        com, call = facts.terminal(control, "control-common"), facts.terminal(control, "call")
        if com is None or call is None or sides.hot_beyond(call):
            continue
        for supply in sides.common_beyond(call)[:1]:
            trace = sides.trace(supply.common, call)
            if supply in sides.common_on(com) and trace is not None and trace.leads:
                first = trace.leads[0]
                ends = facts.diagram.leads[first][:2]
                edit = None
                if supply.common in ends:
                    edit = move_end(facts.diagram, first, supply.common, supply.hot)
                yield RULE.finding(
                    facts,
                    "common-on-call",
                    facts.end_span(first, supply.common),
                    leads=trace.leads,
                    terminals=(call, com, supply.common),
                    edits=(edit,) if edit else (),
                    call=facts.show(call),
                    com=facts.show(com),
                    common=facts.show(supply.common),
                    hot=facts.show(supply.hot),
                )
