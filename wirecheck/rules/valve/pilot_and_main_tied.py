"""On a pilot system the pilot and the main operator are fed apart.

The main operator may open only once the pilot is proved.  Tied together, by a jumper or by the
adapter of a direct ignition system, both open in the pilot trial.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.language.edit import move_end, remove_lead
from wirecheck.model.diagram import LeadRole, Terminal
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.rules.cautions import UNLIT_GAS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source
from wirecheck.rules.valve.ties import Tie, ties

_GOOD = """\
part box is pilot-ignition-control
part valve is gas-valve-3-wire
part pilot is pilot-burner: one-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.GND to pilot.HOOD: green
plug box to valve: PV, MV, VC to C
"""
_ADAPTER = _GOOD.replace(
    "plug box to valve: PV, MV, VC to C",
    "part adapter is valve-adapter\n"
    "plug adapter to valve: PV, MV, C\n"
    "wire box.PV to adapter.V\nwire box.VC to adapter.VC",
)
_ONE_OUTPUT = _GOOD.replace("PV, MV, VC", "{output}, VC") + "jumper valve.PV to valve.MV\n"

RULE = Rule(
    name="pilot-and-main-tied",
    title="Pilot and main operator have outputs of their own on a pilot system",
    family="valve",
    breaks=Breaks.SAFETY,
    why=(
        "With both operators on the pilot output, main gas flows through the whole trial before "
        "any flame is proved; when the pilot lights late, all of it lights at once."
    ),
    blind_spots="A tie inside the valve's own cover.",
    caution=UNLIT_GAS,
    sources=(Source("GOST 33009.1-2014", "standard", "5.7.6.1"), PRACTICE),
    faults={
        "tied": Fault(
            "{pilot} and {main} are tied together on a pilot system: take the tie off, so that "
            "{pilot} feeds the pilot operator and {main} the main operator",
            "Main gas flows in the pilot trial, before the pilot is proved.",
        ),
        "main-on-pilot-output": Fault(
            "{lead} brings {output} to the main operator, {main}, as well, and {empty} is empty: "
            "land it on {empty}",
            "Main gas flows in the pilot trial, before the pilot is proved.",
        ),
        "adapter-left": Fault(
            "{adapter} ties {pilot} to {main} and is left on a pilot system: take it out and run "
            "pilot, main and common of the valve to the control each by a lead of its own",
            "Main gas flows in the pilot trial, before the pilot is proved.",
        ),
        "both-on-main": Fault(
            "{pilot} and {main} are tied together and fed from the main output alone: take the tie "
            "off, and feed the pilot operator from {output}",
            "No pilot gas: the spark goes on and nothing lights; the trial ends.",
            Breaks.OPERATION,
        ),
    },
    bad=(
        Example(_GOOD + "jumper box.PV to box.MV\n", (("tied", "box.PV to box.MV"),)),
        Example(
            _GOOD.replace("PV, MV, VC", "PV, VC") + "wire box.PV to valve.MV\n",
            (("main-on-pilot-output", "box.PV to valve.MV"),),
        ),
        Example(_ADAPTER, (("adapter-left", "adapter"),)),
        Example(
            _ONE_OUTPUT.format(output="MV"),
            (("both-on-main", "valve.PV to valve.MV"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find pilot systems whose two outputs, or whose two operators, are one conductor."""
    for tie in ties(facts):
        move = _to_main_output(facts, tie)
        adapter, number = tie.adapter, move.lead if move else tie.lead
        if adapter is not None:
            place = adapter.name_span
        else:
            place = facts.place(tie.main) if number is None else facts.lead_span(number)
        yield RULE.finding(
            facts,
            _fault(tie, move),
            place,
            leads=() if number is None else (number,),
            terminals=tie.concerned,
            edits=move.edits if move else _without_jumper(facts, number),
            pilot=facts.show(tie.pilot),
            main=facts.show(tie.main),
            output=facts.show(tie.output),
            adapter=adapter.name if adapter else "",
            lead="" if number is None else f"the lead {facts.lead(number)}",
            empty=facts.show(move.empty) if move else "",
        )


class _Move(NamedTuple):
    """The main operator's own lead, landed on the pilot output: where it belongs."""

    lead: int
    empty: Terminal
    edits: tuple[Edit, ...]


def _fault(tie: Tie, move: _Move | None) -> str:
    if not tie.fed:
        return "both-on-main"
    if tie.adapter is not None:
        return "adapter-left"
    return "main-on-pilot-output" if move else "tied"


def _to_main_output(facts: Facts, tie: Tie) -> _Move | None:
    """The move of a lead from pilot output to main operator, if the main output is empty."""
    control = facts.part(tie.output)
    leads = facts.nets.leads_at(tie.main)
    if tie.adapter is not None or control is None or len(leads) != 1:
        return None
    empty = control.with_role("main-valve")[0]
    if facts.other_end(leads[0], tie.main) != tie.output or facts.is_wired(empty):
        return None
    edit = move_end(facts.diagram, leads[0], tie.output, empty)
    return _Move(leads[0], empty, (edit,) if edit else ())


def _without_jumper(facts: Facts, number: int | None) -> list[Edit]:
    if number is None or facts.diagram.leads[number].role is not LeadRole.JUMPER:
        return []
    return [remove_lead(facts.diagram, number)]
