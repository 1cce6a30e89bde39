"""The two leads of a switch are on its two sides.

A part named alone at the end of a lead takes that lead on its first side, at the start on its
second.  Two leads that so land on one side leave the part out of the circuit.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.language.edit import move_end
from wirecheck.model.diagram import NamedAlone, Part, Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part limit is high-limit
part stat is thermostat
part fan is relay
wire xfmr.R to limit
wire limit to stat to fan.A
wire fan.B to xfmr.C
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="both-leads-on-one-side",
    title="The two leads of a switch are on its two sides",
    family="workmanship",
    breaks=Breaks.OPERATION,
    why=(
        "With both leads on one screw the switch is bypassed. More often the leads are right and "
        "the text is not: name the terminals, and it says what is there."
    ),
    blind_spots="Which of the two leads belongs on the other side; for a switch it is all one.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "safety": Fault(
            "the leads {both} both land on {full}, and {empty} is empty: {part} is out of the "
            "circuit; land one of them on {empty}",
            "The unit runs whether {part} is open or closed.",
            Breaks.SAFETY,
        ),
        "part": Fault(
            "the leads {both} both land on {full}, and {empty} is empty: {part} is out of the "
            "circuit; land one of them on {empty}",
            "{part} does nothing.",
        ),
    },
    bad=(
        Example(_GOOD.replace("xfmr.R to limit", "limit to xfmr.R"), (("safety", "limit"),)),
        Example(
            _GOOD.replace("fan.A", "fan").replace("fan.B to xfmr.C", "xfmr.C to fan"),
            (("part", "fan"),),
        ),
    ),
    good=(Example(_GOOD),),
    covers=True,
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find parts named alone whose leads all land on one side."""
    told: set[str] = set()
    for alone in facts.diagram.named_alone:
        part = facts.diagram.parts[alone.part]
        other = _other_side(part, alone.landed)
        leads = facts.nets.leads_at(alone.landed)
        number = _lead_of(facts, alone)
        if part.key in told or other is None or number is None:
            continue
        if len(leads) < 2 or facts.is_wired(other):
            continue
        told.add(part.key)
        is_safety = any(switch.safety for switch in part.structure.switches)
        moved = move_end(facts.diagram, number, alone.landed, other)
        yield RULE.finding(
            facts,
            "safety" if is_safety else "part",
            alone.span,
            leads=leads,
            terminals=(alone.landed, other),
            edits=(moved,) if moved else (),
            both=" and ".join(facts.lead(number) for number in leads),
            full=facts.show(alone.landed),
            empty=facts.show(other),
            part=part.name,
        )


def _other_side(part: Part, landed: Terminal) -> Terminal | None:
    through = part.structure.through or ()
    return next((part.terminal(name) for name in through if name != landed.name), None)


def _lead_of(facts: Facts, alone: NamedAlone) -> int | None:
    """The lead whose end was typed as the part's name alone; None if it could not be read."""
    leads = facts.nets.leads_at(alone.landed)
    return next((n for n in leads if facts.end_span(n, alone.landed) == alone.span), None)
