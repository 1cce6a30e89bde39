"""The ground lead joins the control's ground to the burner's metal, and to no other terminal.

At the burner the hood, the rod and the electrode are a finger's breadth apart; on the wrong one
the lead does harm beside the good it does not do.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import move_end
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.burner_ground.way_back import Ends, astray
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part box is pilot-ignition-control
part pilot is pilot-burner: two-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD: green
"""

#: What the unit does with its ground on a terminal of some role.
_SEEN_AT = {
    "rod": "The rod is grounded: the {flame} lights and is never proved.",
    "electrode": "The spark goes to ground: no spark, unlit {gas} until the trial ends.",
    "spark": "The burner's metal is at the ignition voltage: no spark across the gap, unlit {gas}.",
    "burner-metal": "The {flame} lights, the spark goes on, the flame is not proved.",
}
#: Elsewhere, by the circuit of the terminal.
_SEEN_ON = {
    "line": "The line is shorted to ground, or the burner's metal is live at line voltage.",
    "24V": "The ground lead shorts the transformer when that terminal is live; no flame is proved.",
}
_NOT_PROVED = "The {flame} lights, the spark goes on, the flame is not proved; the trial ends."

RULE = Rule(
    name="burner-ground-on-wrong-terminal",
    title="The ground lead lands on the burner's metal",
    family="burner ground",
    breaks=Breaks.OPERATION,
    why=(
        "Flame signal and spark come back from the burner's metal. On another terminal the lead "
        "leaves them no way back, and grounds what must not be grounded."
    ),
    blind_spots="Two leads that the file lists at the wrong ends of one harness.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "wrong-terminal": Fault(
            "the ground lead of {end} lands on {far}: take it off there and land it on {right}",
            "{seen}",
        ),
        "shorts": Fault(
            "the ground lead of {end} lands on {far}: take it off there and land it on {right}",
            "{seen}",
            Breaks.SAFETY,
        ),
    },
    bad=(
        Example(
            _GOOD.replace("pilot.HOOD", "pilot.ROD"),
            (("wrong-terminal", "pilot.ROD"),),
        ),
        Example(_GOOD.replace("pilot.HOOD", "box.24V"), (("shorts", "box.24V"),)),
    ),
    good=(Example(_GOOD),),
    covers=True,
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find ground leads that end on a terminal other than the burner's metal."""
    for found in astray(facts, Ends.AT_WRONG_TERMINAL):
        hookup, far = found.hookup, found.far
        right = hookup.metal if found.start == hookup.ground else hookup.ground
        edit = move_end(facts.diagram, found.lead, far, right)
        seen = _SEEN_AT.get(facts.role(far)) or _SEEN_ON.get(_circuit(facts, far), _NOT_PROVED)
        yield RULE.finding(
            facts,
            "shorts" if seen in _SEEN_ON.values() else "wrong-terminal",
            facts.end_span(found.lead, far),
            leads=(found.lead,),
            terminals=(found.start, far, right),
            edits=(edit,) if edit else (),
            breaks=hookup.sparkless if facts.role(far) in ("electrode", "spark") else None,
            end=facts.show(found.start),
            far=facts.show(far),
            right=facts.show(right),
            seen=seen.format(flame=hookup.flame, gas=hookup.gas),
        )


def _circuit(facts: Facts, far: Terminal) -> str:
    """The circuit a terminal is on; that of a switch follows from what feeds it."""
    spec = facts.diagram.spec(far)
    if spec is not None and spec.circuit == "any" and facts.as_wired.hot_supplies(far):
        return "24V"
    return spec.circuit if spec else ""
