"""What a thermostat switches: the loads that get their current through its heating contact."""

from __future__ import annotations

from typing import NamedTuple

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.kind import SwitchSpec
from wirecheck.rules.electrical.loads import Taker, loadings, takers
from wirecheck.rules.facts import Facts


class Behind(NamedTuple):
    """The loads behind a thermostat; ``all_drawn``: the diagram leaves none of them out."""

    takers: list[Taker]
    all_drawn: bool


def fed_through(facts: Facts, stat: Part) -> Behind | None:
    """What hangs on a thermostat in a running burner; None where nothing does so plainly.

    Plainly: straight across one supply, and nothing leads past the thermostat.
    """
    contact = next(
        (e for e in facts.nets.elements_of[stat.key] if e.type == "switch" and e.name == "heat"),
        None,
    )
    if contact is None or contact.net_a == contact.net_b:
        return None
    nets = _nets_behind(facts, contact)
    if contact.net_a in nets or facts.earth in nets:
        return None
    hanging = facts.once(_Hanging)
    found = {key: taker for net in nets for key, taker in hanging.at(net).items()}
    loads = {key: taker for key, taker in found.items() if taker.part.key != stat.key}
    if not loads or not all(key in hanging.plain for key in loads):
        return None
    parts = {taker.part.key: taker.part for taker in loads.values()}
    sketchy = any(
        not facts.is_wired(end)
        for part in parts.values()
        if part.family == "ignition-control"
        for end in (
            *part.with_role("pilot-valve", "main-valve", "valve-feed"),
            *_hot_of_valve(facts, part),
        )
    )
    ends = (end for t in loads.values() for end in (t.element.a, t.element.b))
    return Behind(list(loads.values()), not sketchy and all(map(facts.is_traced, ends)))


def _hot_of_valve(facts: Facts, control: Part) -> tuple[Terminal, ...]:
    valve = facts.companion(control, "gas-valve")
    return valve.with_role("pilot-operator", "main-operator", "operator") if valve else ()


def _nets_behind(facts: Facts, contact: Element) -> set[int]:
    """The nets that contacts closed in a running burner join to the call's side of a thermostat."""
    seen = {contact.net_b}
    waiting = [contact.net_b]
    while waiting:
        net = waiting.pop()
        if net in (facts.earth, contact.net_a):
            continue
        for _net, there, element in facts.nets.elements.edges(net, data="element"):
            spec = element.spec
            if (
                there not in seen
                and isinstance(spec, SwitchSpec)
                and spec.running == "closed"
                and element.part.key != contact.part.key
            ):
                seen.add(there)
                waiting.append(there)
    return seen


class _Hanging:
    """Loads by the nets they hang on; ``plain`` are those straight across one supply."""

    def __init__(self, facts: Facts) -> None:
        self._at: dict[int, dict[tuple[str, int], Taker]] = {}
        for taker in takers(facts):
            for net in (taker.element.net_a, taker.element.net_b):
                self._at.setdefault(net, {})[taker.part.key, taker.number] = taker
        self.plain = {
            (taker.part.key, taker.number)
            for loading in loadings(facts)
            if loading.plain
            for taker in loading.takers
        }

    def at(self, net: int) -> dict[tuple[str, int], Taker]:
        return self._at.get(net, {})
