"""The control's burner ground has a lead of its own to the pilot burner's metal.

The spark jumps a rusty bracket, the flame signal of a few microamps does not: without the lead
the pilot lights, the spark goes on, and the main valve never opens.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import add_lead
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

RULE = Rule(
    name="burner-ground-missing",
    title="The burner ground of the control reaches the burner's metal by a lead",
    family="burner ground",
    breaks=Breaks.OPERATION,
    why=(
        "The flame signal comes back from the burner's metal to the control over this lead. "
        "Screws and brackets carry it while they are clean; rust and heat end that."
    ),
    blind_spots="A strap that is there but not typed, and a lead that is there but loose.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "no-lead": Fault(
            "no lead runs from {ground} to {metal}: run a green lead from the control to the "
            "burner itself, not to the cabinet",
            "The pilot lights, the spark goes on, the main valve never opens; the trial ends. "
            "It may work for a while where burner and cabinet are clean.",
        ),
    },
    bad=(
        Example(
            "part box is pilot-ignition-control\n"
            "part pilot is pilot-burner: two-rod\n"
            "wire box.SPARK to pilot.SPARK: ignition-cable\n"
            "wire box.SENSE to pilot.ROD\n",
            (("no-lead", "box"),),
        ),
    ),
    good=(
        Example(
            "part box is pilot-ignition-control\n"
            "part pilot is pilot-burner: two-rod\n"
            "wire box.SPARK to pilot.SPARK: ignition-cable\n"
            "wire box.SENSE to pilot.ROD\n"
            "wire box.GND to pilot.HOOD: green\n",
        ),
    ),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find controls whose ground terminal does not reach the metal of their burner."""
    for control in facts.of("ignition-control"):
        burner = facts.companion(control, "burner")
        ground = facts.terminal(control, "burner-ground")
        metal = facts.terminal(burner, "burner-metal") if burner else None
        if ground and metal and not _reaches(facts, control, ground, metal):
            yield RULE.finding(
                facts,
                "no-lead",
                control.name_span if not facts.is_wired(ground) else facts.place(ground),
                leads=facts.nets.leads_at(ground),
                terminals=(ground, metal),
                edits=(add_lead(facts.diagram, ground, metal, "green"),),
                ground=facts.show(ground),
                metal=facts.show(metal),
            )


def _reaches(facts: Facts, _control: Part, ground: Terminal, metal: Terminal) -> bool:
    """Joined by conductors, or too little was traced to say that they are not."""
    return facts.joined(ground, metal) or not (facts.is_traced(ground) and facts.is_traced(metal))
