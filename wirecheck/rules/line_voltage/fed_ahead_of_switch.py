"""With its switch off, nothing of a unit is live.

A lead tapped off in front of the service switch: who works on the unit has switched it off, and
takes hold of a hot screw.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final, NamedTuple

import networkx as nx

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Terminal
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.nearest import both
from wirecheck.rules.call_chain.contacts import contacts, is_drawn, switch
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs
from wirecheck.rules.line_voltage.cautions import LINE_VOLTAGE
from wirecheck.rules.rule import PRACTICE, Example, Fault, Rule

#: What many units have in common and belongs to none.
_SHARED: Final = frozenset({"mains", "strip", "overcurrent", "hand-switch"})

_GOOD = """\
part line is mains: 120 V
part disc is service-switch
part xfmr is transformer
part stat is thermostat
part aid is relay
part pump is circulator
wire line.L1 to disc to xfmr.L1: black
wire disc.2 to aid.COM..NO to pump.L: black
wire line.N to xfmr.N to pump.N: white
wire line.G to earth: green
wire xfmr.R to stat to aid to xfmr.C
wire xfmr.C to earth: green
"""

RULE = Rule(
    name="fed-ahead-of-switch",
    title="With its switch off, nothing of a unit is live",
    family="line voltage",
    breaks=Breaks.SAFETY,
    why="Whoever opens the unit has switched it off and takes every screw in it for dead.",
    blind_spots=(
        "A part with a switch of its own beyond what is drawn; one behind a fuse of its own, which "
        "is not reported."
    ),
    caution=LINE_VOLTAGE,
    sources=(PRACTICE,),
    faults={
        "tapped": Fault(
            "{ends} {get} feed from ahead of {switch}, which switches off the rest of the unit: "
            "feed {them} from {beyond}",
            "With {switch} off there is line voltage at {ends}.",
        ),
    },
    bad=(
        Example(_GOOD.replace("wire disc.2 to aid", "wire disc.1 to aid"), (("tapped", "pump.L"),)),
    ),
    good=(Example(_GOOD),),
)


class _Device(NamedTuple):
    """Something that the line feeds: its part, and the terminal where the hot lead comes in.

    ``is_supply``: it feeds others, as the primary of a transformer does.
    """

    part: str
    end: Terminal
    is_supply: bool


class _Cut(NamedTuple):
    """A switch of the line: the nets that are dead with it off, and those beside it that are not.

    ``beyond`` is its own net on the dead side.
    """

    contact: Element
    beyond: int
    dead: set[int]
    live: set[int]


def check(facts: Facts) -> Iterator[Finding]:
    """Find what is fed past every hand switch though one switches off others of its unit."""
    wired = facts.as_wired
    legs = wired.once(Legs)
    switches = [each for each in contacts(wired) if _is_by_hand(wired, legs, each)]
    by_unit = _by_unit(wired, legs) if switches else {}
    units_at: dict[int, list[str]] = {}
    for unit, devices in by_unit.items():
        for device in devices:
            units_at.setdefault(wired.net(device.end), []).append(unit)
    told: set[int] = set()
    for cut in _cuts(wired, legs, switches):
        for unit in dict.fromkeys(unit for net in cut.dead for unit in units_at.get(net, ())):
            behind = [device for device in by_unit[unit] if wired.net(device.end) in cut.dead]
            ahead = [device for device in by_unit[unit] if wired.net(device.end) in cut.live]
            new = [device for device in ahead if wired.net(device.end) not in told]
            if new and _is_for_the_unit(behind):
                told.update(wired.net(device.end) for device in new)
                yield _finding(facts, new, cut)


def _cuts(facts: Facts, legs: Legs, switches: list[Element]) -> Iterator[_Cut]:
    """The switches that cut something off that is not live past them."""
    unswitched = _reached(facts, {facts.net(source.a) for source in legs.sources}, switches)
    fuses = [each for each in contacts(facts) if each.part.family == "overcurrent"]
    live: dict[int, set[int]] = {}
    for contact in switches:
        near, beyond = contact.net_a, contact.net_b
        if near not in unswitched:
            near, beyond = beyond, near
        dead = _reached(facts, {beyond}, [contact])
        if beyond not in unswitched and dead.isdisjoint(unswitched):
            if near not in live:
                live[near] = _reached(facts, {near}, [*switches, *fuses])
            yield _Cut(contact, beyond, dead, live[near])


def _finding(facts: Facts, devices: list[_Device], cut: _Cut) -> Finding:
    contact = cut.contact
    ends = list(dict.fromkeys(device.end for device in devices))
    own = [number for end in ends for number in facts.nets.leads_at(end)]
    near = contact.b if contact.net_a == cut.beyond else contact.a
    traces = (facts.sides.trace(near, end) for end in ends)
    ways = [number for trace in traces if trace for number in trace.leads]
    several = len(ends) > 1
    return RULE.finding(
        facts,
        "tapped",
        facts.place(ends[0]),
        leads=dict.fromkeys((*own, *ways)),
        terminals=(*ends, contact.a, contact.b),
        ends=both([facts.show(end) for end in ends]),
        get="get their" if several else "gets its",
        them="them" if several else "it",
        switch=contact.part.name,
        beyond=facts.show(contact.a if contact.net_a == cut.beyond else contact.b),
    )


def _is_by_hand(facts: Facts, legs: Legs, contact: Element) -> bool:
    """Whether a hand, or the door, opens it in a hot leg of the line."""
    by_hand = switch(contact).moved_by in ("hand", "door") and contact.net_a != contact.net_b
    return by_hand and is_drawn(facts, contact) and legs.is_hot(contact.a)


def _is_for_the_unit(behind: list[_Device]) -> bool:
    """Whether a switch is there for the whole unit: a motor may have a switch of its own."""
    return len(behind) > 1 or any(device.is_supply for device in behind)


def _reached(facts: Facts, starts: set[int], barriers: list[Element]) -> set[int]:
    """Nets that contacts join to some, those of some contacts' parts left open."""
    graph = facts.conduction.contacts
    parts = {contact.part.key for contact in barriers}
    reached, waiting = set(starts), list(starts)
    while waiting:
        here = waiting.pop()
        for _here, there, contact in graph.edges(here, data="element") if here in graph else ():
            if there not in reached and contact.part.key not in parts:
                reached.add(there)
                waiting.append(there)
    return reached


def _by_unit(facts: Facts, legs: Legs) -> dict[str, list[_Device]]:
    """What the line feeds between a hot leg and the neutral, by a part of its unit.

    Parts are of one unit if a lead joins them that is not of the line at both its ends.
    """
    joined: nx.utils.UnionFind[str] = nx.utils.UnionFind()
    for a, b, *_rest in facts.diagram.leads:
        if {_circuit(facts, a), _circuit(facts, b)} != {"line"} and _is_own(facts, a, b):
            joined.union(a.part, b.part)
    units: dict[str, list[_Device]] = {}
    for part, a, b, is_supply in _fed(facts):
        for hot, other in ((a, b), (b, a)):
            if legs.is_hot(hot) and legs.is_neutral(other):
                units.setdefault(joined[part], []).append(_Device(part, hot, is_supply))
    return units


def _is_own(facts: Facts, *ends: Terminal) -> bool:
    parts = (facts.part(end) for end in ends)
    return all(part is not None and part.family not in _SHARED for part in parts)


def _fed(facts: Facts) -> Iterator[tuple[str, Terminal, Terminal, bool]]:
    """Parts with the two ends at which something feeds them, and whether they feed others."""
    for part in facts.diagram.parts.values():
        for source in part.structure.sources:
            for a, b in source.fed_by:
                yield part.key, part.terminal(a), part.terminal(b), True
        for load in part.structure.loads:
            a, b = load.between
            yield part.key, part.terminal(a), part.terminal(b), False


def _circuit(facts: Facts, end: Terminal) -> str:
    spec = facts.diagram.spec(end)
    return spec.circuit if spec else ""
