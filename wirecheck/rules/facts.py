"""What rules ask about a diagram: worked out once, handed to every rule.

Rules never walk all members of a net for each part: the common of a hundred units is one net.
Ask for what is at a terminal, or for a path, instead.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import replace
from functools import cached_property
from typing import NamedTuple, TypeVar, cast

from wirecheck.circuit.companions import Companions
from wirecheck.circuit.conduction import Conduction
from wirecheck.circuit.nets import Element, Nets
from wirecheck.model.diagram import EARTH, UNKNOWN_END, Diagram, Part, Terminal
from wirecheck.model.kind import SourceSpec
from wirecheck.model.text import Span
from wirecheck.rules.sides import Sides

_Topic = TypeVar("_Topic")

#: What may be recorded as found wrong with a lead and changes what is one conductor.
_FOUND_ON_LEADS = frozenset({"broken", "touches"})


class Supply(NamedTuple):
    """A 24 V source: the secondary of a transformer, or a supply behind a part's own terminals.

    ``hot`` is the side that is to be switched, ``common`` the side that goes straight to the loads.
    """

    part: Part
    hot: Terminal
    common: Terminal
    element: Element


class Facts:
    """One diagram, its nets, and what follows from them."""

    def __init__(self, diagram: Diagram, nets: Nets) -> None:
        """Nothing is worked out before it is asked for."""
        self.diagram = diagram
        self.nets = nets
        self._topics: dict[Callable[[Facts], object], object] = {}

    def once(self, work: Callable[[Facts], _Topic]) -> _Topic:
        """What ``work`` says of this diagram, worked out once: the facts of a topic of its own."""
        if work not in self._topics:
            self._topics[work] = work(self)
        return cast(_Topic, self._topics[work])

    @cached_property
    def as_wired(self) -> Facts:
        """The same diagram as if no lead were found broken or touching metal.

        Rules that ask where the leads land look here: a lead that is broken is still landed right.
        """
        leads = self.diagram.leads
        if not any(_FOUND_ON_LEADS & lead.given.keys() for lead in leads):
            return self
        whole = tuple(
            lead._replace(given={k: v for k, v in lead.given.items() if k not in _FOUND_ON_LEADS})
            for lead in leads
        )
        diagram = replace(self.diagram, leads=whole)
        return Facts(diagram, Nets(diagram))

    # ---- parts -----------------------------------------------------------------------------

    @cached_property
    def _by_family(self) -> dict[str, list[Part]]:
        families: dict[str, list[Part]] = {}
        for part in self.diagram.parts.values():
            families.setdefault(part.family, []).append(part)
        return families

    def of(self, *families: str) -> Iterator[Part]:
        """The parts of some families, in the order of the text within each."""
        for family in families:
            yield from self._by_family.get(family, ())

    def terminal(self, part: Part, role: str) -> Terminal | None:
        """The (first) terminal of a part with a role."""
        found = part.with_role(role)
        return found[0] if found else None

    def role(self, terminal: Terminal) -> str:
        """The role of a terminal; "" for earth, splices and ends of no part."""
        spec = self.diagram.spec(terminal)
        return spec.role if spec else ""

    def part(self, terminal: Terminal) -> Part | None:
        """The part a terminal belongs to."""
        return self.diagram.parts.get(terminal.part)

    # ---- names and places ------------------------------------------------------------------

    def show(self, terminal: Terminal) -> str:
        """A terminal as people read it."""
        return self.diagram.show(terminal)

    def lead(self, number: int) -> str:
        """A lead as people read it."""
        return self.diagram.lead_name(self.diagram.leads[number])

    def lead_span(self, number: int) -> Span:
        """Where a lead stands in the text."""
        return self.diagram.leads[number].span

    def end_span(self, number: int, terminal: Terminal) -> Span:
        """Where the end of a lead that lands on ``terminal`` stands in the text."""
        lead = self.diagram.leads[number]
        return lead.a_span if lead.a == terminal else lead.b_span

    def place(self, terminal: Terminal) -> Span:
        """The place to point at for a terminal: the first lead's end on it, else its part."""
        leads = self.nets.leads_at(terminal)
        if leads:
            return self.end_span(leads[0], terminal)
        part = self.part(terminal)
        if part is not None:
            return part.name_span
        splice = self.diagram.splices.get(terminal.part)
        return splice.name_span if splice else Span(self.diagram.source, 0, 0)

    def other_end(self, number: int, terminal: Terminal) -> Terminal:
        """The other end of a lead."""
        lead = self.diagram.leads[number]
        return lead.b if lead.a == terminal else lead.a

    # ---- conductors ------------------------------------------------------------------------

    def net(self, terminal: Terminal) -> int:
        """The net of a terminal."""
        return self.nets.net_of[terminal]

    def joined(self, a: Terminal | None, b: Terminal | None) -> bool:
        """Whether two terminals are one conductor; False where one is not there."""
        return a is not None and b is not None and self.nets.joined(a, b)

    def is_wired(self, terminal: Terminal) -> bool:
        """Whether a lead lands on the terminal."""
        return self.nets.is_wired(terminal)

    @cached_property
    def earth(self) -> int:
        """The net of the unit's earth."""
        return self.net(EARTH)

    @cached_property
    def _grounded(self) -> set[int]:
        """The net of earth, and those of metal whose bond carries the current of an earth fault."""
        bonds = (
            element
            for part in self.diagram.parts.values()
            if part.structure.bonds
            for element in self.nets.elements_of[part.key]
            if element.type == "bond" and element.name in ("solid", "poor")
        )
        return {self.earth, *(bond.net_a for bond in bonds)}

    def is_grounded(self, terminal: Terminal) -> bool:
        """Whether a conductor reaches earth, be it through rust; only a fault may lean on that."""
        return self.net(terminal) in self._grounded

    @cached_property
    def sides(self) -> Sides:
        """Which side of which supply a terminal is on, earth and burner grounds left out."""
        return Sides(self)

    @cached_property
    def _untraced(self) -> set[int]:
        return {net for terminal, net in self.nets.net_of.items() if terminal.part == UNKNOWN_END}

    def is_traced(self, terminal: Terminal) -> bool:
        """False where a lead of the terminal's net was not traced: nothing there is missing."""
        return self.net(terminal) not in self._untraced

    @cached_property
    def conduction(self) -> Conduction:
        """Regions and ways through contacts."""
        return Conduction(self.nets)

    # ---- supplies --------------------------------------------------------------------------

    @cached_property
    def supplies(self) -> list[Supply]:
        """Every 24 V source, in the order of the text."""
        return [
            Supply(part, element.a, element.b, element)
            for part in self.diagram.parts.values()
            for element in self.nets.elements_of[part.key]
            if isinstance(element.spec, SourceSpec) and self._is_24_v(element)
        ]

    def _is_24_v(self, element: Element) -> bool:
        spec = self.diagram.spec(element.a)
        return spec is not None and spec.circuit == "24V"

    @cached_property
    def hot_regions(self) -> dict[int, list[Supply]]:
        """Supplies whose hot side reaches a region."""
        return self._by_region("hot")

    @cached_property
    def common_regions(self) -> dict[int, list[Supply]]:
        """Supplies whose common side reaches a region."""
        return self._by_region("common")

    def _by_region(self, side: str) -> dict[int, list[Supply]]:
        regions: dict[int, list[Supply]] = {}
        for supply in self.supplies:
            net = self.net(getattr(supply, side))
            regions.setdefault(self.conduction.region(net), []).append(supply)
        return regions

    def hot_supplies(self, terminal: Terminal) -> list[Supply]:
        """Supplies whose hot side may reach a terminal through contacts."""
        return self.hot_regions.get(self.conduction.region(self.net(terminal)), [])

    def common_supplies(self, terminal: Terminal) -> list[Supply]:
        """Supplies whose common side may reach a terminal through contacts."""
        return self.common_regions.get(self.conduction.region(self.net(terminal)), [])

    # ---- what belongs to an ignition control -----------------------------------------------

    @cached_property
    def _companions(self) -> Companions:
        return Companions(self.diagram)

    def companion(self, control: Part, family: str) -> Part | None:
        """The burner, valve or damper of a control: the one a lead joins it to, or the only one."""
        return self._companions.of(control, family)
