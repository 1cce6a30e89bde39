"""Lay the pieces of a sheet in reading order, in columns or in rows, whichever needs less paper."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from functools import cache
from itertools import accumulate
from typing import NamedTuple

from wirecheck.drawing.geometry import Point
from wirecheck.drawing.sheet import Paper

DOWN_GAP = 12.0
ACROSS_GAP = 26.0
_MOST_COLUMNS = 4

Size = tuple[float, float]
"""Width and height of a piece, in points."""


class Arrangement(NamedTuple):
    """Where each piece's top left corner comes to lie, and the area of the paper that takes."""

    area: float
    corners: list[Point]


def packed(sizes: Sequence[Size], paper_for: Callable[[float, float], Paper]) -> Arrangement:
    """Return the arrangement that needs the smallest paper, and of several such the simplest.

    Args:
        sizes: of the pieces, at least one, in reading order.
        paper_for: which paper a drawing of some width and height needs.
    """
    options = []
    for corners in _arrangements(sizes):
        paper = paper_for(*_extent(sizes, corners))
        options.append(Arrangement(paper.width * paper.height, corners))
    return min(options, key=lambda option: option.area)


def _arrangements(sizes: Sequence[Size]) -> Iterator[list[Point]]:
    """Yield ways to lay the pieces: in one column, in rows, in several columns."""
    yield _columns(sizes, ())
    widths = [width + ACROSS_GAP for width, _ in sizes]
    together = {total for first in range(len(widths)) for total in accumulate(widths[first:])}
    for width in sorted(together):
        if width >= max(widths):
            yield _rows(sizes, width)
    for count in range(2, min(_MOST_COLUMNS, len(sizes)) + 1):
        yield _columns(sizes, _breaks(sizes, count))


def _extent(sizes: Sequence[Size], corners: Sequence[Point]) -> Size:
    across = max(at.x + width for at, (width, _) in zip(corners, sizes, strict=True))
    down = max(at.y + height for at, (_, height) in zip(corners, sizes, strict=True))
    return across, down


def _rows(sizes: Sequence[Size], room: float) -> list[Point]:
    """Place pieces side by side as long as there is room, then on the next row."""
    corners: list[Point] = []
    x = y = highest = 0.0
    for width, height in sizes:
        if x and x + width > room:
            x, y, highest = 0.0, y + highest + DOWN_GAP, 0.0
        corners.append(Point(x, y))
        x += width + ACROSS_GAP
        highest = max(highest, height)
    return corners


def _columns(sizes: Sequence[Size], breaks: Sequence[int]) -> list[Point]:
    """Place pieces below each other, a new column at each of the breaks."""
    corners: list[Point] = []
    x = y = widest = 0.0
    for number, (width, height) in enumerate(sizes):
        if number in breaks:
            x, y, widest = x + widest + ACROSS_GAP, 0.0, 0.0
        corners.append(Point(x, y))
        y += height + DOWN_GAP
        widest = max(widest, width)
    return corners


def _breaks(sizes: Sequence[Size], columns: int) -> tuple[int, ...]:
    """Return which pieces begin a new column, so that the highest column is as low as can be."""
    heights = [height + DOWN_GAP for _, height in sizes]

    @cache
    def best(first: int, left: int) -> tuple[float, tuple[int, ...]]:
        if left == 1:
            return sum(heights[first:]), ()
        tries = []
        for cut in range(first + 1, len(heights) - left + 2):
            rest, breaks = best(cut, left - 1)
            tries.append((max(sum(heights[first:cut]), rest), (cut, *breaks)))
        return min(tries)

    return best(0, columns)[1]
