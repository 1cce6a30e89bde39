"""Nothing is fed over both throws of one relay contact.

With the hot lead on a throw and the pole left to a load, current would have to go in at the one
throw and out at the other, and these two are never closed together.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import product
from typing import Final

import networkx as nx

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.kind import LoadSpec
from wirecheck.model.nearest import both
from wirecheck.rules.call_chain.contacts import contacts, switch
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

#: Ways with more relays than these are not gone through.
MOST_RELAYS: Final = 6

_GOOD = """\
part line is mains: 120 V
part xfmr is transformer
part stat is thermostat
part fan is relay
part air is blower: two-speed
wire line.L1 to xfmr.L1: black
wire line.L1 to fan.COM..NO to air.HI: black
wire fan.NC to air.LO: red
wire line.N to xfmr.N to air.N: white
wire line.G to earth: green
wire xfmr.R to stat to fan to xfmr.C
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="fed-over-both-throws",
    title="Nothing is fed over both throws of one relay contact",
    family="line voltage",
    breaks=Breaks.OPERATION,
    why="One throw is open whenever the other is closed: what hangs behind both never runs.",
    blind_spots="Contacts that make before they break.",
    caution="",
    sources=(PRACTICE,),
    faults={
        "both": Fault(
            "{load} would be fed over two throws of {relay} that are never closed together: the "
            "supply belongs on {pole}, and each throw to what it is to feed",
            "{part} never runs at {load}, whatever {relay} does.",
        ),
    },
    bad=(
        Example(
            _GOOD.replace("line.L1 to fan.COM..NO to", "line.L1 to fan.NC\nwire fan.NO to"),
            (("both", "air.HI"),),
        ),
    ),
    good=(Example(_GOOD),),
)


def check(facts: Facts) -> Iterator[Finding]:
    """Find loads of the line that no position of the relays on their ways feeds."""
    wired = facts.as_wired
    legs = wired.once(Legs)
    double = _double_throws(wired)
    told: set[int] = set()
    for part in wired.of("load") if double else ():
        for load in wired.nets.elements_of[part.key]:
            if not isinstance(load.spec, LoadSpec) or not wired.is_wired(load.a):
                continue
            hots = {wired.net(leg.terminal) for leg in legs.at(load.a) if leg.hot}
            if not hots or load.net_a in told or not legs.is_hot(load.a):
                continue
            ways = _ways(wired, hots, load.net_a)
            if _is_ever_fed(hots, load.net_a, ways):
                continue
            told.add(load.net_a)
            relays = {contact.part.key for contact in ways} & double.keys()
            yield _finding(facts, load, [double[key] for key in sorted(relays)], ways)


def _double_throws(facts: Facts) -> dict[str, Terminal]:
    """Relays with a resting contact and a working one, by their pole; the first of several."""
    found: dict[str, Terminal] = {}
    at_rest: set[Terminal] = set()
    for contact in contacts(facts):
        if switch(contact).coil and switch(contact).normal == "closed":
            at_rest |= {contact.a, contact.b}
    for contact in contacts(facts):
        if switch(contact).coil and switch(contact).normal == "open":
            pole = next((end for end in (contact.a, contact.b) if end in at_rest), None)
            if pole is not None:
                found.setdefault(contact.part.key, pole)
    return found


def _ways(facts: Facts, hots: set[int], net: int) -> list[Element]:
    found: dict[int, Element] = {}
    for hot in hots:
        found.update({id(c): c for c in facts.conduction.way(hot, net).contacts})
    return list(found.values())


def _is_ever_fed(hots: set[int], net: int, ways: list[Element]) -> bool:
    """Whether some position of the relays brings a hot leg to a net, all else being closed."""
    relays = list(dict.fromkeys(c.part.key for c in ways if switch(c).coil))
    if net in hots or not relays or len(relays) > MOST_RELAYS:
        return True
    for pulled_in in product((False, True), repeat=len(relays)):
        acting = dict(zip(relays, pulled_in, strict=True))
        joined: nx.utils.UnionFind[int] = nx.utils.UnionFind()
        for contact in ways:
            spec = switch(contact)
            if spec.coil is None or (spec.normal == "open") == acting[contact.part.key]:
                joined.union(contact.net_a, contact.net_b)
        if any(joined[hot] == joined[net] for hot in hots):
            return True
    return False


def _finding(facts: Facts, load: Element, poles: list[Terminal], ways: list[Element]) -> Finding:
    ends = [end for contact in ways for end in (contact.a, contact.b)]
    parts = [facts.diagram.parts[pole.part].name for pole in poles]
    return RULE.finding(
        facts,
        "both",
        facts.place(load.a),
        leads=dict.fromkeys(n for end in (load.a, *ends) for n in facts.nets.leads_at(end)),
        terminals=dict.fromkeys((load.a, *poles, *ends)),
        load=facts.show(load.a),
        part=load.part.name,
        relay=both(parts),
        pole=both([facts.show(pole) for pole in poles]),
    )
