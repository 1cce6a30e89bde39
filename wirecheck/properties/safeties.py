"""The safeties of a burner, and the states in which each is open."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from wirecheck.circuit.netlist import ElementKey
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.kind import SourceSpec
from wirecheck.properties.contacts import Switch
from wirecheck.properties.gas import trains
from wirecheck.properties.states import States

#: The terminals over which a control is fed, and those over which it feeds its valves.
_FEEDS = ("call", "control-common", "control-hot")


class Safety(NamedTuple):
    """One safety contact: its part's key, its name for people, its variable."""

    part: str
    key: ElementKey
    name: str
    variable: Switch


def own_safeties(states: States, control: Part | None) -> Iterator[tuple[Safety, int]]:
    """The safeties of a control, each with the states in which what it watches has it open.

    They are those on some way from the supply to the control, or from it to its valves, those
    bypassed there included: a switch that only lights a lamp stops nothing, and need not.
    """
    name = control.key if control else ""
    known = states.whole.safeties
    if name not in known:
        known[name] = tuple(_on_ways(states, control))
    for key in known[name]:
        each = states.contacts.each[key]
        variable = states.contacts.variable[key]
        opened = states.positions.but(states.contacts.on(variable))
        yield Safety(key.part, key, each.name, variable), opened


def _on_ways(states: States, control: Part | None) -> Iterator[ElementKey]:
    own = frozenset(_nets_on_ways(states, control))
    for key, each in states.contacts.each.items():
        if each.spec.safety and key in states.contacts.variable:
            element = states.whole.element(key)
            ends = (element.net_a, element.net_b)
            if own.issuperset(ends) or all(_leads_to(states, net, own, key) for net in ends):
                yield key


def _leads_to(states: States, net: int, own: frozenset[int], but: ElementKey) -> bool:
    """Whether contacts lead from a net to one of some nets, without one of them.

    A lead past a row of contacts leaves them hanging on the way by both ends, each a way round
    the other: what is bypassed there is still this control's.
    """
    seen, waiting = {net}, [net]
    while waiting:
        here = waiting.pop()
        if here in own:
            return True
        for key in states.unit.contacts:
            element = states.whole.element(key)
            if key != but and here in (element.net_a, element.net_b):
                there = element.net_b if element.net_a == here else element.net_a
                if there not in seen:
                    seen.add(there)
                    waiting.append(there)
    return False


def _nets_on_ways(states: States, control: Part | None) -> Iterator[int]:
    whole, unit = states.whole, states.unit
    elements = [whole.element(key) for key in unit.sources]
    supplies = [end for each in elements if each.part.family != "mains" for end in (each.a, each.b)]
    mains = [end for each in elements if each.part.family == "mains" for end in (each.a, each.b)]
    primaries = [
        each.part.terminal(name)
        for each in elements
        if isinstance(each.spec, SourceSpec)
        for pair in each.spec.fed_by
        for name in pair
    ]
    operators = [
        end
        for valve in _valves(states, control)
        for each in whole.nets.elements_of[valve.key]
        if each.type == "load"
        for end in (each.a, each.b)
    ]
    yield from _between(states, primaries, mains)
    if control is None:
        yield from _between(states, supplies, operators)
        return
    outputs = control.with_role("pilot-valve", "main-valve", "valve-feed", "valve-common")
    yield from _between(states, supplies, control.with_role(*_FEEDS))
    yield from _between(states, outputs, operators)


def _valves(states: States, control: Part | None) -> Iterator[Part]:
    """The valves of a control; of none, those that no control has."""
    for owner, valves in trains(states.whole, states):
        if owner is control:
            yield from (valve for valve, _feeds in valves)


def _between(states: States, near: Iterable[Terminal], far: Iterable[Terminal]) -> Iterator[int]:
    nets, conduction = states.whole.nets, states.whole.conduction
    pairs = dict.fromkeys((nets.net(a), nets.net(b)) for a in near for b in far)
    for a, b in pairs:
        way = conduction.way(a, b)
        if way.exists:
            yield a
            yield b
            yield from (net for each in way.contacts for net in (each.net_a, each.net_b))
