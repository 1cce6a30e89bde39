"""Every lead between the control and its gas valve is there.

Pilot, main and common: each has its own way of failing, and the unit tells which one it is.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import add_lead
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.nearest import both
from wirecheck.model.text import Span
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule
from wirecheck.rules.valve.arrangement import Arrangement, Fed, Verdict, judged
from wirecheck.rules.valve.off import ends_off, stray_lead, what_is_off

_GOOD = """\
part box is pilot-ignition-control
part valve is gas-valve-3-wire
part pilot is pilot-burner: one-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.GND to pilot.HOOD: green
plug box to valve: PV, MV, VC to C
"""

RULE = Rule(
    name="valve-lead-missing",
    title="Each output of the control, and its common, reaches the gas valve",
    family="valve",
    breaks=Breaks.OPERATION,
    why="An operator opens only with both its ends connected; each lead that is off is a no-start.",
    blind_spots="A lead that is on but loose, or broken inside its insulation.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "common-off": Fault(
            "no lead joins {pairs}: run {it}",
            "No gas: no operator opens, though the control sparks and its outputs are live.",
        ),
        "pilot-off": Fault(
            "no lead joins {pairs}: run {it}",
            "No pilot gas: the spark goes on and nothing lights; the trial ends.",
        ),
        "main-off": Fault(
            "no lead joins {pairs}: run {it}",
            "The main operator never opens; a pilot lights and stays on alone.",
        ),
        "feed-off": Fault(
            "no lead joins {pairs}: run {it}",
            "No gas: the spark goes on and nothing lights; the trial ends.",
        ),
    },
    bad=(
        Example(_GOOD.replace(", VC to C", ""), (("common-off", "valve"),)),
        Example(_GOOD.replace("PV, ", ""), (("pilot-off", "valve"),)),
        Example(_GOOD.replace("MV, ", ""), (("main-off", "valve"),)),
        Example(
            _GOOD.replace("pilot-ignition", "direct-ignition")
            .replace("pilot-burner: one-rod", "direct-burner")
            .replace("PV, MV, VC", "VC")
            + "wire box.SENSE to pilot.ROD\n",
            (("feed-off", "valve"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find valves that some output, or the common, of their control does not reach."""
    for found in judged(facts, Verdict.OFF):
        off = [fed for fed in ends_off(facts, found) if stray_lead(facts, found, fed) is None]
        if not off:
            continue
        yield RULE.finding(
            facts,
            what_is_off(found, off),
            _place(facts, found, off),
            leads=[n for fed in off for n in facts.nets.leads_at(fed.terminal)],
            terminals=[end for fed in off for end in (fed.terminal, fed.wanted)],
            edits=[
                add_lead(facts.diagram, fed.wanted, fed.terminal)
                for fed in off
                if not facts.is_wired(fed.terminal)
            ],
            pairs=both([f"{facts.show(fed.wanted)} to {facts.show(fed.terminal)}" for fed in off]),
            it="it" if len(off) == 1 else "them",
        )


def _place(facts: Facts, found: Arrangement, off: list[Fed]) -> Span:
    """An end of a missing lead that another lead lands on, else the valve."""
    ends = (end for fed in off for end in (fed.terminal, fed.wanted))
    wired = next((end for end in ends if facts.is_wired(end)), None)
    return facts.place(wired) if wired else found.valve.name_span
