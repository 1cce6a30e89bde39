"""Where everything comes to lie on the sheet, in points: boxes, and the lines of the leads."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import NamedTuple

from wirecheck.drawing.connections.blocks import UNIT_PT, End, Sketch
from wirecheck.drawing.connections.edges import LEFT, RIGHT, Side
from wirecheck.drawing.connections.levels import Levels, levels
from wirecheck.drawing.connections.passages import Plan, Route, abreast
from wirecheck.drawing.connections.streets import Run, tracks
from wirecheck.drawing.geometry import Box, Point

TRACK_PT = 6.5
"""Distance of two leads side by side in a street."""

StubRoom = Mapping[tuple[int, Side], float]
"""Points beside the edge of each column (number, edge) that lettering needs: no lead runs there."""


class Routed(NamedTuple):
    """The drawing without its ink.

    Attributes:
        boxes: of the blocks, by number.
        lines: of the leads between two blocks, by number; they end at the edges of the boxes.
        width: of all columns and streets.
        height: from the top to the lowest block or lead.
    """

    boxes: tuple[Box, ...]
    lines: dict[int, tuple[Point, ...]]
    width: float
    height: float


def routed(sketch: Sketch, plan: Plan, room: StubRoom) -> Routed:
    """Give a plan its measures."""
    settled = levels(sketch, plan)
    streets = _runs(plan, settled)
    lanes = [tracks(street) for street in streets]
    column_box, lane_x, width_pt = _across(sketch, plan, room, lanes)
    boxes = [Box(0, 0, 0, 0)] * len(sketch.blocks)
    for number, column in enumerate(plan.columns):
        left, right = column_box[number]
        parts = [sketch.blocks[block] for block in column if sketch.blocks[block].type == "part"]
        boxes_width = max((part.width_pt for part in parts), default=0.0)
        for block in column:
            top = settled.tops[block] * UNIT_PT
            width = (
                boxes_width
                if sketch.blocks[block].type == "part"
                else sketch.blocks[block].width_pt
            )
            middle = (left + right) / 2
            bottom = top + plan.faces.heights[block] * UNIT_PT
            boxes[block] = Box(middle - width / 2, top, middle + width / 2, bottom)
    lines = {route.lead: _line(route, plan, settled, boxes, lane_x) for route in plan.routes}
    lows = [*(box.bottom for box in boxes), *(at.y for line in lines.values() for at in line)]
    return Routed(tuple(boxes), lines, width_pt, max(lows, default=0.0))


def pin_point(end: End, plan: Plan, boxes: Mapping[int, Box] | tuple[Box, ...]) -> Point:
    """Where a lead leaves the edge of its block."""
    pin = plan.faces.pins[end]
    box = boxes[pin.block]
    return Point(box.left if pin.side == LEFT else box.right, box.top + pin.offset * UNIT_PT)


def rough_size(sketch: Sketch, plan: Plan, room: StubRoom) -> tuple[float, float]:
    """Return about the width and height that a plan will take, without working it out."""
    columns = sum(_column_width(sketch, column) for column in plan.columns)
    last = len(plan.columns)
    tracks_wide = sum(
        _street_width(abreast(street), outer=number in (0, last))
        for number, street in enumerate(plan.streets)
    )
    return columns + tracks_wide + sum(room.values()), plan.height * UNIT_PT


def _street_width(count: int, *, outer: bool) -> float:
    """Return the room of so many leads side by side; an outer street without any needs none."""
    return 0.0 if outer and not count else (count + 1) * TRACK_PT


def _column_width(sketch: Sketch, column: Sequence[int]) -> float:
    return max(sketch.blocks[block].width_pt for block in column)


def _runs(plan: Plan, settled: Levels) -> list[list[Run]]:
    """List what runs in each street."""
    streets: list[list[Run]] = [[] for _ in range(len(plan.columns) + 1)]
    for route in plan.routes:
        start, finish = plan.faces.pins[route.start], plan.faces.pins[route.finish]
        side, y = 1 - start.side, settled.tops[start.block] + start.offset
        for step in range(len(route.passages)):
            street = route.street + step
            goal = settled.tracks[route.lead, street]
            streets[street].append(Run(route.lead, side, y, RIGHT, goal))
            side, y = LEFT, goal
        goal = settled.tops[finish.block] + finish.offset
        last = route.street + len(route.passages)
        streets[last].append(Run(route.lead, side, y, 1 - finish.side, goal))
    return streets


def _across(
    sketch: Sketch, plan: Plan, room: StubRoom, lanes: list[dict[int, int]]
) -> tuple[list[tuple[float, float]], dict[tuple[int, int], float], float]:
    """Return the edges of each column, the place of each (lead, street), and the whole width."""
    columns: list[tuple[float, float]] = []
    lane_x: dict[tuple[int, int], float] = {}
    x = 0.0
    for street, lane in enumerate(lanes):
        x += room.get((street - 1, RIGHT), 0.0)
        count = max(lane.values(), default=-1) + 1
        for lead, track in lane.items():
            lane_x[lead, street] = x + (track + 1) * TRACK_PT
        x += _street_width(count, outer=street in (0, len(plan.columns))) + room.get(
            (street, LEFT), 0.0
        )
        if street < len(plan.columns):
            width = _column_width(sketch, plan.columns[street])
            columns.append((x, x + width))
            x += width
    return columns, lane_x, x


def _line(
    route: Route,
    plan: Plan,
    settled: Levels,
    boxes: list[Box],
    lane_x: dict[tuple[int, int], float],
) -> tuple[Point, ...]:
    """Return the corners of a lead, from its end a to its end b."""
    first, last = (pin_point(end, plan, tuple(boxes)) for end in (route.start, route.finish))
    points = [first]
    heights = [settled.tracks[route.lead, route.street + n] for n in range(len(route.passages))]
    for step, y in enumerate([*(h * UNIT_PT for h in heights), last.y]):
        x = lane_x.get((route.lead, route.street + step))
        if x is not None:
            points += [Point(x, points[-1].y), Point(x, y)]
    points.append(last)
    return tuple(reversed(points)) if route.start.at_b else tuple(points)
