"""The independent positions of the switches of two diagrams, the same variables for both.

Every limit, every thermostat contact, every relay and every output of a control is a variable; the
contacts of one relay follow one variable.  A coil is thereby one load among others: if every load
has the same function of all the positions, relays included, the two diagrams do the same.
Contacts in a row in both diagrams act as one and share a variable.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Container, Hashable, Iterable, Iterator, Mapping, Sequence
from typing import NamedTuple, cast

import networkx as nx

from wirecheck.circuit.netlist import ElementKey
from wirecheck.circuit.nets import Element
from wirecheck.circuit.switching import Positions
from wirecheck.compare.rows import rows
from wirecheck.compare.wired import Wired
from wirecheck.model.diagram import Terminal
from wirecheck.model.kind import SwitchSpec
from wirecheck.sequence.contacts import contact

#: More variables than this of switches that hang together are not gone through.
MOST_VARIABLES = 18


class Variable(NamedTuple):
    """What moves a contact: the part, and its coil, its motor or the contact itself."""

    part: str
    what: str


def variable_of(element: Element) -> Variable:
    """What decides where a contact stands."""
    spec = cast(SwitchSpec, element.spec)
    if spec.moved_by == "coil":
        return Variable(element.part.key, f"coil {spec.coil or ''}")
    if spec.moved_by == "motor":
        return Variable(element.part.key, "motor")
    return Variable(element.part.key, spec.name)


class Together:
    """Switches that hang together in either diagram, and every position of them.

    Attributes:
        positions: of the variables; of those that share one, the first stands for all.
        held: variables that are too many, and stand still.
        pins: the terminals that these switches may join.
        care: the states that can be: a control's main output is on only with its first.
        fused: those of them in which no fuse or breaker is open.
    """

    def __init__(
        self,
        variables: Sequence[Variable],
        shared: Mapping[Variable, Variable],
        pins: Sequence[Terminal],
    ) -> None:
        """Make the tables."""
        independent = list(dict.fromkeys(shared[each] for each in variables))
        self.positions = Positions(independent[:MOST_VARIABLES])
        self.held = tuple(independent[MOST_VARIABLES:])
        self.pins = tuple(pins)
        self._shared = shared
        self.care = self.fused = self.positions.always
        #: Whether those held stand as in a running burner, or the other way.
        self.held_are_on = True

    def on(self, variable: Variable) -> int:
        """The states in which a variable is on."""
        stands_for = self._shared.get(variable, variable)
        if stands_for in self.positions.variables:
            return self.positions.on(stands_for)
        return self.positions.always if self.held_are_on else 0

    def closed(self, element: Element, number: int) -> int:
        """The states in which a contact is closed; ``number`` is its place in its part."""
        what = contact(ElementKey(element.part.key, number), element, lambda _now_s: True)
        if what.found:
            return self.positions.always if what.found == "closed" else 0
        if what.stuck_mover is not None:
            stands = what.spec.running if what.stuck_mover else what.spec.normal
            return self.positions.always if stands == "closed" else 0
        on = self.on(variable_of(element))
        opens = what.spec.moved_by in ("coil", "motor") and what.spec.running == "open"
        return self.positions.but(on) if opens else on

    def allow_only(self, wired: Wired, variables: frozenset[Variable]) -> None:
        """Leave out what cannot be, and note what the fuses of a diagram keep."""
        for part in wired.parts():
            contacts = [e for e in wired.nets.elements_of[part.key] if e.type == "switch"]
            mine = [variable_of(each) for each in contacts if variable_of(each) in variables]
            if part.family == "ignition-control" and len(mine) == 2:
                first, main = map(self.on, mine)
                self.care &= first | self.positions.but(main)
            elif part.family == "overcurrent":
                for each in mine:
                    self.fused &= self.on(each)


def together(
    one: Wired, other: Wired, pins: Iterable[Terminal], about: Container[str] = ()
) -> Iterator[Together]:
    """The switches of two diagrams and the terminals they may join, by what hangs together.

    Args:
        one: the first diagram.
        other: the second, in the same names.
        pins: the terminals that are asked about.
        about: keys of the parts whose switches are gone through first, where there are too many.
    """
    shared = _shared(one, other)
    groups: nx.utils.UnionFind[Hashable] = nx.utils.UnionFind()
    names: dict[Variable, None] = {}
    for which, wired in enumerate((one, other)):
        live = filter(wired.is_live, wired.contacts())
        names |= dict.fromkeys(map(variable_of, live))
        for tied in _tied(which, wired):
            groups.union(*tied)
    for pin in pins:
        groups.union(_node(0, one, pin), _node(1, other, pin))
    by_root: dict[Hashable, tuple[list[Variable], list[Terminal]]] = {}
    for pin in pins:
        by_root.setdefault(groups[_node(0, one, pin)], ([], []))[1].append(pin)
    for name in names:
        by_root.setdefault(groups[name], ([], []))[0].append(name)
    for variables, group_pins in by_root.values():
        if group_pins:
            variables.sort(key=lambda each: each.part not in about)
            group = Together(variables, shared, group_pins)
            for wired in (one, other):
                group.allow_only(wired, frozenset(variables))
            yield group


def _tied(which: int, wired: Wired) -> Iterator[tuple[Hashable, ...]]:
    """What hangs together in one diagram: nets, metal and switches."""
    yield wired.metal
    for net, metal in wired.touches.items():
        yield ((which, net), *metal)
    for element in wired.contacts():
        ends = (_node(which, wired, end) for end in (element.a, element.b))
        yield (variable_of(element), *ends)
    for part in wired.parts():
        outputs = [each for each in wired.nets.elements_of[part.key] if each.type == "switch"]
        if part.family == "ignition-control" and outputs:
            yield tuple(map(variable_of, outputs))


def _node(which: int, wired: Wired, end: Terminal) -> Hashable:
    return (which, wired.net_of[end]) if end in wired.net_of else end


def _shared(one: Wired, other: Wired) -> dict[Variable, Variable]:
    """Of each variable the one that stands for it: the first of those in one row in both."""
    uses: dict[Variable, list[tuple[int, int]]] = {}
    count: Counter[Variable] = Counter()
    for which, wired in enumerate((one, other)):
        for element in wired.contacts():
            uses.setdefault(variable_of(element), [])
            count[variable_of(element)] += wired.is_live(element)
        for number, row in enumerate(rows(wired)):
            for placed in row.contacts:
                uses[variable_of(placed.contact)].append((which, number))
    stands: dict[tuple[tuple[int, int], ...], Variable] = {}
    shared: dict[Variable, Variable] = {}
    for name, places in uses.items():
        is_alone = [which for which, _row in places] == [0, 1] and count[name] == 2
        by_itself = _stands_by_itself(one, name) or _stands_by_itself(other, name)
        shared[name] = (
            stands.setdefault(tuple(places), name) if is_alone and not by_itself else name
        )
    return shared


def _stands_by_itself(wired: Wired, name: Variable) -> bool:
    """Whether a contact in a row is asked about by itself: a fuse, or one that may be stuck."""
    part = wired.diagram.parts.get(name.part)
    return part is not None and (part.family == "overcurrent" or bool(part.found_wrong()))
