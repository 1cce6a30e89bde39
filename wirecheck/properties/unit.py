"""What belongs together: a burner's control with everything that can decide what it does.

Burners that share nothing but the earth and the line do not decide about each other.  Each is a
unit, so that every position of its own switches can be gone through however many burners a file
has.  A unit holds what current can reach from its control and valves, what moves the contacts
among these, and of the line only the contacts between the mains and what it feeds here.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Iterable, Iterator
from functools import cached_property
from typing import NamedTuple

from wirecheck.circuit.companions import Companions
from wirecheck.circuit.conduction import Conduction
from wirecheck.circuit.netlist import ElementKey
from wirecheck.circuit.nets import Element, Nets
from wirecheck.model.diagram import EARTH, UNKNOWN_END, Part
from wirecheck.model.kind import LoadSpec, SourceSpec, SwitchSpec
from wirecheck.sequence.callers import callers

#: Families whose parts start a unit.
_STARTS = ("ignition-control", "gas-valve")
#: Circuits of terminals that make a net more than one of the line.
_LOW = frozenset({"24V", "millivolt", "ignition", "flame"})


class Unit(NamedTuple):
    """One unit.

    Attributes:
        controls: its ignition controls.
        valves: its gas valves.
        contacts, loads, sources, bonds: its elements, in the order of the text.
        parts: keys of the parts these are in.
    """

    controls: tuple[Part, ...]
    valves: tuple[Part, ...]
    contacts: tuple[ElementKey, ...]
    loads: tuple[ElementKey, ...]
    sources: tuple[ElementKey, ...]
    bonds: tuple[ElementKey, ...]
    parts: frozenset[str]


class Whole:
    """A whole diagram, and what its units are worked out from.

    Attributes:
        nets: of the diagram.
        mains: the sources of the line.
    """

    def __init__(
        self, nets: Nets, conduction: Conduction | None = None, before: Whole | None = None
    ) -> None:
        """Note what lies at each net; linear in elements.

        Args:
            nets: of the diagram.
            conduction: of those nets, where somebody has it already.
            before: the same diagram without a fault of a lead: its parts, what moves what in
                them, who calls and which safeties each control has stay as they were.
        """
        self.nets = nets
        #: The loads that decide where each contact stands, once somebody has asked.
        self.known_movers: dict[ElementKey, list[ElementKey]] = (
            before.known_movers if before else {}
        )
        #: The safety contacts of each control, by its key, once somebody has asked for them.
        self.safeties: dict[str, tuple[ElementKey, ...]] = before.safeties if before else {}
        if before:
            self.callers = before.callers
        self.diagram = nets.diagram
        self._conduction = conduction
        self._at: dict[int, list[ElementKey]] = {}
        self.mains: list[ElementKey] = []
        self._movers: dict[str, list[ElementKey]] = {}
        for part, elements in nets.elements_of.items():
            for number, element in enumerate(elements):
                key = ElementKey(part, number)
                self._at.setdefault(element.net_a, []).append(key)
                self._at.setdefault(element.net_b, []).append(key)
                if element.part.family == "mains" and element.type == "source":
                    self.mains.append(key)
                if isinstance(element.spec, LoadSpec) and element.spec.moves:
                    self._movers.setdefault(element.spec.moves, []).append(key)

    def element(self, key: ElementKey) -> Element:
        """An element by its key."""
        return self.nets.elements_of[key.part][key.number]

    @cached_property
    def conduction(self) -> Conduction:
        """Regions and ways through contacts."""
        return self._conduction or Conduction(self.nets)

    @cached_property
    def companions(self) -> Companions:
        """Which valve goes with which control."""
        return Companions(self.diagram)

    @cached_property
    def callers(self) -> frozenset[str]:
        """Keys of the parts that call for heat."""
        return callers(self.nets)

    @cached_property
    def mains_nets(self) -> frozenset[int]:
        """The nets of the ends of the line."""
        ends = (self.element(key) for key in self.mains)
        return frozenset(net for element in ends for net in (element.net_a, element.net_b))

    @cached_property
    def mains_at(self) -> dict[int, list[ElementKey]]:
        """The sources of the line at each net."""
        at: dict[int, list[ElementKey]] = {}
        for key in self.mains:
            element = self.element(key)
            for net in (element.net_a, element.net_b):
                at.setdefault(net, []).append(key)
        return at

    @cached_property
    def _mains_by_region(self) -> dict[int, list[int]]:
        regions: dict[int, list[int]] = {}
        for net in sorted(self.mains_nets):
            regions.setdefault(self.conduction.region(net), []).append(net)
        return regions

    def mains_beside(self, net: int) -> list[int]:
        """The nets of the line's ends that contacts may join to a net."""
        return self._mains_by_region.get(self.conduction.region(net), [])

    @cached_property
    def valves_drawn(self) -> int:
        """How many gas valves the diagram has."""
        return sum(part.family == "gas-valve" for part in self.diagram.parts.values())

    @cached_property
    def is_one_burner(self) -> bool:
        """Whether everything drawn belongs to one burner."""
        families = [part.family for part in self.diagram.parts.values()]
        return families.count("ignition-control") == 1

    @cached_property
    def untraced(self) -> frozenset[int]:
        """Nets with a lead that was not traced."""
        return frozenset(
            net for terminal, net in self.nets.net_of.items() if terminal.part == UNKNOWN_END
        )

    @cached_property
    def earth(self) -> int:
        """The net of the unit's earth."""
        return self.nets.net(EARTH)

    def is_rail(self, net: int) -> bool:
        """Whether a net is the earth, or touches what no contact shows: a loose or untraced end."""
        return net == self.earth or net in self.untraced

    def at(self, net: int) -> list[ElementKey]:
        """The elements at a net."""
        return self._at.get(net, [])

    def service_bond(self, part: Part) -> tuple[int, int] | None:
        """The nets of neutral and ground of the line, which are one at the service."""
        neutral, ground = part.with_role("line-neutral"), part.with_role("line-ground")
        if part.family != "mains" or not (neutral and ground):
            return None
        return self.nets.net(neutral[0]), self.nets.net(ground[0])

    def loads_of(self, part: Part, name: str) -> Iterator[ElementKey]:
        """The loads of a part that have a name."""
        for number, element in enumerate(self.nets.elements_of[part.key]):
            if element.type == "load" and element.name == name:
                yield ElementKey(part.key, number)

    def movers(self, element: Element) -> list[ElementKey]:
        """The motors without which an air, flow or pressure switch does not make; [] if none."""
        spec = element.spec
        if not isinstance(spec, SwitchSpec):
            return []
        if spec.moved_by == "pressure" and spec.normal == "open":
            return self._movers.get("combustion-air", [])
        if spec.moved_by == "air":
            return self._movers.get("combustion-air") or self._movers.get("air", [])
        return self._movers.get("water", []) if spec.moved_by == "flow" else []

    def moved_by(self, key: ElementKey) -> list[ElementKey]:
        """The loads that decide where a contact stands."""
        if key not in self.known_movers:
            self.known_movers[key] = self._find_movers(key)
        return self.known_movers[key]

    def _find_movers(self, key: ElementKey) -> list[ElementKey]:
        element = self.element(key)
        spec, part = element.spec, element.part
        if not isinstance(spec, SwitchSpec):
            return []
        if spec.moved_by == "coil":
            return list(self.loads_of(part, spec.coil or ""))
        if spec.moved_by == "motor":
            return list(self.loads_of(part, "motor"))
        if spec.moved_by == "level" or part.family == "thermostat":
            return list(self.loads_of(part, "electronics"))
        return self.movers(element)

    def units(self) -> Iterator[Unit]:
        """Every unit, in the order of the text."""
        taken: set[str] = set()
        for family in _STARTS:
            for part in self.diagram.parts.values():
                if part.family == family and part.key not in taken:
                    unit = _Reach(self).unit(part)
                    taken.update(each.key for each in (*unit.controls, *unit.valves))
                    yield unit

    def is_line_only(self, net: int) -> bool:
        """Whether a net belongs to the line and to nothing else."""
        found = False
        for terminal in self.nets.members[net]:
            spec = self.diagram.spec(terminal)
            if spec is not None:
                if spec.circuit in _LOW:
                    return False
                found = found or spec.circuit == "line"
        return found


class _Reach:
    """What is reached from one part."""

    def __init__(self, whole: Whole) -> None:
        self._whole = whole
        self._seen: set[int] = set()
        self._found: set[ElementKey] = set()
        self._waiting: deque[ElementKey] = deque()

    def unit(self, start: Part) -> Unit:
        whole = self._whole
        together = [start]
        if start.family == "ignition-control":
            together += whole.companions.all_of(start, "gas-valve")
        for part in together:
            self._take(
                ElementKey(part.key, n) for n in range(len(whole.nets.elements_of[part.key]))
            )
        while self._waiting:
            self._from(self._waiting.popleft())
        found = sorted(self._live(), key=self._place)
        elements = [(key, whole.element(key)) for key in found]
        mains = dict.fromkeys(key for net in self._seen for key in whole.mains_at.get(net, ()))
        elements += [(key, whole.element(key)) for key in mains]
        parts = {key.part: element.part for key, element in elements}
        by_type: dict[str, list[ElementKey]] = {}
        for key, element in dict(elements).items():
            by_type.setdefault(element.type, []).append(key)
        return Unit(
            tuple(part for part in parts.values() if part.family == "ignition-control"),
            tuple(part for part in parts.values() if part.family == "gas-valve"),
            tuple(by_type.get("switch", ())),
            tuple(by_type.get("load", ())),
            tuple(by_type.get("source", ())),
            tuple(by_type.get("bond", ())),
            frozenset(parts),
        )

    def _live(self) -> set[ElementKey]:
        """What was found, less the contacts that lead nowhere."""
        whole, found = self._whole, set(self._found)
        waiting = [key for key in found if whole.element(key).type == "switch"]
        while waiting:
            key = waiting.pop()
            element = whole.element(key)
            if key not in found or element.net_a == element.net_b:
                continue
            for net in (element.net_a, element.net_b):
                beside = [other for other in whole.at(net) if other in found and other != key]
                if not beside and not whole.is_rail(net) and net not in self._roots:
                    found.discard(key)
                    other_net = element.net_b if net == element.net_a else element.net_a
                    waiting += [
                        other
                        for other in whole.at(other_net)
                        if other in found and whole.element(other).type == "switch"
                    ]
                    break
        return found

    @cached_property
    def _roots(self) -> frozenset[int]:
        """Where something arrives that is no element: the line, and what it feeds."""
        whole = self._whole
        primaries = (
            whole.nets.net(element.part.terminal(name))
            for key in self._found
            for element in (whole.element(key),)
            if isinstance(element.spec, SourceSpec)
            for pair in element.spec.fed_by
            for name in pair
        )
        return whole.mains_nets.union(primaries)

    def _place(self, key: ElementKey) -> tuple[int, int]:
        return self._whole.nets.diagram.parts[key.part].span.start, key.number

    def _take(self, keys: Iterable[ElementKey]) -> None:
        for key in keys:
            if key not in self._found:
                self._found.add(key)
                self._waiting.append(key)

    def _from(self, key: ElementKey) -> None:
        element = self._whole.element(key)
        self._reach(element.net_a)
        self._reach(element.net_b)
        self._take(self._whole.moved_by(key))
        spec = element.spec
        if isinstance(spec, SourceSpec):
            for pair in spec.fed_by:
                for name in pair:
                    self._reach(self._whole.nets.net(element.part.terminal(name)))

    def _reach(self, net: int) -> None:
        if net in self._seen:
            return
        self._seen.add(net)
        whole = self._whole
        is_shared = net == whole.earth and not whole.is_one_burner
        if net in whole.mains_nets or is_shared:
            return
        if net != whole.earth and whole.is_line_only(net):
            for end in whole.mains_beside(net):
                way = whole.conduction.way(net, end)
                self._seen.add(end)
                contacts = [ElementKey(each.part.key, self._number(each)) for each in way.contacts]
                self._seen.update(n for each in way.contacts for n in (each.net_a, each.net_b))
                self._take(contacts)
        else:
            self._take(whole.at(net))

    def _number(self, element: Element) -> int:
        elements = self._whole.nets.elements_of[element.part.key]
        return next(number for number, each in enumerate(elements) if each is element)
