"""An end switch joins the two terminals of a boiler's call, and touches no other supply.

With one side on the zone transformer and the other on the boiler's call it closes and calls
nothing: the boiler's own 24 V do not come back to it.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.circuit.nets import Element
from wirecheck.language.edit import move_end
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Edit, Finding
from wirecheck.rules.call_chain.contacts import contact_name, contacts
from wirecheck.rules.cautions import MOVING_LEADS
from wirecheck.rules.facts import Facts, Supply
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule
from wirecheck.rules.supply.own_supply_tied import Call, calls_with_supply

_GOOD = """\
part xfmr is transformer
part stat-1 is thermostat
part stat-2 is thermostat
part zone-1 is zone-valve
part zone-2 is zone-valve
part boiler is boiler-call
wire xfmr.R to stat-1 to zone-1.M1
wire xfmr.R to stat-2 to zone-2.M1
wire xfmr.C to zone-1.M2 to zone-2.M2
wire boiler.1 to zone-1.E1..E2 to boiler.2
wire boiler.1 to zone-2.E1..E2 to boiler.2
"""
_BAD = _GOOD.replace("boiler.1 to zone-2", "xfmr.R to zone-2")

RULE = Rule(
    name="end-switch-on-zone-supply",
    title="Both sides of an end switch are on the call that it makes",
    family="call and safety chain",
    breaks=Breaks.OPERATION,
    why=(
        "A call with 24 V of its own behind it is made by joining its two terminals. A side of "
        "the end switch on another transformer joins the two supplies and makes no call."
    ),
    blind_spots="A boiler call that the maker says must be fed from outside.",
    caution=MOVING_LEADS,
    sources=(PRACTICE,),
    faults={
        "one-side": Fault(
            "{switch} is on {call} at one side and, at {end}, on {other} of {supply}: {part} has "
            "24 V of its own for the call; land {end} on {right} instead",
            "That zone opens and never calls the boiler; the two supplies are tied together.",
        ),
    },
    bad=(Example(_BAD, (("one-side", "zone-2.E1..E2"),)),),
    good=(Example(_GOOD),),
    stands_back_for=("own-supply-tied", "line-and-24-volts-joined"),
)


class _Astray(NamedTuple):
    """An end switch with one side on a call and the other on a supply that is not the call's."""

    contact: Element
    end: Terminal
    on: Terminal
    right: Terminal
    supply: Supply
    side: Terminal


def check(facts: Facts) -> Iterator[Finding]:
    """Find end switches between a call with its own supply and another supply."""
    at_call: dict[int, tuple[Call, Terminal, Terminal]] = {}
    for call in calls_with_supply(facts):
        for on, right in ((call.feed, call.call), (call.call, call.feed)):
            at_call.setdefault(facts.as_wired.sides.conductor(on), (call, on, right))
    if not at_call:
        return
    for contact in contacts(facts.as_wired):
        if contact.part.family == "zone-valve":
            for astray in _sides(facts.as_wired, contact, at_call):
                yield _finding(facts, astray)


def _sides(
    facts: Facts, contact: Element, at_call: dict[int, tuple[Call, Terminal, Terminal]]
) -> Iterator[_Astray]:
    sides = facts.sides
    for near, end in ((contact.a, contact.b), (contact.b, contact.a)):
        found = at_call.get(sides.conductor(near))
        if found is None or sides.conductor(end) in at_call or facts.role(end) != "end-switch":
            continue
        call, on, right = found
        for supply, side in (
            *((s, s.hot) for s in sides.hot_on(end)),
            *((s, s.common) for s in sides.common_on(end)),
        ):
            if supply.part is not call.part:
                yield _Astray(contact, end, on, right, supply, side)
                break


def _finding(facts: Facts, astray: _Astray) -> Finding:
    end, right = astray.end, astray.right
    boiler = facts.part(astray.on)
    return RULE.finding(
        facts,
        "one-side",
        facts.place(end),
        leads=facts.nets.leads_at(end),
        terminals=(astray.contact.a, astray.contact.b, astray.on, right),
        edits=_moved(facts, end, right),
        switch=contact_name(facts, astray.contact),
        call=facts.show(astray.on),
        end=facts.show(end),
        other=facts.show(astray.side),
        supply=astray.supply.part.name,
        part=boiler.name if boiler else facts.show(astray.on),
        right=facts.show(right),
    )


def _moved(facts: Facts, end: Terminal, right: Terminal) -> tuple[Edit, ...]:
    """Move the far end of the lead, where there is one lead that comes from no splice."""
    leads = facts.nets.leads_at(end)
    if len(leads) != 1:
        return ()
    far = facts.other_end(leads[0], end)
    edit = move_end(facts.diagram, leads[0], far, right) if facts.part(far) else None
    return (edit,) if edit else ()
