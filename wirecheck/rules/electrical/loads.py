"""What each 24 V supply has to feed, by adding up what the loads take at their rated volts.

That needs no solving.  Where a supply stands alone and every load lies straight across it, sums
bound every current and every drop, and most diagrams are right by a wide margin.  Where they are
not, `wirecheck.rules.electrical.running` solves the circuit.
"""

from __future__ import annotations

from collections.abc import Iterable
from functools import cached_property
from typing import NamedTuple, cast

from wirecheck.circuit.nets import Element
from wirecheck.circuit.ratings import load_ohms
from wirecheck.model.diagram import Attribute, Part
from wirecheck.model.kind import LoadSpec, SourceSpec
from wirecheck.rules.facts import Facts, Supply
from wirecheck.rules.legs import rated_volts


class Taker(NamedTuple):
    """A load that takes current.

    Attributes:
        element: the load.
        number: its place among the elements of its part.
        rated_v: volts it is made for.
        amps: it takes at these.
        volts_known: its rated volts were typed, or its kind is made for nothing else.
        taken_known: likewise what it takes.
    """

    element: Element
    number: int
    rated_v: float
    amps: float
    volts_known: bool
    taken_known: bool

    @property
    def part(self) -> Part:
        """The part it is in."""
        return self.element.part

    @property
    def volt_amperes(self) -> float:
        """What it takes at its rated volts."""
        return self.rated_v * self.amps

    @property
    def name(self) -> str:
        """For people: the part's name, with the load's own where it has several."""
        several = sum(1 for load in self.part.structure.loads if load.takes) > 1
        return f"{self.part.name} ({self.element.name})" if several else self.part.name


class Loading:
    """One supply and the loads whose two ends contacts may bring to its two sides.

    Attributes:
        supply: the supply.
        hot: region of its hot side; ``common`` that of the other.
        takers: the loads, in the order of the text.
        aside: loads with one end on its hot side and the other on neither side.
        alone: no other supply shares its hot side, and contacts do not join its two sides.
    """

    def __init__(self, supply: Supply, hot: int, common: int) -> None:
        """Nothing is known to hang on it; its sides are in these regions."""
        self.supply = supply
        self.hot = hot
        self.common = common
        self.takers: list[Taker] = []
        self.aside: list[Taker] = []
        self.alone = True

    @cached_property
    def volt_amperes(self) -> float:
        """All its loads together, at their rated volts."""
        return sum(taker.volt_amperes for taker in self.takers)

    @cached_property
    def amps(self) -> float:
        """All its loads together, at their rated volts."""
        return sum(taker.amps for taker in self.takers)

    @property
    def spec(self) -> SourceSpec:
        """What the part library says of the supply."""
        return cast(SourceSpec, self.supply.element.spec)

    @property
    def rating(self) -> Attribute | None:
        """Its rated volt-amperes, if they were typed."""
        return self.supply.part.given.get(self.spec.rating or "")

    @property
    def rated_v(self) -> float:
        """Its rated volts."""
        return rated_volts(self.supply.part.values, self.spec.volts)

    @property
    def plain(self) -> bool:
        """Whether sums say all: no other supply and no load in series has a hand in it."""
        return self.alone and not self.aside


def takers(facts: Facts) -> list[Taker]:
    """Every load that takes current, in the order of the text."""
    return facts.once(_takers)


def loadings(facts: Facts) -> list[Loading]:
    """What hangs on each 24 V supply, in the order of the text."""
    return facts.once(_loadings)


def _takers(facts: Facts) -> list[Taker]:
    return [
        taker
        for part in facts.diagram.parts.values()
        if part.structure.loads
        for number, element in enumerate(facts.nets.elements_of[part.key])
        if element.type == "load" and (taker := _taker(element, number)) is not None
    ]


def _taker(element: Element, number: int) -> Taker | None:
    """A load with rated volts that takes current; None of any other."""
    spec, part = cast(LoadSpec, element.spec), element.part
    ohms = load_ohms(spec, part.values)
    if ohms is None or spec.volts is None:
        return None
    volts = rated_volts(part.values, spec.volts)
    volts_known = not isinstance(spec.volts, str) or spec.volts in part.given
    return Taker(element, number, volts, volts / abs(ohms), volts_known, spec.takes in part.given)


def _loadings(facts: Facts) -> list[Loading]:
    region = facts.conduction.region
    found = [
        Loading(supply, region(facts.net(supply.hot)), region(facts.net(supply.common)))
        for supply in facts.supplies
    ]
    commons = {each.common for each in found}
    hot: dict[int, list[Loading]] = {}
    for each in found:
        hot.setdefault(each.hot, []).append(each)
    for at, sharing in hot.items():
        for each in sharing:
            each.alone = len(sharing) == 1 and at not in commons
    ends = [(region(t.element.net_a), region(t.element.net_b)) for t in takers(facts)]
    dead_ends = _dead_ends(ends) - commons - hot.keys()
    for taker, (a, b) in zip(takers(facts), ends, strict=True):
        for here, there in ((a, b), (b, a)) if a != b else ():
            for each in hot.get(here, ()):
                if each.common == there:
                    each.takers.append(taker)
                elif there not in dead_ends:
                    each.aside.append(taker)
    return found


def _dead_ends(ends: Iterable[tuple[int, int]]) -> set[int]:
    """Regions on which one load ends and nothing else that takes current."""
    once: set[int] = set()
    more: set[int] = set()
    for pair in ends:
        for at in pair:
            (more if at in once else once).add(at)
    return once - more
