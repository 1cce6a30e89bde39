"""The leads of the gas valve run between the valve and the control, and end nowhere else.

One blade aside is a terminal of another circuit: the valve misses its lead, and what the lead does
there instead is luck.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import move_end
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule
from wirecheck.rules.valve.arrangement import Verdict, judged
from wirecheck.rules.valve.off import ends_off, stray_lead, what_is_off

_PILOT = """\
part box is pilot-ignition-control
part valve is gas-valve-3-wire
wire box.GND to earth: green
wire box.PV to valve.PV
wire box.MV to valve.MV
wire box.VC to valve.C
"""
_DIRECT = """\
part box is direct-ignition-control
part valve is gas-valve-2-wire
wire box.GND to earth: green
wire box.V to valve.1
wire box.VC to valve.C
"""
_MESSAGE = "the lead of {start} lands on {far}: take it off there and land it on {right}"

RULE = Rule(
    name="valve-lead-astray",
    title="Each lead of the gas valve goes to the control's terminal for it",
    family="valve",
    breaks=Breaks.OPERATION,
    why=(
        "An operator opens only with both its ends on the control. A lead that is landed on "
        "another circuit leaves it dead and disturbs that circuit."
    ),
    blind_spots="A lead that goes on over a splice to the wrong place is told as missing.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "common-off": Fault(_MESSAGE, "No gas: no operator opens."),
        "pilot-off": Fault(_MESSAGE, "No pilot gas: the spark goes on and nothing lights."),
        "main-off": Fault(_MESSAGE, "The pilot lights and is proved; the main never opens."),
        "feed-off": Fault(_MESSAGE, "No gas: the spark goes on and nothing lights."),
    },
    bad=(
        Example(_PILOT.replace("to valve.C", "to box.COM"), (("common-off", "box.COM"),)),
        Example(_PILOT.replace("to valve.PV", "to box.TH"), (("pilot-off", "box.TH"),)),
        Example(_PILOT.replace("to valve.MV", "to box.TH"), (("main-off", "box.TH"),)),
        Example(_DIRECT.replace("to valve.1", "to box.TH"), (("feed-off", "box.TH"),)),
    ),
    good=(Example(_PILOT), Example(_DIRECT)),
    stands_back_for=(
        "hot-side-earthed",
        "line-and-24-volts-joined",
        "line-shorted",
        "safety-bypassed",
        "secondary-shorted",
        "secondary-shorted-on-call",
        "sense-lead-earthed",
        "sense-lead-on-control-circuit",
        "spark-lead-earthed",
        "spark-lead-on-control-circuit",
        "switch-in-neutral",
        "switched-lead-earthed",
        "thermostat-bypassed",
    ),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find leads that leave the valve, or the control's outputs, for another circuit."""
    for found in judged(facts, Verdict.OFF):
        for fed in ends_off(facts, found):
            stray = stray_lead(facts, found, fed)
            if stray is None:
                continue
            edit = move_end(facts.diagram, stray.lead, stray.far, stray.right)
            yield RULE.finding(
                facts,
                what_is_off(found, [fed]),
                facts.end_span(stray.lead, stray.far),
                leads=(stray.lead,),
                terminals=(stray.start, stray.far, stray.right),
                edits=(edit,) if edit else (),
                start=facts.show(stray.start),
                far=facts.show(stray.far),
                right=facts.show(stray.right),
            )
