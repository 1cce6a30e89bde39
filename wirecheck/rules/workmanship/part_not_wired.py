"""Every part that is drawn has leads.

A limit that hangs beside the unit unwired guards nothing; a part without a lead is one mistake,
however many terminals it has.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.diagram import Part
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.calls import breaks_uncalled
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.words import called
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
_FIRED = """\
part xfmr is transformer
part limit is high-limit
part stat is thermostat
part box is pilot-ignition-control
wire xfmr.R to limit to stat to box.TH
wire xfmr.C to box.COM to earth
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
        "thermostat": Fault(
            "no lead reaches {part}, and the call reaches {call} without it: wire {part} into "
            "the call",
            "The burner fires whether {part} calls or not.",
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
        Example(_FIRED.replace("limit to stat", "limit"), (("thermostat", "stat"),)),
        Example(_GOOD + "part aid is relay\n", (("device", "aid"),)),
        Example(_GOOD + "part strip is terminal-strip\n", (("strip", "strip"),)),
    ),
    good=(Example(_GOOD), Example(_FIRED)),
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
        if fault is None or any(may_be_untraced(facts, end) for end in ends):
            continue
        fired = _fired_without(facts, part)
        yield RULE.finding(
            facts,
            "thermostat" if fired else fault,
            part.name_span,
            terminals=(*ends, *((fired.call,) if fired else ())),
            breaks=breaks_uncalled(fired, past_safeties=False) if fired else None,
            part=part.name,
            call=called(facts, fired) if fired else "",
        )


def _fired_without(facts: Facts, part: Part) -> Chain | None:
    """The only burner, if it runs with no call beside a thermostat that is not wired."""
    chains = facts.once(Burners).chains if part.family == "thermostat" else ()
    return chains[0] if len(chains) == 1 and chains[0].runs_uncalled() else None


def _fault(facts: Facts, part: Part) -> str | None:
    """None for a part that may have nothing to wire, as a burner with a standing pilot."""
    if any(switch.safety for switch in part.structure.switches):
        return "safety"
    if part.family == "strip":
        return "strip"
    return "device" if needed(facts, part) else None
