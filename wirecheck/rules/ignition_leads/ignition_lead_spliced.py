"""The spark lead is one piece from the control to the electrode.

Every joint on the ignition voltage is a place where it leaks, and where hands get.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.cautions import IGNITION_VOLTAGE
from wirecheck.rules.facts import Facts
from wirecheck.rules.ignition_leads.spark_run import SparkRun, spark_runs
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part box is pilot-ignition-control
part pilot is pilot-burner: one-rod
splice nut
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.GND to nut to pilot.HOOD: green
"""
_BAD = """\
part box is pilot-ignition-control
part pilot is pilot-burner: one-rod
splice nut
wire box.SPARK to nut to pilot.SPARK: ignition-cable
wire box.GND to pilot.HOOD: green
"""

RULE = Rule(
    name="ignition-lead-spliced",
    title="The spark lead runs in one piece, without splice or strip",
    family="ignition leads",
    breaks=Breaks.WORKMANSHIP,
    why=(
        "Wire-nuts and terminal strips are made for some hundred volts. The ignition voltage "
        "creeps over them to metal and to the terminals beside."
    ),
    blind_spots="A cable lengthened inside its sleeve.",
    caution=IGNITION_VOLTAGE,
    sources=(PRACTICE,),
    faults={
        "joint": Fault(
            "the spark lead from {spark} to {electrode} goes through {joint}: replace it by one "
            "piece of ignition cable",
            "The spark leaks away at the joint, first in damp weather.",
        ),
    },
    bad=(Example(_BAD, (("joint", "nut"),)),),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find splices and strip terminals on the ignition voltage."""
    for run in facts.once(spark_runs):
        joint = _joint(facts, run)
        if joint is not None:
            yield RULE.finding(
                facts,
                "joint",
                facts.place(joint),
                leads=run.leads,
                terminals=(run.hookup.spark, run.hookup.electrode, joint),
                spark=facts.show(run.hookup.spark),
                electrode=facts.show(run.hookup.electrode),
                joint=facts.show(joint),
            )


def _joint(facts: Facts, run: SparkRun) -> Terminal | None:
    """The first point between the two ends that more than one lead of the run lands on."""
    for number in run.leads:
        lead = facts.diagram.leads[number]
        for end in (lead.a, lead.b):
            between = end not in (run.hookup.spark, run.hookup.electrode)
            if between and len(facts.nets.leads_at(end)) > 1:
                return end
    return None
