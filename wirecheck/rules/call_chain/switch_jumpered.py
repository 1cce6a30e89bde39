"""No conductor leads past a fuse, a hand switch or an operating control.

It is in its place, it clicks or sits in its holder, and the current goes beside it.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.nets import Element
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.bridge import Bridge, by_bridge
from wirecheck.rules.call_chain.contacts import (
    contacts,
    is_drawn,
    is_safety,
    is_thermostat,
    names,
    sides,
    switch,
)
from wirecheck.rules.call_chain.loops import Bridged, Loops
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part line is mains: 120 V
part disc is service-switch
part fuse is fuse: 5 A
part pump is circulator
wire line.L1 to disc to fuse to pump.L: black
wire line.N to pump.N: white
wire line.G to earth: green
"""
_BOILER = """\
part xfmr is transformer
part limit is high-limit
part aquastat is operating-control
part boiler is boiler-control
wire xfmr.R to limit to aquastat to boiler.W
wire xfmr.C to boiler.C
"""

RULE = Rule(
    name="switch-jumpered",
    title="No lead or jumper joins the two sides of a fuse, a switch or a control",
    family="call and safety chain",
    breaks=Breaks.OPERATION,
    why="What is bridged neither switches off nor protects, and everybody believes that it does.",
    blind_spots="A jumper at the unit that was not typed.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "fuse": Fault(
            "{way} joins both sides of {contact}: take it off, so that the current goes through",
            "A short beyond {contact} is not cut off: leads and transformer burn.",
            Breaks.SAFETY,
        ),
        "switch": Fault(
            "{way} joins both sides of {contact}: take it off, so that the current goes through",
            "With {contact} off what lies beyond runs on and is live.",
            Breaks.SAFETY,
        ),
        "control": Fault(
            "{way} joins both sides of {contact}: take it off, so that the call goes through",
            "{contact} calls all the time: what it runs stops only when a limit opens.",
        ),
        "contact": Fault(
            "{way} joins both sides of {contact}: take it off, so that the current goes through",
            "What {contact} is to switch is on all the time.",
        ),
    },
    bad=(
        Example(_GOOD + "jumper fuse.1 to fuse.2\n", (("fuse", "fuse.1 to fuse.2"),)),
        Example(_GOOD + "jumper disc.1 to disc.2\n", (("switch", "disc.1 to disc.2"),)),
        Example(
            _BOILER + "jumper aquastat.1 to aquastat.2\n",
            (("control", "aquastat.1 to aquastat.2"),),
        ),
        Example(
            _GOOD.replace("fuse is fuse: 5 A", "fan is fan-limit-control: link removed").replace(
                "to fuse to", "to fan.FAN-1..FAN-2 to"
            )
            + "jumper fan.FAN-1 to fan.FAN-2\n",
            (("contact", "fan.FAN-1 to fan.FAN-2"),),
        ),
    ),
    good=(Example(_GOOD), Example(_BOILER)),
)

#: What is bridged, by what moves it or by the family of its part.
_FAULTS = {"overcurrent": "fuse", "hand": "switch", "operating-control": "control"}


def check(facts: Facts) -> Iterator[Finding]:
    """Find contacts that neither a safety, a thermostat nor a coil moves, and that are bridged."""
    wired = facts.as_wired
    for rows in by_bridge(facts, _rows(facts)):
        bridge = Bridge(facts, rows[0])
        if bridge.as_typed:
            continue  # told where the text passes a contact
        bridged = [contact for row in rows for contact in row.contacts]
        yield RULE.finding(
            facts,
            _fault(bridged[0]),
            bridge.span,
            leads=bridge.leads,
            terminals=[side for contact in bridged for side in sides(wired, contact)],
            edits=bridge.edits,
            way=bridge.words,
            contact=names(wired, bridged),
        )


def _rows(facts: Facts) -> Iterator[Bridged]:
    wired, loops = facts.as_wired, facts.once(Loops)
    for contact in contacts(wired):
        if contact.net_a == contact.net_b and _is_meant(contact) and is_drawn(wired, contact):
            row = loops.bridged(contact, ())
            if row:
                yield row


def _is_meant(contact: Element) -> bool:
    """Whether no other rule speaks of it, and it is not a throw that a device may leave unused."""
    if is_safety(contact) or is_thermostat(contact) or contact.part.family == "thermostat":
        return False
    return switch(contact).moved_by not in ("coil", "motor", "control")


def _fault(contact: Element) -> str:
    by_family = _FAULTS.get(contact.part.family)
    return by_family or _FAULTS.get(switch(contact).moved_by, "contact")
