"""A relay in the chain passes the call on when it is pulled in, not when it rests.

On the resting contact everything is upside down: the burner runs while nothing calls, or while a
safety holds the relay off.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.circuit.nets import Element
from wirecheck.language.edit import move_end
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.bypasses import bypasses
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.contacts import (
    ContactKey,
    in_text_order,
    is_thermostat,
    key_of_contact,
    names,
    switch,
)
from wirecheck.rules.call_chain.words import SAFETY_CAUTION, called
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
wire box.GND to pilot.HOOD: green
wire box.SENSE to pilot.ROD
wire box.SPARK to pilot.SPARK: ignition-cable
"""
_BY_LIMIT = _GOOD.replace("limit to aid.COM", "stat to aid.COM").replace(
    "R to stat to aid to", "R to limit to aid to"
)

RULE = Rule(
    name="relay-contact-inverted",
    title="A relay in the chain passes the call on by its working contact",
    family="call and safety chain",
    breaks=Breaks.SAFETY,
    why=(
        "The resting contact is closed while the coil is dead. What should stop the burner by "
        "letting the relay go then starts it, and a dead coil leaves it running."
    ),
    blind_spots="A relay that is there to give one call priority over another.",
    caution=SAFETY_CAUTION,
    sources=(PRACTICE,),
    faults={
        "calls-when-off": Fault(
            "{call} is fed through {contact}, closed while nothing calls {relay}: use its working "
            "contact",
            "The burner runs until {cause} calls, and stops then.",
        ),
        "runs-on-trip": Fault(
            "{call} is fed through {contact}, closed while {cause} keeps {relay} off: use its "
            "working contact",
            "The burner runs when {cause} opens, and only then.",
        ),
    },
    bad=(
        Example(_GOOD.replace("..NO", "..NC"), (("calls-when-off", "aid.COM..NC"),)),
        Example(_BY_LIMIT.replace("..NO", "..NC"), (("runs-on-trip", "aid.COM..NC"),)),
    ),
    good=(Example(_GOOD), Example(_BY_LIMIT)),
)


class _Inverted(NamedTuple):
    """A resting contact on the way to a burner, and what holds its coil."""

    chain: Chain
    contact: Element
    causes: list[Element]
    fault: str


def check(facts: Facts) -> Iterator[Finding]:
    """Find burners fed through the resting contact of a relay that a call or a safety pulls in."""
    wired = facts.as_wired
    said: set[int] = set()
    for chain, contact, causes, fault in (*_by_safeties(facts), *_by_calls(facts)):
        if id(chain) in said:
            continue
        said.add(id(chain))
        resting = contact.b
        yield RULE.finding(
            facts,
            fault,
            facts.place(resting),
            leads=facts.nets.leads_at(resting),
            terminals=(contact.a, resting),
            edits=_move(facts, contact),
            call=called(facts, chain),
            contact=names(wired, [contact]),
            relay=contact.part.name,
            cause=_any_of(wired, causes),
        )


def _by_safeties(facts: Facts) -> Iterator[_Inverted]:
    for bypass in facts.once(bypasses):
        if bypass.inverted:
            yield _Inverted(bypass.chain, bypass.inverted, bypass.safeties, "runs-on-trip")


def _by_calls(facts: Facts) -> Iterator[_Inverted]:
    """Burners that run with no call, on a way through a resting contact that a thermostat moves."""
    for chain in facts.once(Burners).chains:
        if chain.runs_uncalled():
            for contact in chain.path(chain.call_contacts()):
                causes = _thermostats_behind(chain, contact)
                if switch(contact).normal == "closed" and causes:
                    yield _Inverted(chain, contact, causes, "calls-when-off")


def _thermostats_behind(chain: Chain, contact: Element) -> list[Element]:
    """Thermostats that move a contact, be it over other relays and the motors of zone valves."""
    found: dict[ContactKey, Element] = {}
    reached, waiting = {key_of_contact(contact)}, [contact]
    while waiting:
        for key in chain.ahead_of_coil(waiting.pop()) - reached:
            reached.add(key)
            ahead = chain.contacts.get(key)
            if ahead is not None and is_thermostat(ahead):
                found[key] = ahead
            elif ahead is not None:
                waiting.append(ahead)
    return in_text_order(found.values())


def _any_of(facts: Facts, causes: list[Element]) -> str:
    return names(facts, causes) if len(causes) == 1 else f"one of {names(facts, causes)}"


def _move(facts: Facts, contact: Element) -> tuple[Edit, ...]:
    """Move the lead to the working contact of the same pole, where that is free."""
    pole = contact.b.name.removesuffix("NC")
    working = Terminal(contact.part.key, f"{pole}NO")
    leads = facts.nets.leads_at(contact.b)
    if working.name not in contact.part.structure.terminals:
        return ()
    if len(leads) != 1 or facts.is_wired(working):
        return ()
    edit = move_end(facts.diagram, leads[0], contact.b, working)
    return (edit,) if edit else ()
