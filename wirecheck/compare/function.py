"""What two diagrams do, set off in every position of their switches.

For each end of a load, a supply or a control's input it is worked out by which positions it is
joined to each side of each supply, to earth and to the metal, and, where it floats, to other
loads.  If these functions are equal, the same current runs in the same places whatever the
switches do.  Nothing is sampled; the first position that differs is the witness.
"""

from __future__ import annotations

from collections.abc import Container, Iterator, Mapping
from typing import NamedTuple, cast

from wirecheck.circuit.nets import Element
from wirecheck.circuit.switching import Network
from wirecheck.compare.rows import rows
from wirecheck.compare.variables import Together, Variable, together
from wirecheck.compare.wired import Wired
from wirecheck.model.diagram import Terminal
from wirecheck.model.kind import LoadSpec

#: Families whose terminals matter also with a fuse open: gas must not flow then.
_GAS = frozenset({"ignition-control", "gas-valve"})

#: Loads that do not run on the volts of a supply: whatever they are joined to matters.
_SIGNALS = frozenset({"spark-coil", "amplifier"})

#: Roles of their terminals that feed nothing of the gas.
_STANDING_BY = frozenset({"control-hot", "damper-hot"})

Node = int | Terminal


class Witness(NamedTuple):
    """A position of the switches in which two diagrams differ.

    Attributes:
        pin, beside: two terminals, or a terminal and metal, joined in one of the two only.
        joined_in_first: in which.
        state: how the variables stand.
        by_leads_only: the other joins them too, but over earth or metal, not by leads.
    """

    pin: Terminal
    beside: Terminal
    joined_in_first: bool
    state: Mapping[Variable, bool]
    by_leads_only: bool


class Function(NamedTuple):
    """What came of it.

    Attributes:
        witnesses: where they differ, one for each two terminals; none if they do not.
        held: variables that were too many, and stood as in a running burner.
    """

    witnesses: tuple[Witness, ...]
    held: tuple[Variable, ...]

    def plainest(self, wired: Wired, about: Container[Terminal]) -> Witness:
        """The witness to tell: at the terminals that the differences are about, and at the gas.

        Raises:
            ValueError: there is none.
        """
        return min(self.witnesses, key=lambda each: _weight(wired, each, about))


def function(one: Wired, other: Wired, about: Container[str] = ()) -> Function:
    """Set off the functions of two diagrams in the same names.

    Args:
        one: the first diagram.
        other: the second.
        about: keys of the parts that are known to differ: their switches are gone through first.
    """
    held: list[Variable] = []
    found: list[Witness] = []
    for group in together(one, other, _pins(one, other), about):
        held += group.held
        for held_are_on in (True, False) if group.held else (True,):
            group.held_are_on = held_are_on
            for by_leads_only in (False, True):
                sides = _Sides(group, one, other, by_leads_only=by_leads_only)
                found += sides.witnesses()
    return Function(tuple(found), tuple(held))


def same_order_in_ground(one: Wired, other: Wired) -> bool:
    """Whether the switches that stand in a grounded lead have the same order in both."""
    return _grounded_rows(one) == _grounded_rows(other)


def _grounded_rows(wired: Wired) -> frozenset[tuple[str, ...]]:
    found = set()
    for row in rows(wired):
        if not row.commutes and len(row.contacts) > 1:
            names = tuple(f"{p.contact.part.key} {p.contact.name}" for p in row.contacts)
            found.add(min(names, names[::-1]))
    return frozenset(found)


def _pins(one: Wired, other: Wired) -> list[Terminal]:
    """The terminals of both at which anything but a contact hangs, wired in either."""
    found: dict[Terminal, None] = {}
    for pin in one.net_of:
        if not one.is_pin(pin) or pin not in other.net_of:
            continue
        at = one.elements_at.get(one.lead(pin), [])
        is_contact = at and all(each.type == "switch" for each in at)
        if not is_contact and (one.is_wired(pin) or other.is_wired(pin)):
            found[pin] = None
    return list(found)


class _Sides:
    """The tables of one group of switches, in both diagrams."""

    def __init__(self, group: Together, one: Wired, other: Wired, *, by_leads_only: bool) -> None:
        self._group = group
        self._both = one, other
        self._by_leads_only = by_leads_only
        self._networks = [_network(group, wired, by_leads_only) for wired in self._both]
        metal = () if by_leads_only else one.metal
        self._metal = [each for each in metal if each in other.metal]

    def witnesses(self) -> Iterator[Witness]:
        """One for each two terminals that are not joined by the same positions."""
        first, other = self._both
        rails = [end for end in _rails(first) if end in self._group.pins] + self._metal
        railed = 0
        by_pin: dict[Terminal, int] = {}
        for rail in rails:
            here, there = (self._reached(which, rail) for which in (0, 1))
            for pin in (*self._group.pins, *self._metal):
                one, two = here.get(_node(first, pin), 0), there.get(_node(other, pin), 0)
                by_pin[pin] = by_pin.get(pin, 0) | one | two
                if differs := (one ^ two) & self._cared(pin):
                    railed = 1
                    yield self._witness(pin, rail, differs, one)
        if not railed and not self._by_leads_only:
            yield from self._floating(by_pin)

    def _floating(self, railed: Mapping[Terminal, int]) -> Iterator[Witness]:
        """Ends that hang together with no supply at them: loads in series, rod and electrode."""
        first, other = self._both
        free = self._group.pins
        for number, pin in enumerate(free):
            here, there = (self._reached(which, pin) for which in (0, 1))
            for beside in free[number + 1 :]:
                one, two = here.get(_node(first, beside), 0), there.get(_node(other, beside), 0)
                floats = ~(railed.get(pin, 0) | railed.get(beside, 0))
                differs = (one ^ two) & self._cared(pin) & floats
                if differs and not self._same_other_end(pin, beside):
                    yield self._witness(pin, beside, differs, one)

    def _same_other_end(self, pin: Terminal, beside: Terminal) -> bool:
        """Whether two loads end on one net at their other ends too, so that no current can run."""
        first, other = self._both
        ends = [_other_end(first, each) for each in (pin, beside)]
        return all(
            end is not None and end in wired.net_of for end in ends for wired in (first, other)
        ) and all(
            wired.net_of[ends[0]] == wired.net_of[ends[1]]  # type: ignore[index]
            for wired in (first, other)
        )

    def _reached(self, which: int, start: Terminal) -> dict[Node, int]:
        return self._networks[which].reached(_node(self._both[which], start))

    def _cared(self, pin: Terminal) -> int:
        part = self._both[0].diagram.parts.get(pin.part)
        spec = self._both[0].diagram.spec(pin)
        also_unfused = (part is not None and spec is not None) and (
            (part.family in _GAS and spec.role not in _STANDING_BY) or spec.circuit == "line"
        )
        group = self._group
        return group.care if also_unfused else group.care & group.fused

    def _witness(self, pin: Terminal, beside: Terminal, differs: int, one: int) -> Witness:
        positions = self._group.positions
        for variable in positions.variables:
            differs = differs & positions.on(variable) or differs
        number = positions.first(differs)
        state = {
            each: is_on
            for each, is_on in positions.state(number).items()
            if isinstance(each, Variable)
        }
        return Witness(pin, beside, bool(one >> number & 1), state, self._by_leads_only)


def _network(group: Together, wired: Wired, by_leads_only: bool) -> Network[Node]:  # noqa: FBT001
    always = group.positions.always
    network: Network[Node] = Network(always)
    for elements in wired.nets.elements_of.values():
        for number, element in enumerate(elements):
            if element.type == "switch":
                closed = group.closed(element, number)
                network.add(_node(wired, element.a), _node(wired, element.b), closed)
    if not by_leads_only:
        for net, metal in wired.touches.items():
            for each in metal:
                network.add(net, each, always)
        for one, other in map(sorted, wired.metal_pairs):
            network.add(one, other, always)
    return network


def _node(wired: Wired, end: Terminal) -> Node:
    return wired.net_of.get(end, end)


def _rails(wired: Wired) -> list[Terminal]:
    sources = (element for element in wired.elements() if element.type == "source")
    ends = dict.fromkeys(end for source in sources for end in (source.a, source.b))
    return [end for end in ends if end in wired.net_of]


def _load_at(wired: Wired, pin: Terminal) -> Element | None:
    at = wired.elements_at.get(wired.lead(pin), [])
    return next((each for each in at if each.type == "load"), None)


def _other_end(wired: Wired, pin: Terminal) -> Terminal | None:
    load = _load_at(wired, pin)
    if load is None or cast(LoadSpec, load.spec).type in _SIGNALS:
        return None
    return load.b if pin in wired.port(load.a) else load.a


def _weight(
    wired: Wired, witness: Witness, about: Container[Terminal]
) -> tuple[bool, int, int, bool]:
    """Which witness is told: one that people look at, with few switches out of the ordinary."""
    part = wired.diagram.parts.get(witness.pin.part)
    families = ("gas-valve", "ignition-control")
    family = part.family if part else ""
    off = sum(not is_on for is_on in witness.state.values())
    place = families.index(family) if family in families else len(families)
    is_about = witness.pin in about and witness.beside in about
    return not is_about, place, off, witness.pin not in about
