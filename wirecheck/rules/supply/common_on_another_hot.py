"""The common of one supply is not on the hot side of another.

A lead of one circuit on a screw of another ties two transformers together in line: there are 48 V
from end to end, and the first earth between them is a short.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.nearest import both
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts
from wirecheck.rules.line_voltage.crossings import mixed_areas
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule
from wirecheck.rules.supply.own_supply_tied import ties

_GOOD = """\
part xfmr is transformer
part other is transformer
part stat is thermostat
part fan is relay
part aid is relay
wire xfmr.R to stat to fan to xfmr.C
wire other.R to aid to other.C
wire xfmr.C to earth: green
wire other.C to earth: green
"""

_BURNER = """\
part xfmr is transformer
part other is transformer
part stat is thermostat
part aid is relay
part box is pilot-ignition-control
part pilot is pilot-burner: one-rod
wire xfmr.R to stat to box.TH
wire xfmr.C to box.COM
wire box.GND to pilot.HOOD: green
wire box.SPARK to pilot.SPARK: ignition-cable
wire other.R to aid to other.C
wire other.C to earth: green
"""

RULE = Rule(
    name="common-on-another-hot",
    title="The common of one supply is not on the hot side of another",
    family="supply",
    breaks=Breaks.SAFETY,
    why=(
        "The two stand in line, with 48 V from end to end; where both are earthed, by a lead or "
        "by the metal of the burner, one of them is shorted."
    ),
    blind_spots="Two transformers put in line on purpose.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "in-line": Fault(
            "the way over {way} brings the common {common} of {supply} to {hot}, the hot side of "
            "{other}: take it apart, so that each feeds its own circuit",
            "There are 48 V where 24 are meant, and a short where both are earthed.",
        ),
        "floating": Fault(
            "the way over {way} brings the common {common} of {supply} to {hot}, the hot side of "
            "{other}: take it apart, so that each feeds its own circuit",
            "It works as long as {supply} is earthed nowhere; with an earth on it one of the two "
            "is shorted.",
            Breaks.WORKMANSHIP,
        ),
    },
    bad=(
        Example(
            _GOOD.replace("wire other.C to earth: green\n", "wire other.C to stat.W\n"),
            (("floating", "other.C to stat.W"),),
        ),
        Example(_BURNER + "wire other.R to box.COM\n", (("in-line", "other.R to box.COM"),)),
    ),
    good=(Example(_GOOD), Example(_BURNER)),
    stands_back_for=(
        "hot-and-common-exchanged", "hot-side-earthed", "own-supply-tied", "secondary-shorted",
        "line-and-24-volts-joined", "transformers-in-parallel", "end-switch-on-zone-supply",
        "secondary-shorted-on-call",
    ),
)  # fmt: skip


def check(facts: Facts) -> Iterator[Finding]:
    """Find commons that leads and contacts bring to the hot side of another supply."""
    wired = facts.as_wired
    sides = wired.sides
    if wired.once(mixed_areas):
        return
    if wired.once(ties):
        return
    for supply in wired.supplies:
        if supply.part.family != "transformer":
            continue
        others = [o for o in sides.hot_beyond(supply.common) if o.part is not supply.part]
        other = next((each for each in others if each.part.family == "transformer"), None)
        trace = sides.trace(supply.common, other.hot) if other else None
        if other is None or trace is None or not trace.leads or not trace.can_close:
            continue
        both_earthed = wired.is_grounded(supply.common) and wired.is_grounded(other.common)
        yield RULE.finding(
            facts,
            "in-line" if both_earthed else "floating",
            facts.lead_span(sides.cause(trace.leads)),
            leads=trace.leads,
            terminals=(supply.common, other.hot, other.common),
            common=facts.show(supply.common),
            supply=supply.part.name,
            hot=facts.show(other.hot),
            other=other.part.name,
            way=both([facts.lead(number) for number in trace.leads]),
        )
