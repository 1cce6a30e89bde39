"""Fuses and breakers, and how much can run through them at most."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.model.diagram import Attribute, Part, Terminal
from wirecheck.model.quantity import Quantity
from wirecheck.rules.electrical.loads import Loading, loadings, takers
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import Legs, rated_volts


class Device(NamedTuple):
    """A fuse or breaker whose rating was typed.

    Attributes:
        part: the device.
        contact: its place among the elements of the part.
        rating: as typed; ``rated_a`` in amperes.
        loading: the one 24 V supply on whose hot side it stands, if it does.
        most_a: what can run through it at most.
    """

    part: Part
    contact: int
    rating: Attribute
    rated_a: float
    loading: Loading | None
    most_a: float


def devices(facts: Facts) -> Iterator[Device]:
    """Fuses and breakers of typed rating, in the order of the text."""
    region = facts.conduction.region
    by_hot = {each.hot: each for each in loadings(facts) if each.alone}
    for part in facts.of("overcurrent"):
        rating = part.given.get("rating")
        if rating is None or not isinstance(rating.value, Quantity):
            continue
        for number, element in enumerate(facts.nets.elements_of[part.key]):
            if element.type == "switch":
                loading = by_hot.get(region(element.net_a))
                on_line = sum(line_amps(facts).get(line, 0.0) for line in _lines(facts, element.a))
                most = loading.amps if loading else on_line
                yield Device(part, number, rating, rating.value.high_base, loading, most)


def line_amps(facts: Facts) -> dict[str, float]:
    """For each line supply all it can feed together, primaries at full load; by its part's key."""
    return facts.once(_line_amps)


def _line_amps(facts: Facts) -> dict[str, float]:
    amps: dict[str, float] = {}
    for end, amount in _on_the_line(facts):
        for line in _lines(facts, end):
            amps[line] = amps.get(line, 0.0) + amount
    return amps


def _on_the_line(facts: Facts) -> Iterator[tuple[Terminal, float]]:
    """Each load and each primary winding by one of its ends, with what it takes."""
    for taker in takers(facts):
        yield taker.element.a, taker.amps
    for loading in loadings(facts):
        part, spec = loading.supply.part, loading.spec
        line_v = rated_volts(part.values, spec.fed_volts or 0.0)
        load = max(loading.volt_amperes, rated_volts(part.values, spec.rating or 0.0))
        for first, _second in spec.fed_by if line_v else ():
            yield part.terminal(first), load / line_v


def _lines(facts: Facts, end: Terminal) -> set[str]:
    """The line supplies that reach an end."""
    return {leg.terminal.part for leg in facts.once(Legs).at(end)}
