"""One gas valve hangs on one ignition control.

Two controls on one valve hold it open for each other: the one that proves a flame keeps gas
flowing to the burner of the other.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.nearest import both
from wirecheck.rules.cautions import UNLIT_GAS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule
from wirecheck.rules.valve.arrangement import Verdict, judged
from wirecheck.rules.valve.feeds import OUTPUTS

_UNITS = """\
part box1 is direct-ignition-control
part box2 is direct-ignition-control
part valve1 is gas-valve-2-wire
wire box1.GND to earth: green
wire box2.GND to earth: green
wire box1.V to valve1.1
wire box1.VC to valve1.C
"""
_BAD = _UNITS + "wire box2.V to valve1.1\nwire box2.VC to valve1.C\n"
_GOOD = (
    _UNITS
    + """\
part valve2 is gas-valve-2-wire
wire box2.V to valve2.1
wire box2.VC to valve2.C
"""
)

RULE = Rule(
    name="valve-on-two-controls",
    title="The operators of a gas valve are driven by one ignition control",
    family="valve",
    breaks=Breaks.SAFETY,
    why=(
        "The valve stays open as long as either control wants gas. A flame failure at one burner "
        "shuts nothing while the other burns, and each output feeds back into the other control."
    ),
    blind_spots="Which burner a valve feeds: gas pipes are not drawn.",
    caution=UNLIT_GAS,
    sources=(PRACTICE,),
    faults={
        "two-controls": Fault(
            "{valve} is fed by {controls} at once: one valve takes its operators' leads from one "
            "control; take the others off",
            "The valve is open while either control wants gas; a flame lost at one burner does not "
            "shut it.",
        ),
    },
    bad=(Example(_BAD, (("two-controls", "valve1.1"),)),),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find valves whose operators several controls reach."""
    for found in judged(facts, Verdict.TWO_CONTROLS):
        ends = [fed.terminal for fed in found.terminals if fed.sources & set(OUTPUTS.values())]
        landed = [(lead, end) for end in ends for lead in facts.nets.leads_at(end)]
        yield RULE.finding(
            facts,
            "two-controls",
            facts.end_span(*landed[-1]) if landed else found.valve.name_span,
            leads=[lead for lead, _end in landed],
            terminals=[fed.terminal for fed in found.terminals],
            valve=found.valve.name,
            controls=both([control.name for control in found.controls]),
        )
