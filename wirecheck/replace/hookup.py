"""What has to be wired to what inside a unit, by what stands in it (common practice, no source).

A hook-up is a pair of terminals, each named by its place in the unit and its role, so that it can
be compared from one unit to the next: what both have stays, what only the new one has is to be
made.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.model.diagram import Terminal
from wirecheck.replace.unit import Slot, Unit


class Point(NamedTuple):
    """A terminal by its place in the unit and its role."""

    slot: Slot
    role: str


class Hookup(NamedTuple):
    """A lead that a unit needs.

    Attributes:
        a, b: where it lands.
        lead: how it is typed, size and colour: what is usual where nothing tells more.
        why: what it is for.
    """

    a: Point
    b: Point
    lead: str
    why: str

    @property
    def points(self) -> frozenset[Point]:
        """Both its ends."""
        return frozenset((self.a, self.b))


#: The usual size of a 24 V control lead, and of one at line voltage (common practice, no source).
_CONTROL, _LINE = "18 AWG", "14 AWG"


def hookups(unit: Unit) -> tuple[Hookup, ...]:
    """Every lead that a unit needs between what stands in it."""
    made = (*_valve(unit), *_FLAME, *_GENERATOR, *_supply(unit))
    return tuple(
        each
        for each in made
        if unit.has_role(each.a.slot, each.a.role) and unit.has_role(each.b.slot, each.b.role)
    )


def is_pilot_system(unit: Unit) -> bool:
    """Whether its control lights a pilot."""
    return unit.has_role("control", "pilot-valve")


def is_direct(unit: Unit) -> bool:
    """Whether its control lights the burner itself."""
    return unit.has_role("control", "valve-feed")


def has_three_wires(unit: Unit) -> bool:
    """Whether its valve has operators of its own for pilot and main."""
    return unit.has_role("valve", "pilot-operator")


def terminal_at(unit: Unit, point: Point) -> Terminal | None:
    """The terminal of a unit at a point."""
    part = unit.parts.get(point.slot)
    return next(iter(part.with_role(point.role)), None) if part else None


def _lead(a: tuple[Slot, str], b: tuple[Slot, str], lead: str, why: str) -> Hookup:
    return Hookup(Point(*a), Point(*b), lead, why)


def _valve(unit: Unit) -> Iterator[Hookup]:
    """From the control to the valve, over the adapter where there is one."""
    blue, brown, violet = (f"{colour}, {_CONTROL}" for colour in ("blue", "brown", "violet"))
    if is_pilot_system(unit):
        why = "feeds the {} operator"
        yield _lead(
            ("control", "pilot-valve"), ("valve", "pilot-operator"), brown, why.format("pilot")
        )
        yield _lead(
            ("control", "main-valve"), ("valve", "main-operator"), violet, why.format("main")
        )
        yield _lead(("control", "valve-common"), ("valve", "operator-common"), blue, "valve common")
    elif is_direct(unit) and "adapter" in unit.parts:
        yield _lead(
            ("control", "valve-feed"), ("adapter", "adapter-feed"), brown, "feeds both operators"
        )
        yield _lead(
            ("control", "valve-common"), ("adapter", "adapter-common"), blue, "valve common"
        )
        yield _lead(
            ("adapter", "adapter-pilot"), ("valve", "pilot-operator"), brown, "pilot operator"
        )
        yield _lead(
            ("adapter", "adapter-main"), ("valve", "main-operator"), violet, "main operator"
        )
        yield _lead(
            ("adapter", "adapter-valve-common"), ("valve", "operator-common"), blue, "valve common"
        )
    elif is_direct(unit):
        yield _lead(("control", "valve-feed"), ("valve", "operator"), brown, "feeds the operator")
        yield _lead(("control", "valve-common"), ("valve", "operator-common"), blue, "valve common")
        yield from _TIED


#: How a three-wire valve may be driven without an adapter; nobody is told to wire it so.
_TIED = (
    _lead(("control", "valve-feed"), ("valve", "pilot-operator"), "", "feeds both operators"),
    _lead(("control", "valve-feed"), ("valve", "main-operator"), "", "feeds both operators"),
    _lead(("valve", "pilot-operator"), ("valve", "main-operator"), "", "ties both operators"),
)
_FLAME = (
    _lead(("control", "spark"), ("burner", "electrode"), "ignition-cable", "spark"),
    _lead(("control", "sense"), ("burner", "rod"), f"yellow, {_CONTROL}", "flame signal"),
    _lead(
        ("control", "burner-ground"),
        ("burner", "burner-metal"),
        f"green, {_CONTROL}",
        "burner ground, the way back of spark and flame signal: to the burner itself",
    ),
)
_GENERATOR = tuple(
    _lead(("valve", at_valve), ("generator", role), "", "holds the safety magnet")
    for at_valve, role in (
        ("generator-hot", "generator-hot"),
        ("generator-common", "generator-common"),
        ("operator-common", "generator-common"),
    )
)


def _supply(unit: Unit) -> Iterator[Hookup]:
    """What a transformer that goes in needs; where one stands, all of it is there."""
    if "control" in unit.parts:
        yield _lead(
            ("supply", "secondary-common"),
            ("control", "control-common"),
            f"blue, {_CONTROL}",
            "common to the control",
        )
    yield _lead(("line", "line-hot"), ("supply", "line-hot"), f"black, {_LINE}", "line feed")
    yield _lead(
        ("line", "line-neutral"), ("supply", "line-neutral"), f"white, {_LINE}", "line feed"
    )
