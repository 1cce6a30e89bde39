"""No relay opens the circuit of its own coil.

A resting contact in what feeds the coil lets go as soon as it has pulled in, and pulls in again as
soon as it has let go: it buzzes like a doorbell until a contact or the coil is burnt.
"""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.contacts import (
    contact_name,
    contacts,
    key_of_contact,
    sides,
    switch,
)
from wirecheck.rules.facts import Facts
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part aid is relay
part shine is lamp: 24 V
wire xfmr.R to stat to aid to xfmr.C
wire xfmr.R to aid.COM..NC to shine to xfmr.C
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="relay-cuts-itself-off",
    title="No relay opens the circuit of its own coil",
    family="call and safety chain",
    breaks=Breaks.OPERATION,
    why="It pulls in and lets go many times a second, until a contact welds or the coil burns.",
    blind_spots="A relay that is made to buzz or to flash.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "resting": Fault(
            "the coil of {relay} is fed through its own resting contact {contact}: as soon as it "
            "pulls in it lets go again; feed it from ahead of {contact}",
            "{relay} chatters for as long as it is called, and what hangs on it with it.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("xfmr.R to stat", "aid.NC to stat"),
            (("resting", "aid.COM..NC"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find coils that hang on a resting contact of their own."""
    wired = facts.as_wired
    for contact in contacts(wired):
        if switch(contact).normal != "closed" or switch(contact).coil is None:
            continue
        coil = next(
            each
            for each in wired.nets.elements_of[contact.part.key]
            if each.type == "load" and each.name == switch(contact).coil
        )
        if not wired.is_wired(coil.a) or not wired.is_wired(coil.b):
            continue
        chain = Chain(wired, contact.part, coil.a, coil.b)
        own = key_of_contact(contact)
        if chain.feeds and own in chain.contacts and chain.is_stopped_by(contact):
            on_way = _beside(wired, chain, contact)
            yield RULE.finding(
                facts,
                "resting",
                facts.place(contact.a),
                leads=dict.fromkeys(
                    n for end in (*sides(wired, contact), *on_way) for n in facts.nets.leads_at(end)
                ),
                terminals=dict.fromkeys((contact.a, contact.b, coil.a, coil.b, *on_way)),
                relay=contact.part.name,
                contact=contact_name(wired, contact),
            )


def _beside(facts: Facts, chain: Chain, contact: Element) -> list[Terminal]:
    """The sides of contacts in line with one, and where the supply behind them takes its feed."""
    nets = {contact.net_a, contact.net_b}
    found = [
        end
        for other in chain.contacts.values()
        if {other.net_a, other.net_b} & nets
        for end in sides(facts, other)
    ]
    for feed in chain.feeds:
        source = facts.part(feed.source[0])
        for spec in source.structure.sources if source else ():
            for pair in spec.fed_by:
                found += [source.terminal(name) for name in pair] if source else []
    return [end for end in found if facts.net(end) in nets or end.part != contact.part.key]
