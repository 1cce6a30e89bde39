"""Nothing leads past a thermostat.

With its two leads joined, or another way beside it, the burner does not stop when the room is
warm: it cycles on the high limit, which is no working control.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.bridge import Bridge, by_bridge
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.bypasses import bypasses
from wirecheck.rules.call_chain.calls import Calls
from wirecheck.rules.call_chain.common_lead import CommonLeads
from wirecheck.rules.call_chain.contacts import (
    contacts,
    in_text_order,
    is_safety,
    is_thermostat,
    key_of_contact,
    names,
    sides,
    switch,
)
from wirecheck.rules.call_chain.loops import Bridged, Loops
from wirecheck.rules.call_chain.words import UNCALLED_CAUTION, called
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

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
"""
_FUSED = _GOOD.replace("part box", "part spare is fuse\npart box")

RULE = Rule(
    name="thermostat-bypassed",
    title="No lead and no other way leads past a thermostat",
    family="call and safety chain",
    breaks=Breaks.OPERATION,
    why=(
        "The thermostat is the working control. Bypassed, it leaves the high limit to switch the "
        "burner, which is made to act once in a while and not every few minutes."
    ),
    blind_spots="A jumper set on purpose for a short test.",
    caution=UNCALLED_CAUTION,
    sources=(PRACTICE,),
    faults={
        "joined": Fault(
            "{way} joins the leads of {thermostat}: take it off, so that the call goes through "
            "{thermostat}",
            "{thermostat} calls all the time: what it runs stops only when a limit opens.",
        ),
        "one-place": Fault(
            "{way} bring both sides of {thermostat} to one conductor: land one of them further "
            "along the call, so that the call goes through",
            "{thermostat} calls all the time: what it runs stops only when a limit opens.",
        ),
        "other-path": Fault(
            "current gets to {call} past {thermostat} by way of {path}: open that way",
            "{thermostat} calls all the time: what it runs stops only when a limit opens.",
        ),
    },
    bad=(
        Example(_GOOD + "jumper stat.R to stat.W\n", (("joined", "stat.R to stat.W"),)),
        Example(
            _GOOD.replace("limit to stat to box.TH", "limit to box.TH")
            + "wire limit.2 to stat to limit.2\n",
            (("one-place", "stat"),),
        ),
        Example(
            _FUSED + "wire limit.2 to spare to box.TH\n",
            (("other-path", "stat"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find thermostats that a conductor or other contacts lead past."""
    yield from _joined(facts)
    yield from _beside(facts)


def _joined(facts: Facts) -> Iterator[Finding]:
    wired = facts.as_wired
    for rows in by_bridge(facts, _rows(facts)):
        bridge = Bridge(facts, rows[0])
        bridged = in_text_order({key_of_contact(c): c for r in rows for c in r.contacts}.values())
        if bridge.as_typed:
            continue  # told where the text passes a contact
        yield RULE.finding(
            facts,
            "one-place" if bridge.by_its_own_leads else "joined",
            bridge.span,
            leads=bridge.leads,
            terminals=[side for contact in bridged for side in sides(wired, contact)],
            edits=bridge.edits,
            way=bridge.words,
            thermostat=names(wired, filter(is_thermostat, bridged)),
        )


def _rows(facts: Facts) -> Iterator[Bridged]:
    """Rows with a thermostat in them that no other finding tells of."""
    wired, calls, burners = facts.as_wired, facts.once(Calls), facts.once(Burners)
    common, loops = facts.once(CommonLeads), facts.once(Loops)
    for contact in filter(is_thermostat, contacts(wired)):
        if not burners.on(contact) and not common.holds(contact):
            row = loops.bridged(contact, burners.nets)
            told = key_of_contact(contact) in calls.led_past
            if row and not told and not any(map(is_safety, row.contacts)):
                yield row


def _beside(facts: Facts) -> Iterator[Finding]:
    """Thermostats in the call of a burner that runs without any of them."""
    wired, calls = facts.as_wired, facts.once(Calls)
    told = {id(found.chain) for found in calls.on_hot}
    told |= {id(found.chain) for found in calls.straight}
    told |= {id(bypass.chain) for bypass in facts.once(bypasses)}
    for chain in facts.once(Burners).chains:
        past = [contact for contact in chain.contacts.values() if is_thermostat(contact)]
        if not past or id(chain) in told or not chain.runs_uncalled():
            continue
        way = chain.path(chain.call_contacts())
        path = [contact for contact in way if not chain.is_stopped_by(contact)]
        if not path or any(switch(c).moved_by == "hand" or chain.coil_of(c) for c in path):
            continue  # a switch to run it by hand; a relay that has a finding of its own
        yield RULE.finding(
            facts,
            "other-path",
            facts.place(past[0].a),
            terminals=[side for contact in past for side in sides(wired, contact)],
            call=called(facts, chain),
            thermostat=names(wired, past),
            path=names(wired, path),
        )
