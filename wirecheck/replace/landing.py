"""Where every lead end on an old device goes, which leads are left over, and which are missing.

A lead goes to the terminal of the same role. Inside the unit, leads that only the old one needs are
used again for what only the new one needs, where one end stays; the rest is left over, and what
then is missing is to be run.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final, NamedTuple

import networkx as nx

from wirecheck.model.diagram import EARTH, Lead, LeadRole, Part, Terminal
from wirecheck.model.quantity import Quantity, conductor_area_mm2
from wirecheck.parts.amounts import each_quantity
from wirecheck.replace.hookup import Hookup, Point, hookups, terminal_at
from wirecheck.replace.request import Request
from wirecheck.replace.unit import Slot, Unit, is_millivolt
from wirecheck.replace.ways import Way, ways

Ends = tuple[Terminal, Terminal]

#: Where the leads of a valve that the thermostat fed go once a control feeds it.
_TO_THE_CONTROL: Final = {"operator": "call", "operator-common": "control-common"}

#: Sizes as the hook-ups state them.
_GAUGE: Final = re.compile(r"(\d+) AWG")
#: Nominal cross-sections (IEC 60228, from memory).
_METRIC_MM2: Final = (0.5, 0.75, 1.0, 1.5, 2.5, 4.0)

#: What of new devices goes to the unit's earth (common practice, no source).
_EARTHED: tuple[tuple[Slot, str, str, str], ...] = (
    ("supply", "secondary-common", "green, 18 AWG", "earths the common side"),
    ("line", "line-ground", "green, 14 AWG", "ground of the line"),
)


class NewLead(NamedTuple):
    """A lead to run: where, what it is made of, and what for."""

    a: Terminal
    b: Terminal
    lead: str
    why: str


@dataclass(frozen=True)
class Landings:
    """What becomes of the leads.

    Attributes:
        ends: where each lead of the diagram as found lands, in its order; None: left over.
        new: leads to run.
    """

    ends: tuple[Ends | None, ...]
    new: tuple[NewLead, ...]


def landings_of(request: Request, after: Unit, out: tuple[Part, ...]) -> Landings:
    """Land every lead anew; ``after`` is the unit with the new devices, ``out`` what comes out."""
    return _Landing(request, after, out).land()


class _Landing:
    """The work of it: what the old unit needs and the new one not, and the other way round."""

    def __init__(self, request: Request, after: Unit, out: tuple[Part, ...]) -> None:
        self.request = request
        self.before = request.unit
        self.after = after
        self.gone = {part.key for part in out}
        self.swapped = {swap.old.key: swap.new.part for swap in request.swaps}
        old = {each.points for each in hookups(self.before)}
        new = hookups(after)
        self.made = [each for each in new if each.points not in old]
        self.undone = old - {each.points for each in new}

    def land(self) -> Landings:
        """Land every lead; those of ways that the new unit has no use for are spare."""
        ends: list[Ends | None] = [self._by_role(lead) for lead in self.request.diagram.leads]
        spare: list[Way] = []
        for way in ways(self.request.nets):
            points = self._point(way.start), self._point(way.end)
            if None not in points and frozenset(points) in self.undone:
                spare.append(way)
                for number in way.leads:
                    ends[number] = None
        new = tuple(self._completed(ends, spare))
        return Landings(tuple(ends), new)

    def _point(self, end: Terminal) -> Point | None:
        slot = self.before.slot_of(end.part)
        spec = self.request.diagram.spec(end)
        return Point(slot, spec.role) if slot and spec else None

    # ---- by role -------------------------------------------------------------------------------

    def _by_role(self, lead: Lead) -> Ends | None:
        a, b = self._followed(lead.a), self._followed(lead.b)
        return None if a is None or b is None or a == b else (a, b)

    def _followed(self, end: Terminal) -> Terminal | None:
        """Where an end goes with its device; None if nothing there takes it."""
        if end.part in self.gone:
            return None
        moved = self._to_the_control(end)
        if moved is not None:
            return moved
        new = self.swapped.get(end.part)
        return end if new is None else counterpart(self.request.diagram.parts[end.part], end, new)

    def _to_the_control(self, end: Terminal) -> Terminal | None:
        """The call lead and the common of a valve that had no control before it."""
        valve = self.before.parts.get("valve")
        fitted = self.request.fitted.get("control")
        if valve is None or fitted is None or end.part != valve.key:
            return None
        role = valve.structure.terminals[end.name].role
        if role == "generator-hot" and is_millivolt(valve):  # it fed the thermostat
            return terminal_at(self.after, Point("supply", "secondary-hot"))
        return fitted.terminal(_TO_THE_CONTROL.get(role, ""))

    # ---- what is to be made --------------------------------------------------------------------

    def _completed(self, ends: list[Ends | None], spare: list[Way]) -> Iterator[NewLead]:
        """Use spare ways for what is to be made; yield what is left to run."""
        left: list[Hookup] = []
        for each in self.made:
            used = next((way for way in spare if self._fits(way, each)), None)
            if used is None:
                left.append(each)
            else:
                spare.remove(used)
                self._use(used, each, ends)
        joined = _joined(ends)
        for each in left:
            a, b = terminal_at(self.after, each.a), terminal_at(self.after, each.b)
            if a and b and each.lead and not _are_joined(joined, a, b):
                joined.add_edge(a, b)
                yield NewLead(a, b, self._sized(each.lead), each.why)
        yield from self._earthed()

    def _earthed(self) -> Iterator[NewLead]:
        """What of the new devices goes to the unit's earth."""
        for slot, role, lead, why in _EARTHED:
            fitted = self.request.fitted.get(slot)
            end = fitted.terminal(role) if fitted else None
            if end is not None:
                yield NewLead(end, EARTH, self._sized(lead), why)

    def _sized(self, lead: str) -> str:
        """The size in square millimetres, where the diagram's leads have theirs in them."""
        sizes = (each.given.get("size") for each in self.request.diagram.leads)
        units = {each.value.unit for each in sizes if each and isinstance(each.value, Quantity)}
        return _GAUGE.sub(_in_mm2, lead) if units == {"mm2"} else lead

    def _fits(self, way: Way, wanted: Hookup) -> bool:
        """Whether a spare way has one end where it is wanted, and can be moved at the other."""
        leads = [self.request.diagram.leads[number] for number in way.leads]
        if any(lead.role is LeadRole.JUMPER or not lead.conducts for lead in leads):
            return False
        generator = self.before.parts.get("generator")
        if generator is not None and generator.key in (way.start.part, way.end.part):
            return False  # its leads come and go with it
        kept = {self._followed(way.start), self._followed(way.end)} - {None}
        return bool(kept & {terminal_at(self.after, wanted.a), terminal_at(self.after, wanted.b)})

    def _use(self, way: Way, wanted: Hookup, ends: list[Ends | None]) -> None:
        """Land a spare way where it is wanted; its joints stay as they are."""
        a, b = terminal_at(self.after, wanted.a), terminal_at(self.after, wanted.b)
        start, end = (self._followed(each) for each in (way.start, way.end))
        lands = {way.start: a, way.end: b} if start == a or end == b else {way.start: b, way.end: a}
        for number in way.leads:
            lead = self.request.diagram.leads[number]
            ends[number] = (lands.get(lead.a) or lead.a, lands.get(lead.b) or lead.b)


def _in_mm2(gauge: re.Match[str]) -> str:
    """The next size up of the metric series."""
    area = conductor_area_mm2(float(gauge[1]))
    return f"{next(size for size in _METRIC_MM2 if size >= area):g} mm2"


def counterpart(old: Part, end: Terminal, new: Part) -> Terminal | None:
    """The terminal of a new device that stands for one of an old one.

    It plays the same role. Of several that do, it bears the same name, or is the tap for the same
    volts, or else stands in the same place among them.
    """
    role = old.structure.terminals[end.name].role
    olds = [terminal.name for terminal in old.with_role(role)]
    alike = [terminal.name for terminal in new.with_role(role)]
    if end.name in alike and (len(olds) > 1 or len(alike) > 1):
        return Terminal(old.key, end.name)
    place = olds.index(end.name)
    by_place = alike[place] if place < len(alike) else ""
    name = _tap(old, new, alike) or by_place
    return Terminal(old.key, name) if name else None


def _tap(old: Part, new: Part, alike: list[str]) -> str:
    """The tap of a winding with several for the volts that the old one was made for."""
    attribute = new.structure.terminals[alike[0]].each if len(alike) > 1 else None
    volts = each_quantity(old.values.get(attribute)) if attribute else ()
    taps = [f"{each.low:g}{each.unit}" for each in volts]
    return taps[0] if len(taps) == 1 and taps[0] in alike else ""


def _joined(ends: list[Ends | None]) -> nx.Graph[Terminal]:
    """The leads as they land then; over the unit's earth nothing counts as joined."""
    graph: nx.Graph[Terminal] = nx.Graph()
    graph.add_edges_from(each for each in ends if each is not None and EARTH not in each)
    return graph


def _are_joined(graph: nx.Graph[Terminal], a: Terminal, b: Terminal) -> bool:
    """Whether leads run from one terminal to another."""
    return a in graph and b in graph and bool(nx.has_path(graph, a, b))
