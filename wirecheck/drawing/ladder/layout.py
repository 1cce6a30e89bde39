"""Where everything in a tree of series and parallel goes: cells in rows, and the wires between.

Widths add in series and heights add in parallel. A tree begins at the left, on its first row. What
ends at the right rail is stretched: contacts stand in the order of the current from the left, loads
against the rail, each branch on a row of its own. What a control does inside itself stays at the
left, so that its block holds nothing else. Distances are in cells across and rows down.
"""

from __future__ import annotations

from typing import NamedTuple

from wirecheck.drawing.ladder.series_parallel import Leaf, Parallel, Series, Tree

INSET = 0.14
"""From the place where branches part to their bus, and from the bus where they meet again."""


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


class Layout(NamedTuple):
    """A laid-out tree: its size and what is in it."""

    width: float
    rows: int
    cells: tuple[Cell, ...]
    wires: tuple[Wire, ...]
    numbers: tuple[Joint, ...]
    dots: tuple[Joint, ...]


def size(tree: Tree) -> tuple[float, int]:
    """Return how many cells wide and rows high a tree is."""
    if isinstance(tree, Leaf):
        return 1.0, 1
    sizes = [size(item) for item in tree.items]
    widths, heights = zip(*sizes, strict=True)
    if isinstance(tree, Series):
        return sum(widths), max(heights)
    return max(widths) + 2 * INSET, sum(heights)


def lay_out(tree: Tree, width: float | None = None) -> Layout:
    """Lay a tree out between two rails `width` cells apart, at least as wide as the tree."""
    own_width, rows = size(tree)
    across = max(own_width, width or 0.0)
    drawing = _Drawing(across)
    drawing.put(tree, 0.0, across, 0)
    wires, dots = tuple(drawing.wires), tuple(drawing.dots)
    return Layout(across, rows, tuple(drawing.cells), wires, tuple(drawing.numbers), dots)


class _Drawing:
    """Collects cells and wires while a tree is put in place."""

    def __init__(self, rail: float) -> None:
        self._rail = rail
        self.cells: list[Cell] = []
        self.wires: list[Wire] = []
        self.numbers: list[Joint] = []
        self.dots: list[Joint] = []

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
                self.numbers.append(Joint(item.start, x, row))
            if place == tail:
                x = self._stretch(item.start, x, right - _width(items[tail:]), row)
            end = x + size(item)[0]
            if place == len(items) - 1 and isinstance(item, Parallel):
                end = right
            if isinstance(item, Leaf):
                self.cells.append(Cell(item, x, row))
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
            self.put(item, begin, end, rows[-1])
            rows.append(rows[-1] + size(item)[1])
        first, *joints, last = rows[:-1]
        for net, x in ((tree.start, begin), (tree.end, end)):
            if 0 < x < self._rail:
                self.wires.append(Wire(net, x, first, x, last))
                self.dots += [Joint(net, x, joint) for joint in (first, *joints)]

    def _stretch(self, net: int, left: float, right: float, row: int) -> float:
        if right > left:
            self.wires.append(Wire(net, left, row, right, row))
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
    return sum(size(item)[0] for item in items)
