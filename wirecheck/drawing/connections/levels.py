"""At which height each block stands and each lead crosses a column.

All heights are whole units. No two leads may come into a street at one height from opposite sides
unless it is one lead, running straight: then no two leads ever share a piece of their way, whatever
tracks they get. The columns are settled one by one from the highest outward, each by the cheapest
choice of heights for its blocks and passing leads in their order (dynamic programming).
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import NamedTuple

from wirecheck.drawing.connections.blocks import End, Sketch
from wirecheck.drawing.connections.edges import LEFT, RIGHT, Side
from wirecheck.drawing.connections.passages import Plan, Route

_BESIDE_BLOCK = 2
"""Units between a block and a lead that passes it."""
_BETWEEN_BLOCKS = 3
_STRAIGHT = 5.0
"""What a lead gains that runs straight through a street, in units of height."""
_JOG = 2.0
"""What the smallest step costs on top: it looks like a slip of the pen."""
_TOO_LOW = 3.0
"""What a unit below the foot of the highest column counts."""
_DRIFT = 0.05
"""What a unit away from the even stack counts."""
_NEVER = float("inf")

_Known = dict[tuple[int, Side], dict[int, int]]
"""For each street and each of its edges the lead at each height where one comes in."""


class Item(NamedTuple):
    """A block, or a lead that passes (then `lead` is its number and `block` -1).

    `faces` are the points at which leads come out of it: edge, units below its top, lead.
    """

    block: int
    lead: int
    height: int
    faces: tuple[tuple[Side, int, int], ...]
    wish: int


class Levels(NamedTuple):
    """Heights in units from the top of the drawing.

    Attributes:
        tops: of each block.
        tracks: of each lead in each column that it crosses, by (lead, column).
    """

    tops: dict[int, int]
    tracks: dict[tuple[int, int], int]


def levels(sketch: Sketch, plan: Plan) -> Levels:
    """Settle the heights of a plan."""
    stacks = [_items(number, sketch, plan) for number in range(len(plan.columns))]
    foot = max((_least_height(stack) for stack in stacks), default=0)
    settled = Levels({}, {})
    known: _Known = {}
    anchor = max(range(len(stacks)), key=lambda number: _least_height(stacks[number]), default=0)
    outward = [*range(anchor, len(stacks)), *range(anchor - 1, -1, -1)]
    for number in [*outward, *outward]:
        _settle(number, stacks[number], foot, known, settled)
    return settled


def _items(number: int, sketch: Sketch, plan: Plan) -> list[Item]:
    """List what is in a column from the top: leads that pass, a block, leads that pass again."""
    column = plan.columns[number]
    passing: list[list[tuple[float, int]]] = [[] for _ in range(len(column) + 1)]
    for route in plan.routes:
        step = number - route.street
        if 0 <= step < len(route.passages):
            passing[route.passages[step]].append((_lean(route, step, plan), route.lead))
    wired = set(sketch.wires)
    points: dict[int, list[tuple[Side, int, int]]] = {block: [] for block in column}
    for end, pin in plan.faces.pins.items():
        if pin.block in points and end.lead in wired:
            points[pin.block].append((pin.side, pin.offset, end.lead))
    stack: list[Item] = []
    for gap, leads in enumerate(passing):
        for _, lead in sorted(leads):
            faces = ((LEFT, 0, lead), (RIGHT, 0, lead))
            stack.append(Item(-1, lead, 0, faces, -1))
        if gap < len(column):
            block = column[gap]
            height, top = plan.faces.heights[block], plan.faces.tops[block]
            stack.append(Item(block, -1, height, tuple(points[block]), top))
    return stack


def _lean(route: Route, step: int, plan: Plan) -> float:
    """Sort the leads of one passage by the heights that they come from and go to."""
    faces = plan.faces

    def at(place: int, end: End, fallback: int) -> float:
        if 0 <= place < len(route.passages):
            column = plan.columns[route.street + place]
            gap = route.passages[place]
            block = column[min(gap, len(column) - 1)]
            return faces.tops[block] + (faces.heights[block] + 3.0 if gap == len(column) else -3.0)
        return float(faces.level(end)) + fallback

    return at(step - 1, route.start, 0) + at(step + 1, route.finish, 0)


def _gap(upper: Item, lower: Item) -> int:
    if upper.block >= 0 and lower.block >= 0:
        return _BETWEEN_BLOCKS
    return 1 if upper.block < 0 and lower.block < 0 else _BESIDE_BLOCK


def _least_height(stack: Sequence[Item]) -> int:
    gaps = sum(_gap(upper, lower) for upper, lower in pairwise(stack))
    return gaps + sum(item.height for item in stack)


def _settle(
    number: int,
    stack: Sequence[Item],
    foot: int,
    known: _Known,
    settled: Levels,
) -> None:
    """Find the heights of one column, and note in `known` where its leads come out."""
    # What faces this column across the street on its left, and across the one on its right.
    taken = {LEFT: known.get((number, LEFT), {}), RIGHT: known.get((number + 1, RIGHT), {})}
    facing = {side: {lead: y for y, lead in points.items()} for side, points in taken.items()}
    lowest = max((y for points in taken.values() for y in points), default=0)
    room = max(lowest + 2, foot) + _least_height(stack) + 2
    costs: list[float] = []
    choices: list[list[int]] = []
    for place, item in enumerate(stack):
        own = [_cost(item, y, foot, facing, taken) for y in range(room)]
        if not place:
            costs, step = own, []
        else:
            step = _cheapest_above(costs)
            down = stack[place - 1].height + _gap(stack[place - 1], item)
            costs = [own[y] + costs[step[y - down]] if y >= down else _NEVER for y in range(room)]
            step = [step[y - down] if y >= down else 0 for y in range(room)]
        choices.append(step)
    heights = _traced(costs, choices)
    known[number, RIGHT], known[number + 1, LEFT] = {}, {}
    for item, y in zip(stack, heights, strict=True):
        if item.block >= 0:
            settled.tops[item.block] = y
        else:
            settled.tracks[item.lead, number] = y
        for side, offset, lead in item.faces:
            street, other = (number, RIGHT) if side == LEFT else (number + 1, LEFT)
            known[street, other][y + offset] = lead


def _cheapest_above(costs: Sequence[float]) -> list[int]:
    """For each height the best height at or above it."""
    best, found = 0, []
    for y, cost in enumerate(costs):
        best = y if cost < costs[best] else best
        found.append(best)
    return found


def _traced(costs: Sequence[float], choices: Sequence[Sequence[int]]) -> list[int]:
    """Follow the choices back from the cheapest end."""
    if not choices:
        return []
    heights = [min(range(len(costs)), key=lambda y: costs[y])]
    for step in reversed(choices[1:]):
        heights.append(step[heights[-1]])
    return heights[::-1]


def _cost(
    item: Item,
    y: int,
    foot: int,
    facing: dict[Side, dict[int, int]],
    taken: dict[Side, dict[int, int]],
) -> float:
    total = _TOO_LOW * max(0, y + item.height - foot) + 0.001 * y
    if item.wish >= 0:
        total += _DRIFT * abs(y - item.wish)
    for side, offset, lead in item.faces:
        at = y + offset
        if taken[side].get(at, lead) != lead:
            return _NEVER
        goal = facing[side].get(lead)
        if goal is not None:
            step = abs(at - goal)
            total += step - (0 if step else _STRAIGHT) + (_JOG if step == 1 else 0.0)
    return total
