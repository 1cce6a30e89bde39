"""Where everything in a tree of series and parallel goes: cells in rows, and the wires between.

Widths add in series and heights add in parallel. A tree begins at the left, on its first row. What
ends at the right rail is stretched: contacts stand in the order of the current from the left, loads
against the rail, each branch on a row of its own. What a control does inside itself stays at the
left, so that its block holds nothing else. A rung too long for the sheet is cut: it goes on in
the next row, with a flag at either end. Distances are in cells across and rows down.
"""

from __future__ import annotations

import math
from typing import NamedTuple

from wirecheck.drawing.ladder.series_parallel import Leaf, Parallel, Series, Tree

INSET = 0.12
"""From the place where branches part to their bus, and from the bus where they meet again."""


FLAG = 0.8
"""Room for a flag at the end of a row, or at the beginning of the next."""


class Cell(NamedTuple):
    """A branch in its place: one cell wide, `left` from the left rail, on a row."""

    leaf: Leaf
    left: float
    row: int


class Wire(NamedTuple):
    """A straight piece of wire of one net, across or down."""

    net: int
    left: float
    top: int
    right: float
    bottom: int


class Joint(NamedTuple):
    """A place in a net: where its number is written, or where a bus has a dot."""

    net: int
    x: float
    row: int


class Flag(NamedTuple):
    """An end of a rung that is cut: it goes on, or comes from, the row `other`."""

    net: int
    x: float
    row: int
    other: int


class Layout(NamedTuple):
    """A laid-out tree: its size and what is in it."""

    width: float
    rows: int
    cells: tuple[Cell, ...]
    wires: tuple[Wire, ...]
    numbers: tuple[Joint, ...]
    dots: tuple[Joint, ...]
    flags: tuple[Flag, ...]


def size(tree: Tree) -> tuple[float, int]:
    """Return how many cells wide and rows high a tree is."""
    if isinstance(tree, Leaf):
        return 1.0, 1
    sizes = [size(item) for item in tree.items]
    widths, heights = zip(*sizes, strict=True)
    if isinstance(tree, Series):
        return sum(widths), max(heights)
    nested = INSET * any(isinstance(item, Parallel) for item in tree.items)
    return max(widths) + nested + 2 * INSET, sum(heights)


def lay_out(tree: Tree, least: float = 0.0, most: float = math.inf) -> Layout:
    """Lay a tree out between two rails.

    Args:
        tree: what stands between the rails; branches side by side are rungs of their own.
        least: how far the rails are apart at least, in cells.
        most: rungs wider than this are cut, where they begin with contacts one after the other.
    """
    rungs = [_cut(rung, most) for rung in (tree.items if isinstance(tree, Parallel) else (tree,))]
    across = max([least, *(width for width, _ in map(_cut_size, rungs))])
    drawing = _Drawing(across)
    row = 0
    for rung in rungs:
        drawing.put_rung(rung, row)
        row += _cut_size(rung)[1]
    return drawing.layout(row)


class _Rung(NamedTuple):
    """A rung: contacts that stand on rows before the rest, if it is cut, and the rest."""

    heads: tuple[tuple[Leaf, ...], ...]
    rest: Tree


def _cut(rung: Tree, most: float) -> _Rung:
    """Cut a rung that is too wide as often as need be, as far as it begins with lone branches."""
    heads: list[tuple[Leaf, ...]] = []
    items = rung.items if isinstance(rung, Series) else (rung,)
    while _width(items) + FLAG * bool(heads) > most:
        head: list[Leaf] = []
        room = most - FLAG * (2 if heads else 1)
        for item in items[:-1]:
            is_short = FLAG + _width(items[len(head) :]) <= most
            if is_short or not isinstance(item, Leaf) or len(head) + 1 > room:
                break
            head.append(item)
        if not head:
            break
        heads.append(tuple(head))
        items = items[len(head) :]
    return _Rung(tuple(heads), Series(items) if len(items) > 1 else items[0])


def _cut_size(rung: _Rung) -> tuple[float, int]:
    width, rows = size(rung.rest)
    if not rung.heads:
        return width, rows
    first, *others = rung.heads
    heads = [len(first) + FLAG, *(len(head) + 2 * FLAG for head in others)]
    return max(width + FLAG, *heads), rows + len(heads)


class _Drawing:
    """Collects cells and wires while a tree is put in place."""

    def __init__(self, rail: float) -> None:
        self._rail = rail
        self._cells: list[Cell] = []
        self._wires: list[Wire] = []
        self._numbers: list[Joint] = []
        self._dots: list[Joint] = []
        self._flags: list[Flag] = []

    def layout(self, rows: int) -> Layout:
        """Return what was collected."""
        marks = (tuple(self._numbers), tuple(self._dots), tuple(self._flags))
        return Layout(self._rail, rows, tuple(self._cells), tuple(self._wires), *marks)

    def put_rung(self, rung: _Rung, row: int) -> None:
        """Put a rung, where it is cut each piece on the next row, a flag at either end."""
        left = 0.0
        for head in rung.heads:
            end = left + len(head)
            net = head[-1].end
            self._put_in_series(head, left, end, row)
            self._flags.append(Flag(net, end, row, row + 1))
            self._flags.append(Flag(net, FLAG, row + 1, row))
            self._numbers.append(Joint(net, end, row))
            left, row = FLAG, row + 1
        self.put(rung.rest, left, self._rail, row)

    def put(self, tree: Tree, left: float, right: float, row: int) -> None:
        """Put a tree between two places on its first row and the rows below."""
        match tree:
            case Leaf():
                self._put_in_series((tree,), left, right, row)
            case Series():
                self._put_in_series(tree.items, left, right, row)
            case Parallel():
                self._put_in_parallel(tree, left, right, row)

    def _put_in_series(self, items: tuple[Tree, ...], left: float, right: float, row: int) -> None:
        """Put items from the left; from the first load on against the rail, if it ends there."""
        tail = _tail(items) if right == self._rail else len(items)
        x = left
        for place, item in enumerate(items):
            if place:
                self._numbers.append(Joint(item.start, x, row))
            if place == tail:
                x = self._stretch(item.start, x, right - _width(items[tail:]), row)
            end = x + size(item)[0]
            if place == len(items) - 1 and isinstance(item, Parallel):
                end = right
            if isinstance(item, Leaf):
                self._cells.append(Cell(item, x, row))
            else:
                self.put(item, x, end, row)
            x = end
        self._stretch(items[-1].end, x, right, row)

    def _put_in_parallel(self, tree: Parallel, left: float, right: float, row: int) -> None:
        """Put the branches below each other, and a bus at either side that is not a rail."""
        begin = self._stretch(tree.start, left, left + INSET, row) if left else left
        end = right if right == self._rail else right - INSET
        self._stretch(tree.end, end, right, row)
        rows = [row]
        for item in tree.items:
            # A bus inside a bus stands apart from it, so that a block's rim fits between.
            nested = INSET if isinstance(item, Parallel) and begin else 0.0
            self._stretch(item.start, begin, begin + nested, rows[-1])
            self.put(item, begin + nested, end, rows[-1])
            rows.append(rows[-1] + size(item)[1])
        first, *joints, last = rows[:-1]
        for net, x in ((tree.start, begin), (tree.end, end)):
            if 0 < x < self._rail:
                self._wires.append(Wire(net, x, first, x, last))
                self._dots += [Joint(net, x, joint) for joint in (first, *joints)]

    def _stretch(self, net: int, left: float, right: float, row: int) -> float:
        if right > left:
            self._wires.append(Wire(net, left, row, right, row))
        return right


def _tail(items: tuple[Tree, ...]) -> int:
    """Return from which item on a series that ends at the rail stands against the rail.

    That is the first thing that belongs there with nothing but such things and contacts after it.
    """
    tail = len(items)
    for place in range(len(items) - 1, -1, -1):
        item = items[place]
        if _belongs_at_rail(item):
            tail = place
        elif not isinstance(item, Leaf):
            break
    return tail


def _belongs_at_rail(tree: Tree) -> bool:
    """Say whether a tree is a load, or loads side by side."""
    if isinstance(tree, Leaf):
        return tree.branch.at_rail
    return isinstance(tree, Parallel) and all(
        isinstance(item, Leaf) and item.branch.at_rail for item in tree.items
    )


def _width(items: tuple[Tree, ...]) -> float:
    """Return the width of items in series that end at the rail: a last group has no bus there."""
    return sum(size(item)[0] for item in items) - INSET * isinstance(items[-1], Parallel)
