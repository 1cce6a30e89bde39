"""By which gap a lead crosses a column, and how many crossings an arrangement has.

A column of n blocks has n + 1 passages: above the first, between neighbours, below the last. In
each street it runs through a lead is a chord between two points of the street's edge; two leads
must cross there when their points alternate round the street, and need not otherwise.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from wirecheck.drawing.connections.blocks import End, Sketch
from wirecheck.drawing.connections.edges import LEFT, RIGHT, Side
from wirecheck.drawing.connections.faces import Faces, stack_height

_CROSSING = 14.0
"""What a crossing counts, beside a unit of height that a lead runs."""
_COLUMN = 10.0
"""What a column crossed counts."""
_UNIT_HIGH = 6.0
"""What a unit of the sheet's height counts."""
_TRACK_WIDE = 6.0
"""What a lead more side by side in a street counts: it makes the sheet wider."""
_NEARLY = 1e-3
"""Tells leads in one passage apart by where they go."""


class Route(NamedTuple):
    """How a lead runs, from left to right.

    Attributes:
        lead: its number.
        start: its end in the leftmost street, and `finish` the one in the rightmost.
        street: number of the leftmost street.
        passages: for each column crossed, from the left, the number of the passage.
    """

    lead: int
    start: End
    finish: End
    street: int
    passages: tuple[int, ...]


class Chord(NamedTuple):
    """A lead within one street: where it comes in and where it goes out, heights in units."""

    lead: int
    side_1: Side
    y_1: float
    side_2: Side
    y_2: float


class Plan(NamedTuple):
    """Blocks in columns with every lead's way between them.

    Attributes:
        columns: numbers of the blocks, each column from the top.
        faces: the edges of the blocks.
        routes: of the leads between two blocks.
        streets: what runs in each street.
        height: of the highest column with the leads that pass between its blocks, in units.
        cost: the less, the better the sheet.
    """

    columns: tuple[tuple[int, ...], ...]
    faces: Faces
    routes: tuple[Route, ...]
    streets: tuple[tuple[Chord, ...], ...]
    height: int
    cost: float


def plan(sketch: Sketch, columns: Sequence[Sequence[int]], faces: Faces) -> Plan:
    """Choose the passages of all leads for blocks stacked as in `faces.tops`."""
    column_of = {block: c for c, column in enumerate(columns) for block in column}
    gaps = _gap_heights(columns, faces)
    routes = tuple(_route(lead, column_of, gaps, faces) for lead in sketch.wires)
    streets = _chords(routes, gaps, faces, len(columns) + 1)
    height = _height(columns, faces, routes)
    cost = _cost(routes, streets) + _UNIT_HIGH * height
    return Plan(tuple(map(tuple, columns)), faces, routes, tuple(map(tuple, streets)), height, cost)


def _height(columns: Sequence[Sequence[int]], faces: Faces, routes: Sequence[Route]) -> int:
    passing = [0] * len(columns)
    for route in routes:
        for column in range(route.street, route.street + len(route.passages)):
            passing[column] += 1
    return max(
        (
            stack_height(column, faces.heights) + passing[number]
            for number, column in enumerate(columns)
        ),
        default=0,
    )


def _gap_heights(columns: Sequence[Sequence[int]], faces: Faces) -> list[list[float]]:
    """Middle of each passage of each column; those above and below lie outside all columns."""
    tops, heights = faces.tops, faces.heights
    lowest = max((tops[b] + heights[b] for column in columns for b in column), default=0)
    gaps = []
    for column in columns:
        between = [
            (tops[upper] + heights[upper] + tops[lower]) / 2 for upper, lower in pairwise(column)
        ]
        first = tops[column[0]] - 3.0 if column else -3.0
        last = tops[column[-1]] + heights[column[-1]] + 3.0 if column else lowest + 3.0
        gaps.append([first, *between, last])
    return gaps


def _route(
    lead: int, column_of: dict[int, int], gaps: Sequence[Sequence[float]], faces: Faces
) -> Route:
    ends = []
    for end in (End(lead, at_b=False), End(lead, at_b=True)):
        pin = faces.pins[end]
        ends.append((column_of[pin.block] + pin.side, end))
    (street, start), (last, finish) = sorted(ends, key=lambda item: item[0])
    if street == last:
        return Route(lead, start, finish, street, ())
    goal = faces.level(finish)
    # Shortest way over the passages of each column in turn: cost, height and passages so far.
    ways: list[tuple[float, float, tuple[int, ...]]] = [(0.0, float(faces.level(start)), ())]
    low, high = sorted((faces.level(start), goal))
    for column in gaps[street:last]:
        # Those on the way, and one beyond at either end.
        first = max(0, bisect_left(column, low) - 1)
        near = range(first, min(len(column), bisect_right(column, high) + 1))
        ways = [
            min((cost + abs(y - column[n]), column[n], (*taken, n)) for cost, y, taken in ways)
            for n in near
        ]
    _, _, passages = min((cost + abs(y - goal), y, taken) for cost, y, taken in ways)
    return Route(lead, start, finish, street, passages)


def _chords(
    routes: Sequence[Route], gaps: Sequence[Sequence[float]], faces: Faces, streets: int
) -> list[list[Chord]]:
    """List what runs in each street."""
    found: list[list[Chord]] = [[] for _ in range(streets)]
    for route in routes:
        start, finish = faces.pins[route.start], faces.pins[route.finish]
        y, goal = float(faces.level(route.start)), float(faces.level(route.finish))
        lean = (y + goal) * _NEARLY
        side = RIGHT if start.side == LEFT else LEFT
        for step, passage in enumerate(route.passages):
            street = route.street + step
            gap = gaps[street][passage] + lean
            found[street].append(Chord(route.lead, side, y, RIGHT, gap))
            side, y = LEFT, gap
        last = RIGHT if finish.side == LEFT else LEFT
        found[route.street + len(route.passages)].append(Chord(route.lead, side, y, last, goal))
    return found


def _cost(routes: Sequence[Route], streets: Sequence[Sequence[Chord]]) -> float:
    total = _COLUMN * sum(len(route.passages) for route in routes)
    for street in streets:
        total += sum(abs(chord.y_1 - chord.y_2) for chord in street)
        total += _CROSSING * crossings(street) + _TRACK_WIDE * abreast(street)
    return total


def crossings(street: Sequence[Chord]) -> int:
    """Count the pairs of leads that must cross in a street."""
    round_edge = sorted(
        tuple(sorted((_turn(chord.side_1, chord.y_1), _turn(chord.side_2, chord.y_2))))
        for chord in street
    )
    count = 0
    for place, (start, end) in enumerate(round_edge):
        for other_start, other_end in round_edge[place + 1 :]:
            if other_start >= end:
                break
            count += start < other_start and other_end > end
    return count


def abreast(street: Sequence[Chord]) -> int:
    """Count the leads that run up or down side by side where a street is fullest."""
    level = most = 0
    changes = [(min(chord.y_1, chord.y_2), 1) for chord in street if chord.y_1 != chord.y_2]
    changes += [(max(chord.y_1, chord.y_2), -1) for chord in street if chord.y_1 != chord.y_2]
    for _, change in sorted(changes):
        level += change
        most = max(most, level)
    return most


def _turn(side: Side, y: float) -> float:
    """Place of a point on the way round a street: down its left edge, up its right one."""
    return y if side == LEFT else 1e9 - y
