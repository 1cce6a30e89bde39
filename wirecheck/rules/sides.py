"""Which side of which supply a terminal is on, by leads and contacts alone.

Earth and the burner grounds are left out: through them everything that is metal is one conductor,
and a diagram with its common lead on the wrong terminal would look as if it were on both.  What is
left is what the installer meant: *conductors* (leads, splices, links inside devices), and *areas*,
the conductors that contacts may join.
"""

from __future__ import annotations

from collections import deque
from collections.abc import Callable, Iterable, Iterator
from functools import cached_property
from typing import TYPE_CHECKING, NamedTuple, TypeVar

from wirecheck.circuit.nets import Element
from wirecheck.model.diagram import EARTH, LeadRole, Terminal
from wirecheck.model.kind import LinkSpec, SwitchSpec

if TYPE_CHECKING:
    from wirecheck.rules.facts import Facts, Supply

_Key = TypeVar("_Key")
_Item = TypeVar("_Item")


class Touch(NamedTuple):
    """Where a conductor meets earth: by which lead, and what it lands on or touches."""

    lead: int
    at: Terminal


class Trace(NamedTuple):
    """A way between two terminals: leads, contacts and named links, each in its order."""

    start: Terminal
    end: Terminal
    leads: tuple[int, ...]
    contacts: tuple[Element, ...]
    links: tuple[str, ...]

    @property
    def can_close(self) -> bool:
        """False where it needs both throws of one pole at once."""
        throws: dict[tuple[str, Terminal], set[str]] = {}
        for contact in self.contacts:
            if isinstance(contact.spec, SwitchSpec) and contact.spec.coil:
                for end in (contact.a, contact.b):
                    throws.setdefault((contact.part.key, end), set()).add(contact.spec.normal)
        return all(len(positions) == 1 for positions in throws.values())


class Sides:
    """Conductors and areas of one diagram, and the supplies on them."""

    def __init__(self, facts: Facts) -> None:
        """Linear in leads and terminals."""
        self._facts = facts
        nets = facts.nets
        self._wires = nets.wires
        self._barriers = {
            EARTH,
            *(
                ground
                for control in facts.of("ignition-control")
                for ground in control.with_role("burner-ground")
            ),
        }
        self._apart: dict[Terminal, int] = {}
        self._cut_at_barriers()
        self._parent: dict[int, int] = {}
        for elements in nets.elements_of.values():
            for element in elements:
                if element.type == "switch":
                    self._join(self.conductor(element.a), self.conductor(element.b))

    def _cut_at_barriers(self) -> None:
        """Number the pieces into which the nets of earth and burner grounds fall without them."""
        nets = self._facts.nets
        next_number = len(nets.members)
        for net in sorted({nets.net_of[barrier] for barrier in self._barriers}):
            for first in nets.members[net]:
                if first in self._apart:
                    continue
                self._apart[first] = next_number
                if first not in self._barriers:
                    waiting = [first]
                    while waiting:
                        for other in self._wires[waiting.pop()]:
                            if other not in self._apart and other not in self._barriers:
                                self._apart[other] = next_number
                                waiting.append(other)
                next_number += 1

    def _join(self, one: int, other: int) -> None:
        one, other = self._root(one), self._root(other)
        if one != other:
            self._parent[max(one, other)] = min(one, other)

    def _root(self, conductor: int) -> int:
        parent = self._parent
        while conductor in parent:
            above = parent[conductor]
            if above in parent:
                parent[conductor] = parent[above]
            conductor = above
        return conductor

    # ---- where a terminal is ---------------------------------------------------------------

    def conductor(self, terminal: Terminal) -> int:
        """The conductor a terminal is on."""
        number = self._apart.get(terminal)
        return self._facts.nets.net_of[terminal] if number is None else number

    def area(self, terminal: Terminal) -> int:
        """The conductors that contacts may join with that of a terminal."""
        return self._root(self.conductor(terminal))

    def same(self, a: Terminal, b: Terminal) -> bool:
        """Whether two terminals are one conductor."""
        return self.conductor(a) == self.conductor(b)

    def may_join(self, a: Terminal, b: Terminal) -> bool:
        """Whether contacts may join two terminals."""
        return self.area(a) == self.area(b)

    @cached_property
    def _with_contacts(self) -> set[int]:
        return {self.conductor(terminal) for terminal in self._contacts_at}

    def is_switched(self, terminal: Terminal) -> bool:
        """Whether any contact stands on the conductor of a terminal."""
        return self.conductor(terminal) in self._with_contacts

    # ---- supplies --------------------------------------------------------------------------

    @cached_property
    def _hot(self) -> dict[int, list[Supply]]:
        return _grouped((self.conductor(s.hot), s) for s in self._facts.supplies)

    @cached_property
    def _common(self) -> dict[int, list[Supply]]:
        return _grouped((self.conductor(s.common), s) for s in self._facts.supplies)

    @cached_property
    def _hot_areas(self) -> dict[int, list[Supply]]:
        return _grouped((self.area(s.hot), s) for s in self._facts.supplies)

    @cached_property
    def _common_areas(self) -> dict[int, list[Supply]]:
        return _grouped((self.area(s.common), s) for s in self._facts.supplies)

    def hot_on(self, terminal: Terminal) -> list[Supply]:
        """Supplies whose hot side is this conductor."""
        return self._hot.get(self.conductor(terminal), [])

    def common_on(self, terminal: Terminal) -> list[Supply]:
        """Supplies whose common side is this conductor."""
        return self._common.get(self.conductor(terminal), [])

    def hot_beyond(self, terminal: Terminal) -> list[Supply]:
        """Supplies whose hot side is this conductor or reaches it through contacts."""
        return self._hot_areas.get(self.area(terminal), [])

    def common_beyond(self, terminal: Terminal) -> list[Supply]:
        """Supplies whose common side is this conductor or reaches it through contacts."""
        return self._common_areas.get(self.area(terminal), [])

    # ---- earth -----------------------------------------------------------------------------

    @cached_property
    def touched(self) -> dict[int, list[Touch]]:
        """Every conductor that meets earth by leads, with these; see `touches`."""
        found: dict[int, list[Touch]] = {}
        diagram = self._facts.diagram
        for number, lead in enumerate(diagram.leads):
            if "touches" in lead.given:
                self._note(found, lead.a, Touch(number, EARTH))
            if lead.conducts:
                for here, there in ((lead.a, lead.b), (lead.b, lead.a)):
                    if here not in self._barriers and self._is_metal(there, here):
                        self._note(found, here, Touch(number, there))
        return found

    def _is_metal(self, there: Terminal, here: Terminal) -> bool:
        """Whether landing on ``there`` brings a lead to earth or to a burner ground."""
        if there in self._barriers:
            return self._facts.role(here) != "burner-metal"
        if self._facts.role(there) != "burner-metal":
            return False
        ends = (self._facts.other_end(lead, there) for lead in self._facts.nets.leads_at(there))
        return self._facts.is_grounded(there) or any(end in self._barriers for end in ends)

    def _note(self, found: dict[int, list[Touch]], terminal: Terminal, touch: Touch) -> None:
        found.setdefault(self.conductor(terminal), []).append(touch)

    def touches(self, terminal: Terminal) -> list[Touch]:
        """Leads by which this conductor meets earth, a burner ground or grounded burner metal.

        Links inside a control, from its common to its burner ground, are none.
        """
        return self.touched.get(self.conductor(terminal), [])

    # ---- ways ------------------------------------------------------------------------------

    def cause(self, leads: Iterable[int]) -> int:
        """Of the leads of a way that should not be: the one jumper, else the one typed last."""
        numbers = list(leads)
        roles = self._facts.diagram.leads
        jumpers = [number for number in numbers if roles[number].role is LeadRole.JUMPER]
        return jumpers[0] if len(jumpers) == 1 else max(numbers)

    @cached_property
    def _contacts_at(self) -> dict[Terminal, list[Element]]:
        return _grouped(
            (end, element)
            for elements in self._facts.nets.elements_of.values()
            for element in elements
            if element.type == "switch"
            for end in (element.a, element.b)
        )

    def trace(self, a: Terminal, b: Terminal) -> Trace | None:
        """A way of fewest steps from one terminal to another, by leads, links and contacts."""
        return self.search((a,), b.__eq__)

    def path(self, a: Terminal, b: Terminal) -> Trace | None:
        """A way of fewest steps from one terminal to another, by leads and links alone."""
        return self.search((a,), b.__eq__, through=_through_none)

    def copper(self, a: Terminal, b: Terminal) -> Trace | None:
        """The same, where fuses and breakers are looked at as the copper they are."""
        return self.search((a,), b.__eq__, through=is_overcurrent)

    def search(
        self,
        starts: Iterable[Terminal],
        is_goal: Callable[[Terminal], bool],
        *,
        through: Callable[[Element], bool] | None = None,
        without: Terminal | None = None,
    ) -> Trace | None:
        """A way of fewest steps from one of several terminals to the nearest that is a goal.

        ``through``: the contacts it may pass, all if None; ``without``: a terminal that it must
        not pass.
        """
        came: dict[Terminal, tuple[Terminal, object] | None] = dict.fromkeys(starts)
        waiting = deque(came)
        while waiting:
            here = waiting.popleft()
            if is_goal(here):
                return self._told(here, came)
            for there, by in self._steps(here, through):
                if there not in came and there not in self._barriers and there != without:
                    came[there] = (here, by)
                    waiting.append(there)
        return None

    def _steps(
        self, here: Terminal, through: Callable[[Element], bool] | None
    ) -> Iterator[tuple[Terminal, object]]:
        for there, edge in self._wires[here].items():
            yield there, edge.get("lead", edge.get("link"))
        for contact in self._contacts_at.get(here, ()):
            if through is None or through(contact):
                yield contact.b if contact.a == here else contact.a, contact

    def _told(self, goal: Terminal, came: dict[Terminal, tuple[Terminal, object] | None]) -> Trace:
        steps: list[object] = []
        start, step = goal, came[goal]
        while step is not None:
            start = step[0]
            steps.append(step[1])
            step = came[start]
        steps.reverse()
        return Trace(
            start,
            goal,
            tuple(by for by in steps if isinstance(by, int)),
            tuple(by for by in steps if isinstance(by, Element)),
            tuple(by.name for by in steps if isinstance(by, LinkSpec)),
        )


def is_overcurrent(contact: Element) -> bool:
    """Whether a contact is that of a fuse or a breaker, which only a fault opens."""
    return contact.part.family == "overcurrent"


def _through_none(_contact: Element) -> bool:
    return False


def _grouped(pairs: Iterable[tuple[_Key, _Item]]) -> dict[_Key, list[_Item]]:
    groups: dict[_Key, list[_Item]] = {}
    for key, item in pairs:
        groups.setdefault(key, []).append(item)
    return groups
