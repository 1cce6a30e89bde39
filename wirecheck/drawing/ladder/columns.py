"""Lay pieces of a sheet below each other, in as many columns as suits the paper."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cache

from wirecheck.drawing.geometry import Point
from wirecheck.drawing.sheet import Paper

GAP = 12.0
"""Between two pieces below each other."""
_COLUMN_GAP = 26.0
_MOST_COLUMNS = 4


def in_columns(
    sizes: Sequence[tuple[float, float]], paper_for: Callable[[float, float], Paper]
) -> list[Point]:
    """Return the top left corner of each piece, in reading order down the columns.

    Args:
        sizes: width and height of the pieces, in points.
        paper_for: which paper a drawing of some width and height needs; the arrangement that needs
            the smallest is chosen, and of those the one with the fewest columns.
    """
    counts = range(1, min(_MOST_COLUMNS, len(sizes)) + 1)
    options = [_placed(sizes, _breaks(sizes, count)) for count in counts]
    papers = [paper_for(*_extent(sizes, corners)) for corners in options]
    areas = [paper.width * paper.height for paper in papers]
    return options[areas.index(min(areas))] if options else []


def _extent(sizes: Sequence[tuple[float, float]], corners: Sequence[Point]) -> tuple[float, float]:
    across = max(at.x + width for at, (width, _) in zip(corners, sizes, strict=True))
    down = max(at.y + height for at, (_, height) in zip(corners, sizes, strict=True))
    return across, down


def _placed(sizes: Sequence[tuple[float, float]], breaks: Sequence[int]) -> list[Point]:
    corners: list[Point] = []
    x = y = widest = 0.0
    for number, (width, height) in enumerate(sizes):
        if number in breaks:
            x, y, widest = x + widest + _COLUMN_GAP, 0.0, 0.0
        corners.append(Point(x, y))
        y += height + GAP
        widest = max(widest, width)
    return corners


def _breaks(sizes: Sequence[tuple[float, float]], columns: int) -> tuple[int, ...]:
    """Return which pieces begin a new column, so that the highest column is as low as can be."""
    heights = [height + GAP for _, height in sizes]

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
