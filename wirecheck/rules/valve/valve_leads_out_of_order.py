"""Pilot, main and common of the control land on pilot, main and common of the valve.

Three leads go on three terminals in six ways, and one is right.  What a wrong one does follows
from the two coils, and it is worked out for the valve drawn.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.cautions import UNLIT_GAS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule
from wirecheck.rules.valve.arrangement import Verdict, judged
from wirecheck.rules.valve.landed import put_right, what_is_where, what_to_do
from wirecheck.rules.valve.outcome import outcome

_UNIT = """\
part box is pilot-ignition-control
part valve is gas-valve-3-wire{seats}
part pilot is pilot-burner: one-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.GND to pilot.HOOD: green
plug box to valve: {pins}
"""
_DIRECT = """\
part box is direct-ignition-control
part valve is gas-valve-3-wire: single-seat
part main is direct-burner
wire box.SPARK to main.SPARK: ignition-cable
wire box.SENSE to main.ROD
wire box.GND to main.FRAME: green
plug box to valve: V to PV, VC to MV
"""
_MESSAGE = "the valve leads are out of order: {landed}; {moves}"


def _unit(pins: str, seats: str = "") -> str:
    return _UNIT.format(pins=pins, seats=seats)


RULE = Rule(
    name="valve-leads-out-of-order",
    title="Each lead from the control to the gas valve lands on the terminal it is for",
    family="valve",
    breaks=Breaks.OPERATION,
    why=(
        "In the wrong order the coils see the wrong volts at the wrong time: mostly no gas, and "
        "with an old single-seat valve main gas before a pilot is proved."
    ),
    blind_spots="Leads exchanged inside a plug that is right by its labels.",
    caution=UNLIT_GAS,
    sources=(PRACTICE,),
    faults={
        "no-pilot-gas": Fault(_MESSAGE, "{volts} No pilot gas, nothing lights; the trial ends."),
        "no-main-gas": Fault(_MESSAGE, "{volts} The main gas never opens as it should."),
        "main-gas-unproved": Fault(
            _MESSAGE, "{volts} Main gas flows before a pilot is proved.", Breaks.SAFETY
        ),
        "main-gas-without-pilot": Fault(
            _MESSAGE,
            "{volts} The main gas comes on as the pilot goes out, and may not light.",
            Breaks.SAFETY,
        ),
        "gas-at-pilot-outlet": Fault(
            _MESSAGE,
            "{volts} Gas comes out at the pilot outlet, where nothing lights it.",
            Breaks.SAFETY,
        ),
    },
    bad=(
        Example(_unit("PV to MV, MV to PV, VC to C"), (("no-pilot-gas", "PV"),)),
        Example(_unit("PV to C, MV, VC to PV"), (("no-main-gas", "PV"),)),
        Example(
            _unit("PV to MV, MV to PV, VC to C", ": single-seat"), (("main-gas-unproved", "PV"),)
        ),
        Example(
            _unit("PV, MV to C, VC to MV", ": single-seat"), (("main-gas-without-pilot", "MV"),)
        ),
        Example(_DIRECT, (("gas-at-pilot-outlet", "MV"),)),
    ),
    good=(Example(_unit("PV, MV, VC to C")), Example(_unit("PV, MV, VC to C", ": single-seat"))),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find valves whose leads are all there and land on the wrong terminals."""
    for found in judged(facts, Verdict.OUT_OF_ORDER):
        wrong = [fed for fed in found.terminals if not fed.right]
        fault, volts = outcome(facts, found)
        yield RULE.finding(
            facts,
            fault,
            facts.place(wrong[0].terminal),
            leads=[n for fed in wrong for n in facts.nets.leads_at(fed.terminal)],
            terminals=[end for fed in wrong for end in (fed.terminal, fed.wanted)],
            edits=put_right(facts, found),
            landed=what_is_where(facts, found),
            moves=what_to_do(facts, found),
            volts=volts,
        )
