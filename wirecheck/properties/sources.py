"""The sources of a unit: what each reaches, in which states, and with how many volts."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from functools import lru_cache
from typing import NamedTuple

from wirecheck.circuit.found_wrong import condition
from wirecheck.circuit.netlist import ElementKey, highest
from wirecheck.circuit.nets import Element
from wirecheck.circuit.switching import Network, Positions
from wirecheck.model.diagram import Value
from wirecheck.model.kind import SourceSpec
from wirecheck.model.quantity import Quantity
from wirecheck.properties.unit import Unit, Whole

#: A primary without a drawn line is taken to be fed; one that gets less than this share of its
#: rated volts gives nothing worth counting.
_LEAST_SHARE = 0.1


class Feed(NamedTuple):
    """One source, with one pair of volts it may have.

    Attributes:
        key: of the source; ``end`` that of the other source whose end is the far one, for two
            legs of the line, else the same.
        volts: rated, as fed.
        live: when it gives them.
        a, b: its ends' nets.
        from_a, from_b: when each net is joined to one of its ends.
    """

    key: ElementKey
    volts: float
    live: int
    a: int
    b: int
    from_a: Mapping[int, int]
    from_b: Mapping[int, int]

    @property
    def short(self) -> int:
        """When its ends are joined."""
        return self.live & self.from_a.get(self.b, 0)

    def across(self, one: int, other: int) -> int:
        """When it lies across two nets, not being shorted."""
        get_a, get_b = self.from_a.get, self.from_b.get
        table = (get_a(one, 0) & get_b(other, 0)) | (get_a(other, 0) & get_b(one, 0))
        return table & self.live & ~self.short if table else 0


class Feeds:
    """The sources of a unit in a network.

    Attributes:
        each: the sources; of a transformer one for each volts it can be fed to give.
    """

    def __init__(
        self, whole: Whole, unit: Unit, network: Network[int], positions: Positions
    ) -> None:
        """Work out what every source reaches."""
        self._always = positions.always
        self._reached: dict[int, dict[int, int]] = {}
        self._network = network
        self.line = list(self._lines(whole, unit))
        self.each: list[Feed] = [*self.line]
        for key in unit.sources:
            element = whole.element(key)
            if element.part.family != "mains" and condition(element) == "well":
                self.each += self._secondary(whole, key, element)

    def _from(self, net: int) -> dict[int, int]:
        if net not in self._reached:
            self._reached[net] = self._network.reached(net)
        return self._reached[net]

    def _feed(self, key: ElementKey, volts: float, live: int, ends: tuple[int, int]) -> Feed:
        a, b = ends
        return Feed(key, volts, live, a, b, self._from(a), self._from(b))

    def _lines(self, whole: Whole, unit: Unit) -> Iterable[Feed]:
        """Each leg of the line, and each pair of legs against each other."""
        legs = [key for key in unit.sources if whole.element(key).part.family == "mains"]
        for number, key in enumerate(legs):
            one = whole.element(key)
            yield self._feed(key, phasor_volts(one, None), self._always, (one.net_a, one.net_b))
            for other_key in legs[:number]:
                other = whole.element(other_key)
                if other.part is one.part and other.net_a != one.net_a:
                    volts = phasor_volts(one, other)
                    yield self._feed(key, volts, self._always, (one.net_a, other.net_a))

    def _secondary(self, whole: Whole, key: ElementKey, element: Element) -> Iterable[Feed]:
        spec = element.spec
        assert isinstance(spec, SourceSpec)  # noqa: S101  # a source has one
        ends = (element.net_a, element.net_b)
        volts = _volts(element)
        if not spec.fed_by or not whole.mains:
            yield self._feed(key, volts, self._always, ends)
            return
        given = element.part.values.get(spec.fed_volts) if spec.fed_volts else None
        taps = _taps(given)
        by_volts: dict[float, int] = {}
        for number, pair in enumerate(spec.fed_by):
            one, other = (whole.nets.net(element.part.terminal(name)) for name in pair)
            rated = taps[min(number, len(taps) - 1)]
            for line in self.line:
                live = line.across(one, other)
                share = line.volts / rated
                if live and share > _LEAST_SHARE:
                    got = round(volts * share, 3)
                    by_volts[got] = by_volts.get(got, 0) | live
        for got, live in by_volts.items():
            yield self._feed(key, got, live, ends)

    def in_series(self, loads: Iterable[Element]) -> int:
        """When some loads may lie in series: more states than these do not need volts.

        A current through several loads enters the first of them from an end of a source and
        leaves the last into another end; both are joined to a source on one side only.
        """
        ends: dict[int, int] = {}
        for feed in self.each:
            ends[feed.a] = ends.get(feed.a, 0) | feed.live
            ends[feed.b] = ends.get(feed.b, 0) | feed.live
        if not ends:
            return 0
        railed: dict[int, int] = {}
        for end, live in ends.items():
            for net, table in self._from(end).items():
                railed[net] = railed.get(net, 0) | (table & live)
        touched = self._touched(list(loads), ends, railed)
        found = 0
        for feed in self.each:
            found |= touched.get(feed.a, 0) & touched.get(feed.b, 0) & ~feed.short
        return found | self._between_sources(list(loads), ends)

    def _touched(
        self, loads: list[Element], ends: Mapping[int, int], railed: Mapping[int, int]
    ) -> dict[int, int]:
        """For each end of a source, when a load hangs on it by one side only."""
        touched: dict[int, int] = {}
        for load in loads:
            if load.net_a == load.net_b:
                continue
            for one, other in ((load.net_a, load.net_b), (load.net_b, load.net_a)):
                loose = self._always & ~railed.get(other, 0)
                if loose:
                    for end, live in ends.items():
                        table = self._from(end).get(one, 0) & loose & live
                        if table:
                            touched[end] = touched.get(end, 0) | table
        return touched

    def _between_sources(self, loads: list[Element], ends: Mapping[int, int]) -> int:
        """When a load lies between ends of two sources that are no pair."""
        pairs = {frozenset((feed.a, feed.b)) for feed in self.each}
        at: dict[int, list[tuple[int, int]]] = {}
        for end, live in ends.items():
            for net, table in self._from(end).items():
                at.setdefault(net, []).append((end, table & live))
        found = 0
        for load in loads:
            odd = 0
            for one, here in at.get(load.net_a, ()):
                for other, there in at.get(load.net_b, ()):
                    if one != other and frozenset((one, other)) not in pairs:
                        odd |= here & there
            if odd:
                for feed in self.each:
                    odd &= ~feed.across(load.net_a, load.net_b)
                found |= odd & ~self._from(load.net_a).get(load.net_b, 0)
        return found


def _volts(element: Element) -> float:
    spec = element.spec
    assert isinstance(spec, SourceSpec)  # noqa: S101  # a source has one
    given = element.part.values.get(spec.volts) if isinstance(spec.volts, str) else spec.volts
    return highest(given) * spec.share


def _taps(given: Value | None) -> tuple[float, ...]:
    """Rated volts of the primary, of each tap."""
    if isinstance(given, Quantity) or not isinstance(given, tuple):
        return (highest(given) or 120.0,)
    return tuple(each.high_base for each in given if isinstance(each, Quantity))


@lru_cache(maxsize=256)
def _between_legs(volts: float, one_deg: float, other_deg: float, other_volts: float) -> float:
    import cmath
    import math

    one = cmath.rect(volts, math.radians(one_deg))
    other = cmath.rect(other_volts, math.radians(other_deg))
    return abs(one - other)


def phasor_volts(one: Element, other: Element | None) -> float:
    """Volts of a leg of the line against its neutral, or against another leg."""
    volts, spec = _volts(one), one.spec
    assert isinstance(spec, SourceSpec)  # noqa: S101  # a source has one
    if other is None:
        return volts
    there = other.spec
    assert isinstance(there, SourceSpec)  # noqa: S101  # a source has one
    return _between_legs(volts, spec.phase_deg, there.phase_deg, _volts(other))
