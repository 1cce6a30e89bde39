"""A contact that a call closes stands in the circuit of something.

The zone valve opens, its end switch closes, and nobody is called: one of its two leads landed on a
conductor that is no part of the call.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import EARTH, Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.circuits import Circuits
from wirecheck.rules.call_chain.contacts import contact_name, contacts, is_drawn, sides, switch
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule
from wirecheck.rules.supply.own_supply_tied import calls_with_supply

#: So many terminals of a conductor are looked at; a larger one is no stray lead.
_MOST_LOOKED_AT = 40

_GOOD = """\
part xfmr is transformer
part stat-1 is thermostat
part stat-2 is thermostat
part zone-1 is zone-valve
part zone-2 is zone-valve
part boiler is boiler-control
wire xfmr.R to stat-1 to zone-1.M1
wire xfmr.R to stat-2 to zone-2.M1
wire xfmr.C to zone-1.M2 to zone-2.M2
wire xfmr.C to earth: green
wire boiler.R to zone-1.E1..E2 to boiler.W
wire boiler.R to zone-2.E1..E2 to boiler.W
"""

RULE = Rule(
    name="contact-in-no-circuit",
    title="A contact that a call closes stands in the circuit of something",
    family="call and safety chain",
    breaks=Breaks.OPERATION,
    why="What it is to start is never started by it.",
    blind_spots="A contact for something that is not drawn, with both leads on what is.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "calls-nothing": Fault(
            "{contact} is in no circuit: one side of it is at {here} and the other at {there}, and "
            "no supply feeds anything from the one over the other; {mend}",
            "{contact} closes, and nothing happens.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("boiler.R to zone-2.E1", "stat-1.W to zone-2.E1"),
            (("calls-nothing", "zone-2.E1..E2"),),
        ),
    ),
    good=(Example(_GOOD),),
    stands_back_for=(
        "end-switch-on-zone-supply", "own-supply-tied", "line-and-24-volts-joined",
        "device-not-fed", "call-not-fed", "relay-contact-jumpered", "safety-not-in-chain",
    ),
)  # fmt: skip


def check(facts: Facts) -> Iterator[Finding]:
    """Find contacts of relays and zone valves, wired at both sides, that close no circuit."""
    wired = facts.as_wired
    circuits = wired.once(Circuits)
    for contact in contacts(wired):
        if contact.part.family != "zone-valve" and switch(contact).coil is None:
            continue
        if contact.net_a == contact.net_b or not is_drawn(wired, contact):
            continue
        if not circuits.is_fed(contact) or circuits.holds(contact):
            continue
        ends = sides(wired, contact)
        if len(ends) == 2 and not any(_may_go_on(wired, contact, end) for end in ends):
            yield _finding(facts, contact, ends)


def _may_go_on(facts: Facts, contact: Element, end: Terminal) -> bool:
    """Whether what is beyond a side of a contact is not all drawn."""
    net = facts.net(end)
    if not facts.is_traced(end):
        return True
    members = [each for each in facts.nets.members[net][:_MOST_LOOKED_AT] if each != end]
    families = {part.family for each in members if (part := facts.part(each)) is not None}
    if families <= {"strip"} and EARTH not in members:
        return True
    graph = facts.conduction.contacts
    beyond = (c for _a, _b, c in graph.edges(net, data="element") if c.part is not contact.part)
    return any(each.part.family != "thermostat" and _ends_in_air(facts, each) for each in beyond)


def _ends_in_air(facts: Facts, contact: Element) -> bool:
    """Whether no lead lands on the conductor at some side of a contact."""
    return any(
        not any(map(facts.is_wired, facts.nets.members[facts.net(end)][:_MOST_LOOKED_AT]))
        for end in sides(facts, contact)
    )


def _finding(facts: Facts, contact: Element, ends: tuple[Terminal, ...]) -> Finding:
    here, there = (_landing(facts, end) for end in ends)
    right = _right(facts, ends)
    row = _in_line(facts, contact)
    mend = "trace its two leads and land them in the call that it is to make"
    if right is not None:
        mend = f"land {facts.show(right[0])} on {facts.show(right[1])}"
    return RULE.finding(
        facts,
        "calls-nothing",
        facts.place(ends[0]),
        leads=dict.fromkeys(n for end in (*ends, *row) for n in facts.nets.leads_at(end)),
        terminals=dict.fromkeys((*ends, here, there, *(right or ()), *row)),
        contact=contact_name(facts, contact),
        here=facts.show(here),
        there=facts.show(there),
        mend=mend,
    )


def _in_line(facts: Facts, contact: Element) -> list[Terminal]:
    """The sides of contacts in line with one that close no circuit either."""
    graph, circuits = facts.conduction.contacts, facts.once(Circuits)
    return [
        end
        for net in (contact.net_a, contact.net_b)
        for _a, _b, other in graph.edges(net, data="element")
        if other is not contact and not circuits.holds(other)
        for end in sides(facts, other)
    ]


def _landing(facts: Facts, end: Terminal) -> Terminal:
    """Where the lead of a terminal runs to."""
    leads = facts.nets.leads_at(end)
    return facts.other_end(leads[0], end) if leads else end


def _right(facts: Facts, ends: tuple[Terminal, ...]) -> tuple[Terminal, Terminal] | None:
    """The side that is off the call which the other is on, and where it belongs."""
    same = facts.as_wired.sides.same
    for call in calls_with_supply(facts):
        for on, other in ((call.feed, call.call), (call.call, call.feed)):
            at = [end for end in ends if same(end, on)]
            if len(at) == 1:
                return next(end for end in ends if end != at[0]), other
    return None
