"""No conductor leads past the contact of a relay, a contactor or an end switch.

The relay pulls in and drops out as it should; what it is to switch is on all the time.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.nearest import both
from wirecheck.rules.call_chain.bridge import Bridge, by_bridge
from wirecheck.rules.call_chain.contacts import names, sides
from wirecheck.rules.call_chain.jumpered_contacts import JumperedContacts
from wirecheck.rules.call_chain.words import SAFETY_CAUTION, dangers
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part limit is high-limit
part stat is thermostat
part aid is relay
part box is pilot-ignition-control
part pilot is pilot-burner
wire xfmr.R to limit to aid.COM..NO to box.TH
wire xfmr.R to stat to aid to xfmr.C
wire xfmr.C to box.COM
wire xfmr.C to earth: green
wire box.GND to pilot.HOOD: green
wire box.SENSE to pilot.ROD
wire box.SPARK to pilot.SPARK: ignition-cable
"""
_BY_LIMIT = _GOOD.replace("limit to aid.COM", "stat to aid.COM").replace(
    "R to stat to aid to", "R to limit to aid to"
)

RULE = Rule(
    name="relay-contact-jumpered",
    title="No lead or jumper joins the two sides of a relay's contact",
    family="call and safety chain",
    breaks=Breaks.OPERATION,
    why=(
        "With its contact bridged a relay switches nothing, and whatever acts through its coil, "
        "thermostat or safety, acts on nothing."
    ),
    blind_spots="A jumper at the unit that was not typed.",
    caution=SAFETY_CAUTION,
    sources=(PRACTICE,),
    faults={
        "switches-nothing": Fault(
            "{way} joins both sides of {contact}: take it off",
            "What {contact} is to switch is on all the time.",
        ),
        "safety-behind": Fault(
            "{way} joins both sides of {contact}, through which {safety} acts: take it off",
            "With {safety} open {relay} drops out and nothing happens: the burner runs on "
            "through {danger}.",
            Breaks.SAFETY,
        ),
    },
    bad=(
        Example(
            _GOOD + "jumper aid.COM to aid.NO\n",
            (("switches-nothing", "aid.COM to aid.NO"),),
        ),
        Example(
            _BY_LIMIT + "jumper aid.COM to aid.NO\n",
            (("safety-behind", "aid.COM to aid.NO"),),
        ),
    ),
    good=(Example(_GOOD), Example(_BY_LIMIT)),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find contacts that close for a coil or a motor and are bridged."""
    wired = facts.as_wired
    jumpered = facts.once(JumperedContacts)
    for rows in by_bridge(facts, [found.row for found in jumpered.all]):
        bridge = Bridge(facts, rows[0])
        if bridge.as_typed:
            continue  # told where the text passes a contact
        bridged = [contact for row in rows for contact in row.contacts]
        safeties = [safety for contact in bridged for safety in jumpered.behind(contact)]
        yield RULE.finding(
            facts,
            "safety-behind" if safeties else "switches-nothing",
            bridge.span,
            leads=bridge.leads,
            terminals=dict.fromkeys(
                (*(side for contact in bridged for side in sides(wired, contact)), *bridge.ends)
            ),
            edits=bridge.edits,
            way=bridge.words,
            contact=names(wired, bridged),
            relay=both(list(dict.fromkeys(contact.part.name for contact in bridged))),
            safety=names(wired, safeties),
            danger=dangers(safeties),
        )
