"""On a call for heat a relay lets through what the fan contact is to start.

The slow speed hangs on the resting contact of the relay for the fast one.  With that relay on the
call for heat, or always in, the fan contact closes on a dead lead; with the two throws exchanged it
closes on one that only the call for the fan makes live.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Terminal
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
    name="fan-contact-cut-off",
    title="On a call for heat a relay lets through what the fan contact is to start",
    family="line voltage",
    breaks=Breaks.OPERATION,
    why="The heat stays in the furnace, and it cycles on its limit, which is no control.",
    blind_spots="A blower that is to run otherwise on a call for heat than after it.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "cut-off": Fault(
            "{relay} is pulled in {when}, and takes {load} off with {contact}, which {fan} is to "
            "start for heat: put the coil of {relay} on the call for the fan or for cooling",
            "The blower does not run at that speed when the plenum is hot.",
        ),
        "waits": Fault(
            "{fan} is to start {load} for heat, and {contact} stands in line, which is open on a "
            "call for heat: put {fan} on the contact of {relay} that is closed at rest",
            "The blower does not run when the plenum is hot; the heat stays in the furnace.",
        ),
        "slower": Fault(
            "{relay} takes {load} off with {contact}, which {fan} starts for heat, and gives "
            "{slow} instead: exchange the leads of {load} and {slow}, so that the relay gives the "
            "fast speed",
            "Whoever calls for the fan while there is heat slows the blower down, and the furnace "
            "cycles on its limit.",
        ),
    },
    bad=(
        Example(_GOOD.replace("wire stat.G to fan", "wire stat.W to fan"), (("cut-off", "fan"),)),
        Example(
            _GOOD.replace("..NO to air.HI", "..NC to air.HI").replace("fan.NC to", "fan.NO to"),
            (("waits", "plenum.FAN-1..FAN-2"),),
        ),
        Example(
            _GOOD.replace("to air.HI", "to air.XX").replace("air.LO", "air.HI").replace("XX", "LO"),
            (("slower", "fan.NC"),),
        ),
    ),
    good=(Example(_GOOD),),
)


class _Series(NamedTuple):
    """A fan contact with a relay's contact in line, and the load that both feed."""

    fan: Element
    contact: Element
    load: Element


def check(facts: Facts) -> Iterator[Finding]:
    """Find relays whose contact in line with a fan contact is open on a call for heat."""
    wired = facts.as_wired
    fans = [c for c in contacts(wired) if c.part.family == "fan-limit-control" and c.name == "fan"]
    for series in _in_series(wired, fans) if fans else ():
        coil = _coil(wired, series.contact)
        chain = Chain(wired, series.contact.part, coil.a, coil.b)
        if not chain.feeds:
            continue
        others = _other_calls(facts.once(Burners), chain)
        opens = switch(series.contact).normal == "closed"
        slow = _slower(wired, series) if opens else None
        if opens and chain.runs(others):
            always = chain.runs({*others, *_heat(chain)})
            yield _finding(
                facts, "cut-off", series, when="all the time" if always else "on a call for heat"
            )
        elif not opens and not chain.runs(others):
            yield _finding(facts, "waits", series)
        elif slow is not None:
            yield _finding(facts, "slower", series, slow=facts.show(slow))


def _finding(
    facts: Facts, fault: str, series: _Series, *, when: str = "", slow: str = ""
) -> Finding:
    wired = facts.as_wired
    coil, contact = _coil(wired, series.contact), series.contact
    empty = [
        end
        for part in wired.of("thermostat")
        for end in part.with_role("thermostat-fan")
        if not wired.is_wired(end)
    ]
    at = (coil.a, coil.b) if fault == "cut-off" else _throws(wired, series)
    place = {"cut-off": coil.a, "waits": series.fan.a, "slower": contact.b}[fault]
    return RULE.finding(
        facts,
        fault,
        facts.place(place),
        leads=dict.fromkeys(n for end in at for n in facts.nets.leads_at(end)),
        terminals=(*at, *(empty if fault == "cut-off" else ())),
        relay=contact.part.name,
        when=when,
        contact=contact_name(wired, contact),
        load=facts.show(series.load.a),
        fan=series.fan.part.name,
        slow=slow,
    )


def _coil(facts: Facts, contact: Element) -> Element:
    """The coil that moves a relay's contact."""
    elements = facts.nets.elements_of[contact.part.key]
    return next(e for e in elements if e.type == "load" and e.name == switch(contact).coil)


def _throws(facts: Facts, series: _Series) -> tuple[Terminal, ...]:
    """The sides of the relay's contacts at one pole, of the fan contact, and the loads' ends."""
    contact = series.contact
    beside = [
        each
        for each in facts.nets.elements_of[contact.part.key]
        if each.type == "switch" and {each.a, each.b} & {contact.a, contact.b}
    ]
    ends = [end for each in (*beside, series.fan) for end in (each.a, each.b)]
    return tuple(dict.fromkeys((*ends, *series.load.part.with_role("load-hot"))))


def _slower(facts: Facts, series: _Series) -> Terminal | None:
    """The slow speed, if the relay gives it in the place of the fast one; these are named so."""
    speeds = series.load.part.with_role("load-hot")
    if len(speeds) != 2 or series.load.a != speeds[0] or _names(speeds) != ("HI", "LO"):
        return None
    working = (
        each
        for each in facts.nets.elements_of[series.contact.part.key]
        if each.type == "switch"
        and switch(each).normal == "open"
        and {each.a, each.b} & {series.contact.a, series.contact.b}
    )
    slow = facts.net(speeds[1])
    return speeds[1] if any(slow in (each.net_a, each.net_b) for each in working) else None


def _names(ends: tuple[Terminal, ...]) -> tuple[str, ...]:
    return tuple(end.name for end in ends)


def _in_series(facts: Facts, fans: list[Element]) -> Iterator[_Series]:
    legs = facts.once(Legs)
    for part in facts.of("load"):
        for load in facts.nets.elements_of[part.key]:
            if load.type != "load" or not legs.is_hot(load.a):
                continue
            for leg in dict.fromkeys(leg.terminal for leg in legs.at(load.a)):
                series = facts.conduction.way(facts.net(leg), load.net_a).series
                fan = next((each for each in series if each in fans), None)
                relays = Counter(contact.part.key for contact in series if switch(contact).coil)
                for contact in series if fan is not None else ():
                    if fan is not None and relays[contact.part.key] == 1:
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
