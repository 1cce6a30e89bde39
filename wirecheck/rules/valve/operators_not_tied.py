"""On a direct ignition system the control drives both operators of the valve together.

There is no pilot, so one output feeds both.  With one operator left off, the valve stays shut, or
an old one lets gas out where nothing lights it.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import add_lead
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.cautions import UNLIT_GAS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule
from wirecheck.rules.valve.arrangement import Verdict, judged

_BAD = """\
part box is direct-ignition-control
part valve is gas-valve-3-wire{seats}
part main is direct-burner
wire box.SPARK to main.SPARK: ignition-cable
wire box.SENSE to main.ROD
wire box.GND to main.FRAME: green
plug box to valve: V to PV, VC to C
"""

RULE = Rule(
    name="operators-not-tied",
    title="A direct ignition control feeds pilot and main operator together",
    family="valve",
    breaks=Breaks.OPERATION,
    why=(
        "A redundant valve passes main gas only with both operators. An old single-seat valve "
        "with its pilot operator alone sends gas to a pilot outlet where there is no pilot."
    ),
    blind_spots="A valve whose operators are tied inside.",
    caution=UNLIT_GAS,
    sources=(PRACTICE,),
    faults={
        "redundant": Fault(
            "{output} feeds {fed} and nothing feeds {empty}: tie both operators of {valve} "
            "together, by the adapter or a lead, so that {output} drives both",
            "No main gas: one operator alone keeps the redundant valve shut; the trial ends.",
        ),
        "single-seat": Fault(
            "{output} feeds {fed} and nothing feeds {empty}: tie both operators of {valve} "
            "together, by the adapter or a lead, so that {output} drives both",
            "Gas comes out at the pilot outlet, where nothing lights it; no main gas.",
            Breaks.SAFETY,
        ),
    },
    bad=(
        Example(_BAD.format(seats=""), (("redundant", "PV"),)),
        Example(_BAD.format(seats=": single-seat"), (("single-seat", "PV"),)),
    ),
    good=(Example(_BAD.format(seats="") + "wire valve.PV to valve.MV\n"),),
    stands_back_for=(
        "secondary-shorted-on-call",
        "sense-lead-on-control-circuit",
        "spark-lead-on-control-circuit",
        "switched-lead-earthed",
    ),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find valves of direct systems of which one operator is fed and the other is on nothing."""
    for found in judged(facts, Verdict.NOT_TIED):
        fed = next(operator for operator in found.operators if operator.right)
        empty = next(operator for operator in found.operators if not operator.right)
        yield RULE.finding(
            facts,
            "redundant" if found.redundant else "single-seat",
            facts.place(fed.terminal),
            leads=facts.nets.leads_at(fed.terminal),
            terminals=(fed.terminal, empty.terminal),
            edits=(add_lead(facts.diagram, fed.terminal, empty.terminal),),
            output=facts.show(fed.wanted),
            fed=facts.show(fed.terminal),
            empty=facts.show(empty.terminal),
            valve=found.valve.name,
        )
