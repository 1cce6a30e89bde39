"""An ignition control drives a valve made for it, not one that waits for a thermocouple.

A valve for a standing pilot passes no gas, not even to the pilot, until its thermocouple is hot;
a control that lights the pilot on each call waits for ever.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule
from wirecheck.rules.valve.feeds import Feeds

_UNIT = """\
part box is pilot-ignition-control
part valve is {kind}
part pilot is pilot-burner: one-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.GND to pilot.HOOD: green
"""
_GOOD = _UNIT.format(kind="gas-valve-3-wire") + "plug box to valve: PV, MV, VC to C\n"
_BAD = _UNIT.format(kind="standing-pilot-gas-valve") + "plug box to valve: MV to 1, VC to C\n"

RULE = Rule(
    name="standing-pilot-valve-kept",
    title="A gas valve on an ignition control needs no thermocouple",
    family="valve",
    breaks=Breaks.OPERATION,
    why=(
        "The magnet of a standing-pilot valve holds only while a pilot burns that somebody lit by "
        "hand. An ignition control has no such pilot: no gas passes, whatever its outputs do."
    ),
    blind_spots="A valve that was fitted with another operator since.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "needs-thermocouple": Fault(
            "{valve} passes no gas without the thermocouple of a standing pilot, and {output} "
            "drives it: fit a valve with a pilot and a main operator",
            "No pilot gas on a call: the spark goes on and nothing lights.",
        ),
    },
    bad=(Example(_BAD, (("needs-thermocouple", "1"),)),),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find standing-pilot valves of 24 V on the outputs of an ignition control."""
    for valve in facts.of("gas-valve"):
        if not valve.with_role("generator-common"):
            continue
        (operator,) = valve.with_role("operator")
        outputs = facts.as_wired.once(Feeds).reaching(operator)
        if outputs:
            yield RULE.finding(
                facts,
                "needs-thermocouple",
                facts.place(operator),
                leads=facts.nets.leads_at(operator),
                terminals=[valve.terminal(name) for name in valve.structure.terminals]
                + [outputs[0].terminal],
                valve=valve.name,
                output=facts.show(outputs[0].terminal),
            )
