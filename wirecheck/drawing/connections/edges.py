"""At which edge of its block each lead leaves.

Streets run between the columns: street 0 left of column 0, street 1 right of it, and so on. A lead
leaves into the street at its edge. A terminal is at one edge, the one from which its leads cross
the fewest columns, together with the others of its plug or cable; on strips and splices each lead
chooses for itself.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import NamedTuple

from wirecheck.drawing.connections.blocks import End, Sketch

LEFT, RIGHT = 0, 1
Side = int
"""`LEFT` or `RIGHT`; a street's number is its column's plus this."""

_IMBALANCE = 0.02
"""What a lead more at one edge than at the other counts, beside a column crossed."""
_COMPANY = 0.03
"""What another lead to the same block at the same edge counts in its favour."""
_TURNS = 6


class _Group(NamedTuple):
    """Ends that leave a block together; `wired` are those of leads to other blocks."""

    block: int
    ends: tuple[End, ...]
    wired: tuple[End, ...]


def edges(sketch: Sketch, column_of: Sequence[int]) -> dict[End, Side]:
    """Choose the edge of every end that lands on a block, in turns until nothing changes."""
    choice = _Choice(sketch, column_of)
    groups = [group for number in range(len(sketch.blocks)) for group in _groups(number, sketch)]
    for turn in range(_TURNS):
        changed = [choice.decide(group) for group in groups]
        if turn and not any(changed):
            break
    return choice.side_of


def _groups(number: int, sketch: Sketch) -> Iterator[_Group]:
    block = sketch.blocks[number]
    for rows in sketch.together[number]:
        ends = tuple(end for row in rows for end in block.rows[row].ends)
        for together in [(end,) for end in ends] if block.both_sides else [ends]:
            if together:
                wired = tuple(end for end in together if end in sketch.far)
                yield _Group(number, together, wired)


class _Choice:
    """The edges chosen so far."""

    def __init__(self, sketch: Sketch, column_of: Sequence[int]) -> None:
        self.side_of: dict[End, Side] = {}
        self._far = sketch.far
        self._column_of = column_of
        self._load = [[0, 0] for _ in sketch.blocks]
        self._company: dict[tuple[int, Side, int], int] = {}

    def decide(self, group: _Group) -> bool:
        """Give a group its better edge, the present one if it is as good; say if it changed."""
        now = self.side_of.get(group.ends[0])
        if now is not None:
            self._count(group, now, -1)
        left, right = self._cost(group, LEFT), self._cost(group, RIGHT)
        if abs(left - right) < 1e-9:
            best = LEFT if now is None else now
        else:
            best = LEFT if left < right else RIGHT
        self._count(group, best, 1)
        self.side_of.update(dict.fromkeys(group.ends, best))
        return best != now

    def _count(self, group: _Group, side: Side, step: int) -> None:
        self._load[group.block][side] += step * len(group.ends)
        for end in group.wired:
            key = (group.block, side, self._far[end][1])
            self._company[key] = self._company.get(key, 0) + step

    def _cost(self, group: _Group, side: Side) -> float:
        """Count the columns to cross; half a column where the other end is free yet."""
        column_of, load = self._column_of, self._load[group.block]
        street = column_of[group.block] + side
        total = _IMBALANCE * (load[side] - load[1 - side])
        for end in group.wired:
            other, there = self._far[end]
            total += abs(street - column_of[there] - self.side_of.get(other, 0.5))
            total -= _COMPANY * self._company.get((group.block, side, there), 0)
        return total
