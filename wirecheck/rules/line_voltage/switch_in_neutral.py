"""Switches and fuses of the line-voltage circuit stand in the hot lead.

In the neutral they stop the device and leave it hot.  A switch that opens all leads together may
stand in both.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.nets import Element
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs
from wirecheck.rules.line_voltage.cautions import LINE_VOLTAGE
from wirecheck.rules.line_voltage.crossings import mixed_areas
from wirecheck.rules.line_voltage.line_and_neutral_reversed import reversals
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule, Source

_GOOD = """\
part line is mains: 120 V
part disc is service-switch
part pump is circulator
wire line.L1 to disc to pump.L: black
wire line.N to pump.N: white
wire line.G to earth: green
"""
_BAD = _GOOD.replace("line.L1 to disc to pump.L", "line.L1 to pump.L").replace(
    "line.N to pump.N", "line.N to disc to pump.N"
)
_FUSE = _BAD.replace("disc is service-switch", "disc is fuse: 5 A")

RULE = Rule(
    name="switch-in-neutral",
    title="Switches and fuses of the line-voltage circuit stand in the hot lead",
    family="line voltage",
    breaks=Breaks.SAFETY,
    why=(
        "With the neutral open the device stops and every terminal of it stays at line voltage; a "
        "fuse there opens on no fault to earth."
    ),
    blind_spots="A switch that opens the hot lead as well, drawn as two parts.",
    caution=LINE_VOLTAGE,
    sources=(PRACTICE, Source("NFPA 79", "standard", "8.3.1")),
    faults={
        "switch": Fault(
            "{switch} stands in the neutral: put it in the hot lead and run the neutral straight "
            "through",
            "When {switch} opens, what lies beyond it stops and stays hot.",
        ),
        "fuse": Fault(
            "{switch} stands in the neutral: put it in the hot lead and run the neutral straight "
            "through",
            "A fault to earth does not open it; open, it leaves the device hot.",
        ),
    },
    bad=(Example(_BAD, (("switch", "disc"),)), Example(_FUSE, (("fuse", "disc"),))),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find contacts on the neutral's side of a load."""
    legs = facts.once(Legs)
    if not legs.sources:
        return
    turned = {
        facts.sides.area(hot) for found in facts.once(reversals) for hot, _neutral in found.devices
    }
    turned.update(facts.once(mixed_areas))
    for elements in facts.nets.elements_of.values():
        for contact in elements:
            if contact.type != "switch" or facts.sides.area(contact.a) in turned:
                continue
            if _breaks_neutral(facts, legs, contact) and not _opens_hot_too(
                legs, contact, elements
            ):
                yield RULE.finding(
                    facts,
                    "fuse" if contact.part.family == "overcurrent" else "switch",
                    facts.place(contact.a),
                    leads=facts.nets.leads_at(contact.a),
                    terminals=(contact.a, contact.b),
                    switch=contact.part.name,
                )


def _breaks_neutral(facts: Facts, legs: Legs, contact: Element) -> bool:
    ends = (contact.a, contact.b)
    is_in_use = all(facts.is_wired(end) and facts.is_traced(end) for end in ends)
    return is_in_use and legs.is_neutral(contact.a)


def _opens_hot_too(legs: Legs, contact: Element, of_part: list[Element]) -> bool:
    """Whether the same device opens a hot lead with it; a fuse never does."""
    return contact.part.family != "overcurrent" and any(
        other.type == "switch" and legs.is_hot(other.a) for other in of_part
    )
