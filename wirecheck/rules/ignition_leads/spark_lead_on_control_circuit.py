"""Nothing but the electrode and its lead is on the ignition voltage.

A spark lead that lands on a valve, a limit or a 24 V terminal takes the ignition voltage to
where people work with bare hands, and through electronics on its way.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.astray import astray_lead
from wirecheck.rules.cautions import IGNITION_VOLTAGE
from wirecheck.rules.facts import Facts
from wirecheck.rules.ignition_leads.landing import Mistake, landed_wrong, wrong_end
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part box is pilot-ignition-control
part pilot is pilot-burner: two-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD: green
"""
_BAD = _GOOD + "wire box.MV to pilot.SPARK\n"

RULE = Rule(
    name="spark-lead-on-control-circuit",
    title="The ignition voltage stays apart from every other circuit",
    family="ignition leads",
    breaks=Breaks.SAFETY,
    why=(
        "Some 20 kV on a lead or terminal made for 24 V jumps to whatever is near: hands, other "
        "leads, the control's electronics. The spark at the electrode is lost."
    ),
    blind_spots="Leads that only lie too close together.",
    caution=IGNITION_VOLTAGE,
    sources=(PRACTICE,),
    faults={
        "joined": Fault(
            "the ignition voltage of {spark} is joined to {wrong}: take that lead off; {spark} "
            "goes to {electrode} and nowhere else",
            "Spark at the wrong place or none; the ignition voltage gets into the control "
            "circuit and destroys what is on it.",
        ),
    },
    bad=(Example(_BAD, (("joined", "box.MV"),)),),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find terminals of other circuits on the net of a spark terminal."""
    for landing in landed_wrong(facts, Mistake.SPARK_ON_CONTROL_CIRCUIT):
        hookup = landing.hookup
        astray = astray_lead(facts, hookup.spark, hookup.electrode)
        wrong = wrong_end(facts, landing, astray)
        yield RULE.finding(
            facts,
            "joined",
            facts.end_span(*astray) if astray else facts.place(wrong),
            leads=astray[:1] if astray else (),
            terminals=(hookup.spark, wrong, hookup.electrode),
            spark=facts.show(hookup.spark),
            electrode=facts.show(hookup.electrode),
            wrong=facts.show(wrong),
        )
