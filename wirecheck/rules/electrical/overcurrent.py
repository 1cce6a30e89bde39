"""Fuses and breakers, and what runs through them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.circuit.netlist import ElementKey
from wirecheck.model.diagram import Attribute, Part
from wirecheck.model.quantity import Quantity
from wirecheck.rules.electrical.loads import Loading, loadings, takers
from wirecheck.rules.facts import Facts
from wirecheck.rules.legs import rated_volts


class Device(NamedTuple):
    """A fuse or breaker whose rating was typed.

    Attributes:
        part: the device.
        key: its contact.
        rating: as typed; ``rated_a`` in amperes.
        loading: the one 24 V supply on whose hot side it stands, if it does.
    """

    part: Part
    key: ElementKey
    rating: Attribute
    rated_a: float
    loading: Loading | None


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
                yield Device(
                    part, ElementKey(part.key, number), rating, rating.value.high_base, loading
                )


def most_amps(facts: Facts, loading: Loading | None) -> float:
    """What can run at most: all loads of a supply, or without one all that the line feeds."""
    return loading.amps if loading is not None else facts.once(line_amps)


def line_amps(facts: Facts) -> float:
    """All loads together that are on no 24 V supply, and all primaries at full load."""
    on_24_volts = {
        (taker.part.key, taker.number) for each in loadings(facts) for taker in each.takers
    }
    amps = sum(
        taker.amps for taker in takers(facts) if (taker.part.key, taker.number) not in on_24_volts
    )
    for loading in loadings(facts):
        part, spec = loading.supply.part, loading.spec
        line_v = rated_volts(part.values, spec.fed_volts or 0.0)
        load = max(loading.volt_amperes, rated_volts(part.values, spec.rating or 0.0))
        amps += load / line_v if line_v else 0.0
    return amps
