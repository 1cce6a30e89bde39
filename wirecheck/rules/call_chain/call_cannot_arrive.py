"""On a call for heat everything closes that has to close before the burner starts.

A relay whose coil hangs behind its own contact, an air switch ahead of the fan that it proves, a
starter that only the cooling call pulls in: each lead has two ends, and the call never arrives.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from typing import Final

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.kind import LoadSpec
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.contacts import (
    ContactKey,
    contact_name,
    in_text_order,
    key_of_contact,
    sides,
    switch,
)
from wirecheck.rules.call_chain.words import called
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

#: So many contacts that wait for each other are named.
_MOST_NAMED: Final = 8
#: A conductor with more terminals than these is a main one.
_MOST_LOOKED_AT: Final = 40

#: What a contact proves that is open until it moves, by what moves the contact.
_MOVED: Final = {
    "air": ("air", "combustion-air"),
    "pressure": ("combustion-air",),
    "flow": ("water",),
}

_GOOD = """\
part xfmr is transformer
part stat is thermostat
part aid is relay
part box is pilot-ignition-control
wire xfmr.R to stat.R
wire stat.W to aid.COM..NO to box.TH
wire stat.W to aid.A
wire aid.B to xfmr.C
wire xfmr.C to box.COM
wire box.GND to earth: green
"""

RULE = Rule(
    name="call-cannot-arrive",
    title="On a call for heat all that has to close ahead of the burner closes",
    family="call and safety chain",
    breaks=Breaks.OPERATION,
    why="What waits for itself, or for another call, never lets the call through: no heat.",
    blind_spots="What is started by hand, or by something that is not drawn.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "waits": Fault(
            "the call to {called} never arrives: {contact} would have to close first, and {mover} "
            "is not fed on a call for heat before it has; feed {mover} ahead of {contact}, from "
            "the call itself",
            "Nothing lights on a call: {contact} stays open.",
        ),
        "cold": Fault(
            "the call to {called} never arrives: {contact} stands in what feeds it, and closes "
            "only once the burner is hot; move {contact} to the fan that it is to start",
            "Nothing lights on a call: {contact} stays open.",
        ),
    },
    bad=(
        Example(_GOOD.replace("stat.W to aid.A", "aid.NO to aid.A"), (("waits", "aid.COM..NO"),)),
        Example(
            "part plenum is fan-limit-control: link removed\n"
            + _GOOD.replace("stat.W to aid.COM", "stat.W to plenum.FAN-1..FAN-2 to aid.COM"),
            (("cold", "plenum.FAN-1..FAN-2"),),
        ),
    ),
    good=(Example(_GOOD),),
    stands_back_for=("safety-not-in-chain",),
    general=True,
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find burners that no call for heat can start, though something feeds them."""
    wired = facts.as_wired
    for chain in facts.once(Burners).chains:
        if not chain.feeds or not chain.contacts:
            continue
        cold = {key: contact for key, contact in chain.contacts.items() if _is_cold(contact)}
        waiting = _waiting(wired, chain, cold)
        never = waiting.keys() | cold.keys()
        if not never or chain.runs(never | _other_calls(chain)):
            continue
        contact = _named(chain, cold) if cold else _waits_for_itself(wired, chain, waiting)
        mover = waiting.get(key_of_contact(contact))
        at = sides(wired, contact) if mover is None else (mover.a, mover.b)
        starters = _starters(wired, mover) if mover else []
        others = [*starters, *(end for key in [*never][:_MOST_NAMED] for end in _outer(wired, key))]
        yield RULE.finding(
            facts,
            "waits" if mover else "cold",
            facts.place(sides(wired, contact)[0]),
            leads=dict.fromkeys(
                (*_leads_at(facts, at), *_around(wired, contact), *_leads_at(facts, others))
            ),
            terminals=dict.fromkeys((chain.call, *sides(wired, contact), *at, *others)),
            called=called(facts, chain),
            contact=contact_name(wired, contact),
            mover=mover.part.name if mover else "",
        )


def _leads_at(facts: Facts, ends: Iterable[Terminal]) -> Iterator[int]:
    return (number for end in ends for number in facts.nets.leads_at(end))


def _around(facts: Facts, contact: Element) -> Iterator[int]:
    """The leads of the conductors on both sides of a contact, if these are no main ones."""
    for net in (contact.net_a, contact.net_b):
        members = facts.nets.members[net]
        if len(members) < _MOST_LOOKED_AT:
            yield from _leads_at(facts, members)


def _starters(facts: Facts, mover: Element) -> list[Terminal]:
    """The ends of the coils on which a motor hangs."""
    own = Chain(facts, mover.part, mover.a, mover.b)
    return [end for coil, _feeds in own.coils() for end in (coil.a, coil.b)]


def _outer(facts: Facts, key: ContactKey) -> list[Terminal]:
    """The sides of a contact on which leads can land."""
    specs = ((end, facts.diagram.spec(end)) for end in key)
    return [end for end, spec in specs if spec is not None and not spec.inner]


def _is_cold(contact: Element) -> bool:
    """Whether it is a fan contact, which the heat of the burner itself closes."""
    return contact.part.family == "fan-limit-control" and switch(contact).normal == "open"


def _other_calls(chain: Chain) -> set[ContactKey]:
    """Contacts of thermostats that call for something else than heat."""
    return {
        key
        for key, contact in chain.contacts.items()
        if contact.part.family == "thermostat" and contact.name != "heat"
    }


def _waiting(facts: Facts, chain: Chain, cold: Collection[ContactKey]) -> dict[ContactKey, Element]:
    """Contacts on a chain that nothing closes on a call, each with the load that should."""
    waiting = {
        key: mover
        for key, contact in chain.contacts.items()
        if (mover := _mover(facts, chain, contact)) is not None
    }
    while alive := [
        key
        for key, mover in waiting.items()
        if _runs(facts, chain, mover, waiting.keys() | set(cold))
    ]:
        for key in alive:
            del waiting[key]
    return waiting


def _mover(facts: Facts, chain: Chain, contact: Element) -> Element | None:
    """The coil that closes a contact, or the motor that moves what it proves, if it is wired."""
    spec = switch(contact)
    if spec.normal != "open":
        return None
    coil = chain.coil_of(contact)
    if coil is not None:
        return coil
    media = _MOVED.get(spec.moved_by, ())
    motors = facts.once(_Motors).moving
    return next((motor for medium in media for motor in motors.get(medium, ())), None)


class _Motors:
    """The wired motors of a diagram, by what they move."""

    def __init__(self, facts: Facts) -> None:
        self.moving: dict[str, list[Element]] = {}
        for elements in facts.nets.elements_of.values():
            for load in elements:
                spec = load.spec
                if isinstance(spec, LoadSpec) and spec.moves and _is_wired(facts, load):
                    self.moving.setdefault(spec.moves, []).append(load)


def _is_wired(facts: Facts, load: Element) -> bool:
    ends = (load.a, load.b)
    return all(facts.is_wired(end) and facts.is_traced(end) for end in ends)


def _runs(facts: Facts, chain: Chain, mover: Element, waiting: set[ContactKey]) -> bool:
    """Whether a load runs on a call for heat with some contacts still open; one not fed may."""
    own = Chain(facts, mover.part, mover.a, mover.b)
    return not own.feeds or own.runs(waiting | _other_calls(own) | _other_calls(chain))


def _waits_for_itself(facts: Facts, chain: Chain, waiting: dict[ContactKey, Element]) -> Element:
    """The contact that stands in the circuit of what should close it, if there is one.

    One that feeds a whole transformer is the first to be asked.
    """
    at_line = facts.once(Legs).at
    line_first = sorted(waiting.items(), key=lambda item: not at_line(item[0][0]))
    for key, mover in line_first:
        own = Chain(facts, mover.part, mover.a, mover.b)
        if key in own.contacts and own.is_stopped_by(own.contacts[key]):
            return own.contacts[key]
    return _named(chain, waiting)


def _named(chain: Chain, waiting: Iterable[ContactKey]) -> Element:
    """The contact to name: the first in the text that alone would hold the call back."""
    contacts = in_text_order(chain.contacts[key] for key in waiting)
    return next((c for c in contacts if chain.is_stopped_by(c)), contacts[0])
