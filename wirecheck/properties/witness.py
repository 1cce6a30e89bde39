"""The witness of a broken property in words: how the switches stand, and which leads carry it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import pairwise

from wirecheck.circuit.netlist import ElementKey
from wirecheck.circuit.nets import Nets
from wirecheck.circuit.switching import holds
from wirecheck.model.diagram import EARTH, Terminal
from wirecheck.properties.contacts import Switch
from wirecheck.properties.property import Broken
from wirecheck.properties.sources import Feed
from wirecheck.properties.states import Settled, States


def plainest(states: States, table: int) -> int:
    """The state of a table in which as much as can be stands as in a running burner."""
    for variable in states.positions.variables:
        on = states.positions.on(variable)
        usual = on if not _is_other_call(variable) else states.positions.but(on)
        table = table & usual or table
    return states.positions.first(table)


def _is_other_call(variable: object) -> bool:
    return isinstance(variable, Switch) and variable.what == "call" and variable.name != ""


def standing(states: States, broken: Broken) -> str:
    """How the switches stand: what differs from a running burner, the calls, the controls."""
    return ", ".join(_standing(states, broken))


def _standing(states: States, broken: Broken) -> Iterator[str]:
    parts = states.whole.diagram.parts
    on = states.positions.state(broken.state)
    rows = {
        states.contacts.variable[key]: key.part
        for key in states.unit.contacts
        if key.part in broken.about and key in states.contacts.variable
    }
    for variable, is_on in on.items():
        if not isinstance(variable, Switch):
            continue
        name = parts[variable.part].name
        if variable.what == "call" and not variable.name:
            yield f"{name} calling" if is_on else f"{name} not calling"
        elif variable.what == "call" and is_on:
            yield f"{name} with its {variable.name} on"
        elif variable.what == "blade" and not is_on:
            yield f"{name} not open"
        elif variable.what == "contact" and not is_on:
            yield f"{_row_name(states, rows, variable)} open"
    for control in states.unit.controls:
        yield f"{control.name} {_phase(on, control.key)}"


def _row_name(states: States, rows: dict[Switch, str], variable: Switch) -> str:
    parts = states.whole.diagram.parts
    name = parts[rows.get(variable, variable.part)].name
    return f"{name} {variable.name}".strip() if variable.part not in rows.values() else name


def _phase(on: object, control: str) -> str:
    flags = on if isinstance(on, dict) else {}
    first = flags.get(Switch("first gas", control), False)
    main = flags.get(Switch("main gas", control), first)
    if not first:
        return "in standby"
    return "in its run" if main else "in its trial"


def carrying(states: States, broken: Broken) -> tuple[int, ...]:
    """The leads that carry it; none where loads lie in series."""
    leads: list[int] = []
    for key in broken.loads:
        leads += way_to(states, broken.settled, key, broken.state)
    if not broken.loads and len(broken.terminals) == 2:
        one, other = broken.terminals
        leads += _leads_between(states, broken.settled, broken.state, one, other)
    return tuple(dict.fromkeys(leads))


def way_to(states: States, settled: Settled, key: ElementKey, state: int) -> list[int]:
    """The leads over which a load has its volts in a state: to it, and on to the other end."""
    element = states.whole.element(key)
    for feed in settled.feeds.each:
        if not holds(feed.across(element.net_a, element.net_b), state):
            continue
        straight = holds(feed.from_a.get(element.net_a, 0), state)
        near, far = (element.a, element.b) if straight else (element.b, element.a)
        leads: list[int] = []
        for net, end in ((feed.a, near), (feed.b, far)):
            source = _terminal_on(states, feed, net)
            leads += _leads_between(states, settled, state, source, end)
        return leads
    return []


def _terminal_on(states: States, feed: Feed, net: int) -> Terminal:
    """The terminal of a source on one of its nets."""
    element = states.whole.element(feed.key)
    if element.net_a == net:
        return element.a
    if element.net_b == net:
        return element.b
    return states.whole.nets.members[net][0]


def _leads_between(
    states: States, settled: Settled, state: int, one: Terminal, other: Terminal
) -> list[int]:
    nets = states.whole.nets
    way = settled.network.way(nets.net(one), nets.net(other), state)
    if not way:
        return []
    leads: list[int] = []
    here = one
    for net, following in pairwise(way):
        into, out = _contact_between(states, settled, state, net, following)
        leads += _path(nets, here, into)
        here = out
    return leads + _path(nets, here, other)


def _contact_between(
    states: States, settled: Settled, state: int, net: int, following: int
) -> tuple[Terminal, Terminal]:
    """The terminals of a closed contact, or of metal, from one net to the next."""
    for key in (*states.unit.contacts, *states.unit.bonds):
        element = states.whole.element(key)
        if {element.net_a, element.net_b} == {net, following} and (
            key not in settled.closed or holds(settled.closed[key], state)
        ):
            return (element.a, element.b) if element.net_a == net else (element.b, element.a)
    members = states.whole.nets.members
    return members[net][0], members[following][0]


def _path(nets: Nets, one: Terminal, other: Terminal) -> list[int]:
    return nets.path(one, other) if nets.joined(one, other) else []


def offending(states: States, broken: Broken, leads: Sequence[int]) -> int | None:
    """The lead to point at: one at the safety or damper, else one that a right way does not use."""
    diagram = states.whole.diagram
    for part in broken.about:
        if diagram.parts[part].family not in ("ignition-control", "transformer", "mains"):
            at_part = [
                number
                for number, lead in enumerate(diagram.leads)
                if part in (lead.a.part, lead.b.part)
            ]
            if at_part:
                return at_part[0]
    odd = unusual(states, broken, leads)
    if odd:
        return odd[0]
    loads = [states.whole.element(key) for key in broken.loads]
    ends = {end for load in loads for end in (load.a, load.b)} - {EARTH}
    at_load = [n for n in leads if {diagram.leads[n].a, diagram.leads[n].b} & ends]
    return next(iter(at_load or leads), None)


def unusual(states: States, broken: Broken, leads: Sequence[int]) -> list[int]:
    """Those of the leads that carry nothing to the same loads in a burner that runs."""
    usual = plainest(states, states.positions.always)
    used: set[int] = set()
    for key in broken.loads:
        used.update(way_to(states, broken.settled, key, usual))
    return [number for number in leads if number not in used]
