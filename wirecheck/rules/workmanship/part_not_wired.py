"""Every part that is drawn has leads.

A limit that hangs beside the unit unwired guards nothing; a part without a lead is one mistake,
however many terminals it has.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.diagram import Part
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.empty import any_wired, may_be_untraced, needed, one_gap
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part limit is high-limit
part stat is thermostat
part fan is relay
wire xfmr.R to limit to stat to fan to xfmr.C
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="part-not-wired",
    title="Every part that is drawn has leads",
    family="workmanship",
    breaks=Breaks.OPERATION,
    why="What is not wired does nothing; of a safety everybody will believe that it guards.",
    blind_spots="A part kept in the drawing as a spare.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "safety": Fault(
            "no lead reaches {part}, a safety: wire it into the call, or the unit runs without it",
            "The unit runs, whatever {part} says.",
            Breaks.SAFETY,
        ),
        "device": Fault(
            "no lead reaches {part}: wire it, or take it out of the drawing",
            "{part} does nothing, and nothing that depends on it works.",
        ),
        "strip": Fault(
            "no lead reaches {part}: wire it, or take it out of the drawing",
            "Nothing.",
            Breaks.WORKMANSHIP,
        ),
    },
    bad=(
        Example(_GOOD.replace("limit to stat", "stat"), (("safety", "limit"),)),
        Example(_GOOD + "part aid is relay\n", (("device", "aid"),)),
        Example(_GOOD + "part strip is terminal-strip\n", (("strip", "strip"),)),
    ),
    good=(Example(_GOOD),),
    general=True,
    covers=True,
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find parts without a lead, in a diagram that has leads; not those a whole chain lacks."""
    gap = facts.once(one_gap)
    told = gap.beside if gap else ()
    for part in facts.diagram.parts.values() if facts.diagram.leads else ():
        if any_wired(facts, part) or part in told:
            continue
        specs = part.structure.terminals
        ends = [part.terminal(name) for name, spec in specs.items() if not spec.inner]
        fault = _fault(facts, part)
        if fault is not None and not any(may_be_untraced(facts, end) for end in ends):
            yield RULE.finding(facts, fault, part.name_span, terminals=ends, part=part.name)


def _fault(facts: Facts, part: Part) -> str | None:
    """None for a part that may have nothing to wire, as a burner with a standing pilot."""
    if any(switch.safety for switch in part.structure.switches):
        return "safety"
    if part.family == "strip":
        return "strip"
    return "device" if needed(facts, part) else None
