"""The spark lead is short.

A long lead is a capacitor to the cabinet: it takes the spark before the electrode sees it.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.quantity import Quantity
from wirecheck.rules.cautions import IGNITION_VOLTAGE
from wirecheck.rules.facts import Facts
from wirecheck.rules.ignition_leads.spark_run import SparkRun, spark_runs
from wirecheck.rules.rule import Example, Fault, Rule, Source

#: About 3 ft; a metre is not called too long (common practice, no source).
LONGEST_M: Final = 1.0
_FOOT_M: Final = 0.3048

_GOOD = """\
part box is pilot-ignition-control
part pilot is pilot-burner: one-rod
wire box.SPARK to pilot.SPARK: ignition-cable, 3 ft
wire box.GND to pilot.HOOD: green
"""
_BAD = _GOOD.replace("3 ft", "6 ft")

RULE = Rule(
    name="ignition-lead-too-long",
    title="The spark lead is no longer than about 3 ft",
    family="ignition leads",
    breaks=Breaks.WORKMANSHIP,
    why=(
        "The spark coil also has to charge the lead. What the lead and its way along the metal "
        "take is missing at the electrode."
    ),
    blind_spots="Leads without a typed length, and the maker's own figure for this control.",
    caution=IGNITION_VOLTAGE,
    sources=(Source("spark leads up to about 3 ft", "practice"),),
    faults={
        "too-long": Fault(
            "the spark lead from {spark} to {electrode} is {length} long; keep it to about 3 ft: "
            "mount the control nearer, or take a shorter way",
            "The spark is weak; it lights late or not at all.",
        ),
    },
    bad=(Example(_BAD, (("too-long", "box.SPARK to pilot.SPARK"),)),),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find spark leads whose typed lengths add up to too much."""
    for run in facts.once(spark_runs):
        length_m = _length_m(facts, run)
        if length_m > LONGEST_M:
            yield RULE.finding(
                facts,
                "too-long",
                facts.lead_span(run.leads[0]),
                leads=run.leads,
                terminals=(run.hookup.spark, run.hookup.electrode),
                spark=facts.show(run.hookup.spark),
                electrode=facts.show(run.hookup.electrode),
                length=f"{length_m / _FOOT_M:.3g} ft",
            )


def _length_m(facts: Facts, run: SparkRun) -> float:
    """Length of the whole run in metres; leads of one statement share its length equally."""
    total_m = 0.0
    for number in run.leads:
        lead = facts.diagram.leads[number]
        length = lead.given.get("length")
        if length is not None and isinstance(length.value, Quantity):
            sharing = facts.nets.run_sizes[lead.run] if lead.shared_length else 1
            total_m += length.value.low_base / sharing
    return total_m
