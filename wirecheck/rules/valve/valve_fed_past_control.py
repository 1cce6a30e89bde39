"""Only the ignition control feeds the gas valve.

A lead from the thermostat, from R or from the call straight to an operator opens the gas on every
call, lit or not, and nothing shuts it.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import move_end
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.rules.astray import astray_lead
from wirecheck.rules.cautions import UNLIT_GAS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source
from wirecheck.rules.valve.arrangement import Arrangement, Fed, Verdict, judged
from wirecheck.rules.valve.feeds import Feeds
from wirecheck.rules.valve.feeds import Source as Feed

_UNIT = """\
part box is pilot-ignition-control
part valve is gas-valve-3-wire
part pilot is pilot-burner: one-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.GND to pilot.HOOD: green
wire {main} to valve.MV
plug box to valve: PV, VC to C
"""
_GOOD = _UNIT.format(main="box.MV")
_BAD = _UNIT.format(main="box.TH")

RULE = Rule(
    name="valve-fed-past-control",
    title="Every operator of the gas valve is fed by the ignition control alone",
    family="valve",
    breaks=Breaks.SAFETY,
    why=(
        "The control opens the gas only for as long as it proves a flame. An operator fed past it "
        "is open whenever there is a call, or always, and no flame failure shuts it."
    ),
    blind_spots=(
        "A relay is taken for the control's own where one of the control's outputs drives its coil."
    ),
    caution=UNLIT_GAS,
    sources=(Source("ANSI Z21.20-2005", "standard", "1.1.1"), PRACTICE),
    faults={
        "past-control": Fault(
            "{operator} is fed from {feed}, past {control}: take that lead off and feed it from "
            "{output}",
            "Gas with no ignition control: the operator opens with no flame proved and stays open "
            "when the flame goes out.",
        ),
    },
    bad=(Example(_BAD, (("past-control", "box.TH"),)),),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find operators that the supply or the call reaches past the contacts of the control."""
    for found in judged(facts, Verdict.PAST_CONTROL):
        hot = (fed for fed in found.operators if Feed.HOT in fed.sources)
        wrong = next(hot, found.operators[0])
        astray = astray_lead(facts, *_home(facts, found))
        yield RULE.finding(
            facts,
            "past-control",
            facts.end_span(*astray) if astray else facts.place(wrong.terminal),
            leads=astray[:1] if astray else facts.nets.leads_at(wrong.terminal),
            terminals=(*(fed.terminal for fed in found.terminals), wrong.wanted),
            edits=_to_output(facts, wrong, *astray) if astray else (),
            operator=facts.show(wrong.terminal),
            feed=facts.show(astray[1]) if astray else "the hot side of the supply",
            control=found.control.name,
            output=facts.show(wrong.wanted),
        )


def _home(facts: Facts, found: Arrangement) -> list[Terminal]:
    """What belongs on the conductors of the operators."""
    home = [fed.terminal for fed in found.operators]
    home += facts.as_wired.once(Feeds).of_control(found.control).values()
    for adapter in facts.of("valve-adapter"):
        home += adapter.with_role("adapter-feed", "adapter-pilot", "adapter-main")
    return home


def _to_output(facts: Facts, wrong: Fed, number: int, far: Terminal) -> list[Edit]:
    """Move the lead's far end to the output, where nothing else is landed."""
    lead = facts.diagram.leads[number]
    if wrong.terminal not in (lead.a, lead.b) or facts.is_wired(wrong.wanted):
        return []
    edit = move_end(facts.diagram, number, far, wrong.wanted)
    return [edit] if edit else []
