"""What the edges of the blocks look like: which lead leaves at which height.

Terminals stand in the order of the part library, downwards or upwards; the leads at one terminal in
the order of the heights that they go to.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple

from wirecheck.drawing.connections.blocks import SLOT, End, Sketch
from wirecheck.drawing.connections.edges import LEFT, RIGHT, Side, edges

GAP = 3
"""Units between two blocks where no lead passes."""
_STRAY_UNITS = 3

Flips = frozenset[tuple[int, Side]]
"""Edges (block, side) whose terminals are listed upwards."""


class Pin(NamedTuple):
    """Where a lead's end leaves: the block, the edge, units below the block's top."""

    block: int
    side: Side
    offset: int


class Place(NamedTuple):
    """Where a terminal is drawn: its edge, and its first and last slot in units below the top."""

    side: Side
    first: int
    last: int


@dataclass(frozen=True, slots=True)
class Faces:
    """The edges of all blocks for one choice of columns.

    Attributes:
        pins: where each lead's end leaves.
        places: where each terminal is drawn, by block and row.
        heights: of the blocks, in units.
        tops: of the blocks if nothing passed between them, in units.
    """

    pins: dict[End, Pin]
    places: dict[tuple[int, int], Place]
    heights: list[int]
    tops: list[int]

    def level(self, end: End) -> int:
        """Height of a lead's end for blocks stacked as in `tops`."""
        pin = self.pins[end]
        return self.tops[pin.block] + pin.offset


class _Line(NamedTuple):
    """A terminal of a block: its edge, its middle below the top, what lands at each edge."""

    row: int
    side: Side
    middle: int
    ends: tuple[tuple[End, ...], tuple[End, ...]]


_Lines = tuple[_Line, ...]


class FaceBuilder:
    """Builds the faces of one sketch for many choices of columns; remembers what comes again."""

    def __init__(self, sketch: Sketch) -> None:
        """Remember nothing yet."""
        self._sketch = sketch
        self._edges: dict[tuple[int, ...], dict[End, Side]] = {}
        self._lines: dict[tuple[tuple[int, ...], int, bool, bool], tuple[_Lines, int]] = {}

    def build(self, columns: Sequence[Sequence[int]], flips: Flips) -> Faces:
        """Return the faces for blocks in these columns, each listed from the top."""
        sketch = self._sketch
        where = [0] * len(sketch.blocks)
        for number, column in enumerate(columns):
            for block in column:
                where[block] = number
        column_of = tuple(where)
        laid = [self._laid(column_of, block, flips) for block in range(len(sketch.blocks))]
        heights = [height for _, height in laid]
        tops = _stacked(columns, heights)
        middles = {
            (block, line.row): tops[block] + line.middle
            for block, (lines, _) in enumerate(laid)
            for line in lines
        }

        def target(end: End) -> tuple[int, End]:
            """Upwards first; earth and loose ends, which go nowhere, last."""
            there = sketch.at.get(end.other)
            return (1 << 30 if there is None else middles[there], end)

        pins: dict[End, Pin] = {}
        places: dict[tuple[int, int], Place] = {}
        for block, (lines, _) in enumerate(laid):
            for line in lines:
                for side in (LEFT, RIGHT):
                    landing = line.ends[side]
                    first = line.middle - len(landing) + 1
                    order = sorted(landing, key=target) if len(landing) > 1 else landing
                    for step, end in enumerate(order):
                        pins[end] = Pin(block, side, first + SLOT * step)
                half = max(1, *map(len, line.ends)) - 1
                places[block, line.row] = Place(line.side, line.middle - half, line.middle + half)
        return Faces(pins, places, heights, tops)

    def _laid(self, column_of: tuple[int, ...], block: int, flips: Flips) -> tuple[_Lines, int]:
        """Return a block's terminals at their heights, and its height."""
        left, right = (block, LEFT) in flips, (block, RIGHT) in flips
        key = (column_of, block, left, right)
        if key not in self._lines:
            if column_of not in self._edges:
                self._edges[column_of] = edges(self._sketch, column_of)
            side_of = self._edges[column_of]
            self._lines[key] = _laid_out(self._sketch, block, side_of, (left, right))
        return self._lines[key]


def _laid_out(
    sketch: Sketch, number: int, side_of: dict[End, Side], flipped: tuple[bool, bool]
) -> tuple[_Lines, int]:
    block = sketch.blocks[number]
    if block.type == "stray":
        return (), _STRAY_UNITS
    if block.both_sides:
        return _two_sided(sketch, number, side_of, upwards=flipped[LEFT])
    at_edge: tuple[list[int], list[int]] = ([], [])
    load = [0, 0]
    for row, line in enumerate(block.rows):
        if line.ends:
            side = side_of[line.ends[0]]
            at_edge[side].append(row)
            load[side] += len(line.ends)
    for row, line in enumerate(block.rows):
        if not line.ends:
            side = LEFT if load[LEFT] <= load[RIGHT] else RIGHT
            at_edge[side].append(row)
            load[side] += 1
    lines = []
    for side in (LEFT, RIGHT):
        at = block.heading_units
        for row in sorted(at_edge[side], reverse=flipped[side]):
            ends = block.rows[row].ends
            slots = max(1, len(ends))
            both = (ends, ()) if side == LEFT else ((), ends)
            lines.append(_Line(row, side, at + slots, both))
            at += SLOT * slots
    return tuple(lines), block.heading_units + SLOT * max(load)


def _two_sided(
    sketch: Sketch, number: int, side_of: dict[End, Side], *, upwards: bool
) -> tuple[_Lines, int]:
    block = sketch.blocks[number]
    at = block.heading_units
    lines = []
    rows = list(enumerate(block.rows))
    for row, line in reversed(rows) if upwards else rows:
        left = tuple(end for end in line.ends if side_of[end] == LEFT)
        right = tuple(end for end in line.ends if side_of[end] == RIGHT)
        slots = max(1, len(left), len(right))
        lines.append(_Line(row, LEFT, at + slots, (left, right)))
        at += SLOT * slots
    return tuple(lines), at


def _stacked(columns: Sequence[Sequence[int]], heights: Sequence[int]) -> list[int]:
    """Stack the blocks of each column, shorter columns about the middle of the highest."""
    tops = [0] * len(heights)
    totals = [stack_height(column, heights) for column in columns]
    for column, total in zip(columns, totals, strict=True):
        at = (max(totals) - total) // 2
        for block in column:
            tops[block] = at
            at += heights[block] + GAP
    return tops


def stack_height(column: Sequence[int], heights: Sequence[int]) -> int:
    """Height of blocks one above the other, in units."""
    return sum(heights[block] + GAP for block in column) - (GAP if column else 0)
