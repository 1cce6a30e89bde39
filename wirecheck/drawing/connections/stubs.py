"""What stands beside a terminal: marks, lettering, and the sign of an end that lands nowhere.

It has a strip of its own along the edge of each column, so that no lead runs through it but the one
that it belongs to.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import NamedTuple

from wirecheck.drawing.connections.blocks import SLOT, End, Holder, Sketch, holder_of
from wirecheck.drawing.connections.edges import Side
from wirecheck.drawing.connections.lead_words import LeadWords, LeadWriter
from wirecheck.drawing.connections.marking import MARK_ROOM_PT, Marks
from wirecheck.drawing.connections.passages import Plan
from wirecheck.drawing.symbols.joints import OPEN_END as OPEN_SYMBOL
from wirecheck.drawing.symbols.joints import UNKNOWN_END as UNKNOWN_SYMBOL
from wirecheck.drawing.symbols.supply import EARTH as EARTH_SYMBOL
from wirecheck.drawing.symbols.symbol import Symbol
from wirecheck.model.diagram import EARTH, OPEN_END, Diagram, Terminal

PAD_PT = 4.0
"""Half a terminal's pad, and a little air."""
HOUSING_PT = 12.0
"""Room of a plug's housing or of the ring round the leads of a cable."""
TAIL_PT = 17.0
"""Room of the sign at an end that lands on no block."""
_AIR_PT = 3.0


class Stub(NamedTuple):
    """What is beside one lead's end; `tail` is the sign at its far end, if that lands nowhere."""

    marks: tuple[int, ...]
    words: LeadWords
    tail: Symbol | None


class Bundle(NamedTuple):
    """Neighbouring ends at one edge that are held together, from the upper to the lower."""

    holder: Holder
    first: End
    last: End


class Strip(NamedTuple):
    """The strip along one edge of a column, by its zones from the edge outward, in points.

    Attributes:
        housing: for plugs' housings and the rings of cables.
        marks: for the marks of findings.
        letters: for the lettering of the leads.
        tail: for the signs of ends that land nowhere.
    """

    housing: float = 0.0
    marks: float = 0.0
    letters: float = 0.0
    tail: float = 0.0

    def widened(self, other: Strip) -> Strip:
        """Return a strip with room for both."""
        return Strip(*map(max, self, other))

    @property
    def marks_at(self) -> float:
        """Where the marks begin, from the edge."""
        return PAD_PT + self.housing

    @property
    def letters_at(self) -> float:
        """Where the lettering begins."""
        return self.marks_at + self.marks

    @property
    def tail_at(self) -> float:
        """Where the signs begin."""
        return self.letters_at + self.letters + _AIR_PT

    @property
    def width(self) -> float:
        """The whole strip."""
        return self.tail_at + self.tail


def stubs_of(diagram: Diagram, sketch: Sketch, writer: LeadWriter, marks: Marks) -> dict[End, Stub]:
    """Return what is beside each end that lands on a block, and beside each stray lead."""
    strays = [int(block.key) for block in sketch.blocks if block.type == "stray"]
    found = {End(number, at_b=False): _stray_stub(number, writer, marks) for number in strays}
    for end in sketch.at:
        lead = diagram.leads[end.lead]
        far = lead.a if end.at_b else lead.b
        numbers = tuple(marks.at_end.get(end, ()))
        found[end] = Stub(numbers, writer.at(end), None if end.other in sketch.at else sign(far))
    return found


def _stray_stub(number: int, writer: LeadWriter, marks: Marks) -> Stub:
    """Return what is beside a lead that lands on no block."""
    end = End(number, at_b=False)
    return Stub(tuple(marks.at_end.get(end, ())), writer.at(end), None)


def sign(terminal: Terminal) -> Symbol:
    """Return the symbol for an end that lands on no block."""
    if terminal == EARTH:
        return EARTH_SYMBOL
    return OPEN_SYMBOL if terminal.part == OPEN_END else UNKNOWN_SYMBOL


def bundles(diagram: Diagram, plan: Plan) -> list[Bundle]:
    """Find the neighbouring ends that one plug or one cable holds together."""
    at_edge: dict[tuple[int, Side], list[tuple[int, End]]] = {}
    for end, pin in plan.faces.pins.items():
        at_edge.setdefault((pin.block, pin.side), []).append((pin.offset, end))
    found: list[Bundle] = []
    for ends in at_edge.values():
        for group in _runs_of_oneholder_of(sorted(ends), diagram):
            holder = holder_of(diagram.leads[group[0].lead])
            if holder:
                found.append(Bundle(holder, group[0], group[-1]))
    return found


def _runs_of_oneholder_of(ends: Sequence[tuple[int, End]], diagram: Diagram) -> Iterator[list[End]]:
    group: list[End] = []
    last: tuple[int, Holder | None] = (0, None)
    for offset, end in ends:
        holder = holder_of(diagram.leads[end.lead])
        if group and (offset - last[0] != SLOT or holder != last[1]):
            yield group
            group = []
        if holder is not None:
            group.append(end)
        last = (offset, holder)
    if group:
        yield group


def with_cables(stubs: Mapping[End, Stub], held: Iterable[Bundle]) -> dict[End, Stub]:
    """Return the stubs with the name of each cable at the first of its leads at an edge."""
    found = dict(stubs)
    for bundle in held:
        if bundle.holder.type == "cable":
            stub = found[bundle.first]
            found[bundle.first] = stub._replace(words=stub.words.in_cable(bundle.holder.name))
    return found


def strips(
    sketch: Sketch, plan: Plan, stubs: Mapping[End, Stub], marks: Marks, held: Iterable[Bundle]
) -> dict[tuple[int, Side], Strip]:
    """Measure the strip along each edge of each column, by column and edge."""
    column_of = {block: c for c, column in enumerate(plan.columns) for block in column}
    pins = plan.faces.pins
    found: dict[tuple[int, Side], Strip] = {}

    def need(block: int, side: Side, zones: Strip) -> None:
        edge = (column_of[block], side)
        found[edge] = found.get(edge, Strip()).widened(zones)

    for end, pin in pins.items():
        stub = stubs[end]
        marked = MARK_ROOM_PT * len(stub.marks)
        tail = TAIL_PT if stub.tail else 0.0
        need(pin.block, pin.side, Strip(0.0, marked, stub.words.width_pt, tail))
    for bundle in held:
        pin = pins[bundle.first]
        need(pin.block, pin.side, Strip(housing=HOUSING_PT))
    for (block, row), place in plan.faces.places.items():
        bare = marks.at_terminal.get(sketch.blocks[block].rows[row].terminal)
        if bare:
            need(block, place.side, Strip(marks=MARK_ROOM_PT * len(bare)))
    return found
