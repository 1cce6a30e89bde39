"""A millivolt valve works on its thermopile alone.

Its coil is made for half a volt.  On 24 V it burns out, or welds open for good; a conversion to an
ignition control takes a valve made for it.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.cautions import UNLIT_GAS
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
_BAD = _UNIT.format(kind="millivolt-gas-valve") + "plug box to valve: MV to CALL, VC to C\n"

RULE = Rule(
    name="millivolt-valve-on-control-circuit",
    title="No 24 V reaches a millivolt gas valve",
    family="valve",
    breaks=Breaks.SAFETY,
    why=(
        "24 V is some fifty times what the coil is made for. It burns out or sticks, and a valve "
        "that sticks open lets gas through with no flame."
    ),
    blind_spots="A valve whose rating was typed wrong.",
    caution=UNLIT_GAS,
    sources=(PRACTICE,),
    faults={
        "on-24-volts": Fault(
            "{terminal} is on the 24 V circuit, and {valve} is a millivolt valve: never reuse one, "
            "fit a valve made for 24 V",
            "Its coil burns out or sticks; gas may pass with no flame.",
        ),
    },
    bad=(Example(_BAD, (("on-24-volts", "CALL"),)),),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find millivolt operators that a supply, a call or an output of a control reaches."""
    for valve in facts.of("gas-valve"):
        for end in valve.with_role("operator", "generator-hot", "pilot-operator", "main-operator"):
            spec = facts.diagram.spec(end)
            if spec is None or spec.circuit != "millivolt":
                continue
            feeds = facts.as_wired.once(Feeds)
            if feeds.is_live(end) or feeds.reaching(end):
                yield RULE.finding(
                    facts,
                    "on-24-volts",
                    facts.place(end),
                    leads=facts.nets.leads_at(end),
                    terminals=[valve.terminal(name) for name in valve.structure.terminals],
                    terminal=facts.show(end),
                    valve=valve.name,
                )
                break
