"""Every safety that is there stands ahead of the burner it is to stop.

Mounted, screwed down and forgotten at the other end, or wired into the circuit of something
else: its opening does nothing to the gas.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.nets import Element
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.calls import Calls
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.common_lead import CommonLeads
from wirecheck.rules.call_chain.contacts import key_of_contact, names, sides
from wirecheck.rules.call_chain.jumpered_contacts import JumperedContacts
from wirecheck.rules.call_chain.on_purpose import may_be_right
from wirecheck.rules.call_chain.safeties import Safeties, Standing
from wirecheck.rules.call_chain.words import SAFETY_CAUTION, called, dangers
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
_PAST = _GOOD.replace("R to limit to stat", "R to stat")
_FAN = _PAST + "part fan is relay\nwire xfmr.R to limit to fan to xfmr.C\n"
_HOT = _PAST + "wire xfmr.R to limit to box.24V\n"
_EXCHANGED = (
    _GOOD.replace("limit is high-limit", "fl is fan-limit-control: link removed").replace(
        "to limit to", "to fl.FAN-1..FAN-2 to"
    )
    + "part fan is relay\nwire xfmr.R to fl.LIMIT-1..LIMIT-2 to fan to xfmr.C\n"
)
_ONE_SIDE = _PAST + "wire xfmr.R to limit.1\n"

RULE = Rule(
    name="safety-not-in-chain",
    title="Every safety stands ahead of a burner",
    family="call and safety chain",
    breaks=Breaks.SAFETY,
    why=(
        "A safety that is in no path of the burner's call, of its relays or of its supply opens "
        "without taking anything away from the gas valve."
    ),
    blind_spots=(
        "A safety that acts on a burner which the file leaves out. A switch for air, flow, "
        "pressure or a door that switches something else than the motor it proves is taken as "
        "meant for that."
    ),
    caution=SAFETY_CAUTION,
    sources=(PRACTICE,),
    faults={
        "one-side": Fault(
            "{empty} has no lead, so {safety} stands in no path of the burner: let the call to "
            "{call} go in at one side of it and out at the other",
            "With {safety} open the burner runs on through {danger}.",
        ),
        "elsewhere": Fault(
            "{safety} stands in no path of the burner: its opening takes nothing away from "
            "{call}{past}; move it into that call lead",
            "With {safety} open the burner runs on through {danger}.",
        ),
        "fan-and-limit-exchanged": Fault(
            "the fan contact of {part} is in the call to {call}, and its limit contact is not: "
            "exchange the two pairs of leads",
            "The burner never lights, as the fan contact is open while it is cold; once it is "
            "closed, no limit stops the burner.",
        ),
    },
    bad=(
        Example(_EXCHANGED, (("fan-and-limit-exchanged", "fl.LIMIT-1..LIMIT-2"),)),
        Example(_ONE_SIDE, (("one-side", "limit.1"),)),
        Example(_FAN, (("elsewhere", "limit"),)),
        Example(_HOT, (("elsewhere", "limit"),)),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find safeties that are ahead of no burner."""
    wired, calls = facts.as_wired, facts.once(Calls)
    common = facts.once(CommonLeads)
    jumpered = facts.once(JumperedContacts)
    explained = calls.led_past | calls.ahead_of_hot
    for safety in facts.once(Safeties).standing(Standing.NOWHERE, Standing.EMPTY):
        contact = safety.contact
        call = _nearest_call(facts, contact)
        landed = [side for side in sides(wired, contact) if wired.is_wired(side)]
        empty = [side for side in sides(wired, contact) if not wired.is_wired(side)]
        fault = "one-side" if empty else "elsewhere"
        key = key_of_contact(contact)
        if call is None or not landed or key in explained or jumpered.explains(key):
            continue
        if common.holds(contact):
            continue
        if may_be_right(wired, contact, one_side=bool(empty)):
            continue
        if _is_fan_in_its_place(facts, contact):
            fault = "fan-and-limit-exchanged"
        past = _leads_past(wired, contact, call)
        yield RULE.finding(
            facts,
            fault,
            facts.place(landed[0]),
            leads=dict.fromkeys((*(n for s in landed for n in facts.nets.leads_at(s)), *past)),
            terminals=sides(wired, contact),
            past=f", which the lead {facts.lead(past[0])} feeds past it" if len(past) == 1 else "",
            safety=names(wired, [contact]),
            empty=facts.show(empty[0]) if empty else "",
            danger=dangers([contact]),
            call=called(facts, call),
            part=contact.part.name,
        )


def _leads_past(facts: Facts, contact: Element, call: Chain) -> tuple[int, ...]:
    """Leads on the way of a call where that which holds the safety turns off from it."""
    trace = facts.sides.trace(call.feeds[0].source[0], call.call)
    if trace is None:
        return ()
    graph = facts.conduction.contacts
    on_the_way = {net for each in trace.contacts for net in (each.net_a, each.net_b)}
    on_the_way |= {facts.net(trace.start), facts.net(trace.end)}
    turns: set[int] = set()
    reached, waiting = {contact.net_a, contact.net_b}, [contact.net_a, contact.net_b]
    while waiting:
        here = waiting.pop()
        if here in on_the_way:
            turns.add(here)
            continue
        for there in graph.adj[here] if here in graph else ():
            if there not in reached:
                reached.add(there)
                waiting.append(there)
    leads = facts.diagram.leads
    return tuple(number for number in trace.leads if facts.net(leads[number].a) in turns)


def _is_fan_in_its_place(facts: Facts, contact: Element) -> bool:
    """Whether the fan contact of the same device stands in the call of a burner."""
    if contact.part.family != "fan-limit-control":
        return False
    beside = facts.as_wired.nets.elements_of[contact.part.key]
    fans = (each for each in beside if each.type == "switch" and each.name == "fan")
    return any(facts.once(Burners).on(each) for each in fans)


def _nearest_call(facts: Facts, contact: Element) -> Chain | None:
    """The call of a burner, if there is one that is fed: one of the same supply first."""
    region = facts.as_wired.conduction.region
    fed = [chain for chain in facts.once(Burners).chains if chain.feeds]
    beside = (chain for chain in fed if region(chain.feeds[0].hot[0]) == region(contact.net_a))
    return next(beside, fed[0] if fed else None)
