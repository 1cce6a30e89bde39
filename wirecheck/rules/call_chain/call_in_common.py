"""What makes the call stands in the hot lead, not in the common lead.

A thermostat in the common lead can be bypassed by the burner ground: then the burner does not
stop when the room is warm.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.common_lead import SOURCES, CommonLeads
from wirecheck.rules.call_chain.contacts import is_safety, names, sides, switch
from wirecheck.rules.call_chain.words import UNCALLED_CAUTION
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part box is pilot-ignition-control
part pilot is pilot-burner
wire xfmr.R to stat to box.TH
wire xfmr.C to box.COM
wire box.GND to pilot.HOOD: green
wire box.SENSE to pilot.ROD
wire box.SPARK to pilot.SPARK: ignition-cable
wire xfmr.C to earth: green
"""
_BAD = _GOOD.replace("R to stat to", "R to").replace("C to box.COM", "C to stat to box.COM")

RULE = Rule(
    name="call-in-common",
    title="Thermostats and hand switches stand in the hot lead",
    family="call and safety chain",
    breaks=Breaks.OPERATION,
    why=(
        "All contacts belong between the hot side and the load. In the common lead the burner "
        "ground, or an earth fault, makes the call that the thermostat does not."
    ),
    blind_spots="An earth connection that is there and was not typed.",
    caution=UNCALLED_CAUTION,
    sources=SOURCES,
    faults={
        "bypassed": Fault(
            "{contact}: in the common lead, between {supply} and {load}, and bypassed already, "
            "since both ends reach earth; put it into the hot lead to the call, and run the "
            "common straight",
            "The burner runs with {contact} open as well as closed; only a limit stops it.",
        ),
        "earth-fault": Fault(
            "{contact}: in the common lead, between {supply} and {load}, where an earth fault "
            "bypasses it; put it into the hot lead to the call, and run the common straight",
            "It works until the first earth fault; from then on the burner runs with {contact} "
            "open.",
        ),
    },
    bad=(
        Example(_BAD, (("bypassed", "stat"),)),
        Example(
            _BAD.replace("wire xfmr.C to earth: green\n", ""),
            (("earth-fault", "stat"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find thermostats and hand switches in the common lead of a burner."""
    wired = facts.as_wired
    burners = {chain.common for chain in facts.once(Burners).chains}
    for found in facts.once(CommonLeads).all:
        if found.load not in burners or any(map(is_safety, found.contacts)):
            continue
        contacts = [c for c in found.contacts if switch(c).moved_by != "overcurrent"]
        if contacts:
            yield RULE.finding(
                facts,
                "bypassed" if found.bypassed else "earth-fault",
                facts.place(sides(wired, contacts[0])[0]),
                terminals=[
                    *(side for contact in contacts for side in sides(wired, contact)),
                    found.supply,
                ],
                contact=names(wired, contacts),
                supply=facts.show(found.supply),
                load=facts.show(found.load),
            )
