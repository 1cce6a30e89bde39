"""Safeties stand in the hot lead; the common lead goes straight from the supply to the load.

With the common earthed, and the burner on earthed metal, current comes back through the burner
ground past anything in the common lead.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.common_lead import SOURCES, CommonLeads
from wirecheck.rules.call_chain.contacts import is_safety, names, sides
from wirecheck.rules.call_chain.words import SAFETY_CAUTION, dangers
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part limit is high-limit
part stat is thermostat
part box is pilot-ignition-control
part pilot is pilot-burner
wire xfmr.R to limit to stat to box.TH
wire xfmr.C to box.COM
wire box.GND to pilot.HOOD: green
wire box.SENSE to pilot.ROD
wire box.SPARK to pilot.SPARK: ignition-cable
wire xfmr.C to earth: green
"""
_BAD = _GOOD.replace("to limit to stat", "to stat").replace("C to box.COM", "C to limit to box.COM")

RULE = Rule(
    name="safety-in-common",
    title="No safety stands in the common lead",
    family="call and safety chain",
    breaks=Breaks.SAFETY,
    why=(
        "A safety in the common lead is bypassed by whatever else brings the current back: the "
        "burner ground and the earthed secondary do so from the start, an earth fault does later."
    ),
    blind_spots="An earth connection that is there and was not typed.",
    caution=SAFETY_CAUTION,
    sources=SOURCES,
    faults={
        "bypassed": Fault(
            "{safety}: in the common lead, between {supply} and {load}, and bypassed already, "
            "since both ends reach earth; put it into the hot lead to the call, and run the "
            "common straight",
            "With {safety} open the current comes back through the burner ground, and the burner "
            "runs on through {danger}.",
        ),
        "earth-fault": Fault(
            "{safety}: in the common lead, between {supply} and {load}, where an earth fault "
            "bypasses it; put it into the hot lead to the call, and run the common straight",
            "It works until the first earth fault; from then on the burner runs on through "
            "{danger}.",
        ),
    },
    bad=(
        Example(_BAD, (("bypassed", "limit"),)),
        Example(
            _BAD.replace("wire xfmr.C to earth: green\n", ""),
            (("earth-fault", "limit"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find safeties between a supply's common and the common side of what it feeds."""
    wired = facts.as_wired
    for found in facts.once(CommonLeads).all:
        contacts = [contact for contact in found.contacts if is_safety(contact)]
        if contacts:
            yield RULE.finding(
                facts,
                "bypassed" if found.bypassed else "earth-fault",
                facts.place(sides(wired, contacts[0])[0]),
                terminals=[
                    *(side for contact in contacts for side in sides(wired, contact)),
                    found.supply,
                ],
                safety=names(wired, contacts),
                supply=facts.show(found.supply),
                load=facts.show(found.load),
                danger=dangers(contacts),
            )
