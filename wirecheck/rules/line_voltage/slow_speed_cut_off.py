"""On a call for heat nothing takes the slow speed off that the fan contact is to start.

The slow speed hangs on the resting contact of the relay for the fast one.  With that relay on the
call for heat, or always in, the fan contact closes on a dead lead and the heat stays in the
furnace until the limit opens.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.circuit.nets import Element
from wirecheck.model.finding import Breaks, Finding
from wirecheck.rules.call_chain.burners import Burners
from wirecheck.rules.call_chain.chain import Chain
from wirecheck.rules.call_chain.contacts import (
    ContactKey,
    contact_name,
    contacts,
    is_safety,
    is_thermostat,
    switch,
)
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

_GOOD = """\
part line is mains: 120 V
part xfmr is transformer
part plenum is fan-limit-control: link removed
part stat is thermostat
part fan is relay
part box is pilot-ignition-control
part air is blower: two-speed
wire line.L1 to xfmr.L1: black
wire line.L1 to fan.COM..NO to air.HI: black
wire fan.NC to plenum.FAN-1..FAN-2 to air.LO: red
wire line.N to xfmr.N to air.N: white
wire line.G to earth: green
wire xfmr.R to stat to box.TH
wire stat.G to fan to xfmr.C to box.COM
wire box.GND to earth: green
"""

RULE = Rule(
    name="slow-speed-cut-off",
    title="On a call for heat nothing takes the slow speed off that the fan contact starts",
    family="line voltage",
    breaks=Breaks.OPERATION,
    why="The heat stays in the furnace, and it cycles on its limit, which is no control.",
    blind_spots="A blower that is to run fast on a call for heat and slowly only after it.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "cut-off": Fault(
            "{relay} is pulled in {when}, and takes {load} off with {resting}, which {fan} is to "
            "start for heat: put the coil of {relay} on the call for the fan or for cooling",
            "The blower does not run slowly when the plenum is hot.",
        ),
    },
    bad=(
        Example(_GOOD.replace("wire stat.G to fan", "wire stat.W to fan"), (("cut-off", "fan"),)),
        Example(_GOOD.replace("wire stat.G to fan", "wire xfmr.R to fan"), (("cut-off", "fan"),)),
    ),
    good=(Example(_GOOD),),
)


class _Series(NamedTuple):
    """A fan contact with a relay's resting contact in line, and the load that both feed."""

    fan: Element
    resting: Element
    load: Element


def check(facts: Facts) -> Iterator[Finding]:
    """Find relays that are in while the burner runs, and take off what a fan contact starts."""
    wired = facts.as_wired
    fans = [c for c in contacts(wired) if c.part.family == "fan-limit-control" and c.name == "fan"]
    for series in _in_series(wired, fans) if fans else ():
        relay = series.resting.part
        coil = next(
            each
            for each in wired.nets.elements_of[relay.key]
            if each.type == "load" and each.name == switch(series.resting).coil
        )
        chain = Chain(wired, relay, coil.a, coil.b)
        others = _other_calls(facts.once(Burners), chain)
        if not chain.feeds or not chain.runs(others):
            continue
        empty = (
            end
            for part in wired.of("thermostat")
            for end in part.with_role("thermostat-fan")
            if not wired.is_wired(end)
        )
        always = chain.runs({*others, *_heat(chain)})
        yield RULE.finding(
            facts,
            "cut-off",
            facts.place(coil.a),
            leads=dict.fromkeys(n for end in (coil.a, coil.b) for n in facts.nets.leads_at(end)),
            terminals=(coil.a, coil.b, *empty),
            relay=relay.name,
            when="all the time" if always else "on a call for heat",
            resting=contact_name(wired, series.resting),
            load=facts.show(series.load.a),
            fan=series.fan.part.name,
        )


def _in_series(facts: Facts, fans: list[Element]) -> Iterator[_Series]:
    legs = facts.once(Legs)
    for part in facts.of("load"):
        for load in facts.nets.elements_of[part.key]:
            if load.type != "load" or not legs.is_hot(load.a):
                continue
            for leg in dict.fromkeys(leg.terminal for leg in legs.at(load.a)):
                series = facts.conduction.way(facts.net(leg), load.net_a).series
                fan = next((each for each in series if each in fans), None)
                for contact in series if fan is not None else ():
                    if fan and switch(contact).coil and switch(contact).normal == "closed":
                        yield _Series(fan, contact, load)


def _other_calls(burners: Burners, chain: Chain) -> set[ContactKey]:
    """Contacts in the coil's own circuit that close for something else than the burner's heat."""
    return {
        key
        for key, contact in chain.contacts.items()
        if chain.is_direct(contact)
        and not (is_thermostat(contact) and burners.on(contact))
        and not is_safety(contact)
        and switch(contact).moved_by not in ("control", "overcurrent", "coil")
    }


def _heat(chain: Chain) -> set[ContactKey]:
    return {
        key
        for key, contact in chain.contacts.items()
        if is_thermostat(contact) or switch(contact).moved_by == "control"
    }
