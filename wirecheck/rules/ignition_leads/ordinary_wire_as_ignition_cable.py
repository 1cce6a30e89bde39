"""The spark lead is ignition cable.

Insulation made for 24 V or 600 V holds the ignition voltage for a while, then leaks it into the
cabinet or into the lead beside it.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import set_lead_attribute
from wirecheck.model.diagram import Lead
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.cautions import IGNITION_VOLTAGE
from wirecheck.rules.facts import Facts
from wirecheck.rules.ignition_leads.spark_run import spark_runs
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part box is pilot-ignition-control
part pilot is pilot-burner: one-rod
wire box.SPARK to pilot.SPARK: orange, ignition-cable
wire box.GND to pilot.HOOD: green
"""
_BAD = _GOOD.replace("orange, ignition-cable", "orange, 18 AWG")

#: What only ordinary wire is sold by, or runs in: ignition cable is then said as well.
_ORDINARY_BY = frozenset({"size", "in"})
#: What is repeated of such a lead.
_DESCRIBED_BY = ("size", "colour", "rating", "in")

RULE = Rule(
    name="ordinary-wire-as-ignition-cable",
    title="The lead from the spark terminal to the electrode is ignition cable",
    family="ignition leads",
    breaks=Breaks.WORKMANSHIP,
    why=(
        "Ordinary insulation leaks the ignition voltage: the spark weakens, first in damp weather, "
        "and finds its way into hands and control leads."
    ),
    blind_spots=(
        "A spark lead of which no gauge is said is taken for ignition cable, which comes in "
        "colours too."
    ),
    caution=IGNITION_VOLTAGE,
    sources=(PRACTICE,),
    faults={
        "ordinary-wire": Fault(
            "the spark lead {lead} is given as {described}, not as ignition cable: use ignition "
            "cable, or say so if it is",
            "The spark leaks away through the insulation: it lights badly, and later not at all.",
        ),
    },
    bad=(Example(_BAD, (("ordinary-wire", "box.SPARK to pilot.SPARK"),)),),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find spark leads described as ordinary wire is, and not as ignition cable."""
    for run in facts.once(spark_runs):
        for number in run.leads:
            lead = facts.diagram.leads[number]
            if "ignition-cable" in lead.given or _ORDINARY_BY.isdisjoint(lead.given):
                continue
            yield RULE.finding(
                facts,
                "ordinary-wire",
                facts.lead_span(number),
                leads=(number,),
                terminals=(lead.a, lead.b),
                edits=(
                    set_lead_attribute(facts.diagram, number, "ignition-cable", "ignition-cable"),
                ),
                lead=facts.lead(number),
                described=_described(lead),
            )


def _described(lead: Lead) -> str:
    """What is said of the lead's make, as typed."""
    said = [lead.given[name].span.text for name in _DESCRIBED_BY if name in lead.given]
    return ", ".join(dict.fromkeys(said))
