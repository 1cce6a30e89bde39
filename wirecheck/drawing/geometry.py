"""Points, boxes and arcs of a sheet: 1/72 inch, x to the right and y DOWN from the top left."""

from __future__ import annotations

import math
from collections.abc import Iterable
from typing import NamedTuple


class Point(NamedTuple):
    """A place on the sheet."""

    x: float
    y: float

    def moved(self, dx: float, dy: float) -> Point:
        """Return the place `dx` to the right and `dy` below."""
        return Point(self.x + dx, self.y + dy)

    def towards(self, other: Point, share: float) -> Point:
        """Return the place that far on the way to `other`: 0 is here, 1 is there."""
        return self.moved((other.x - self.x) * share, (other.y - self.y) * share)


class Box(NamedTuple):
    """An upright rectangle; `left <= right` and `top <= bottom`."""

    left: float
    top: float
    right: float
    bottom: float

    @property
    def width(self) -> float:
        """Horizontal extent."""
        return self.right - self.left

    @property
    def height(self) -> float:
        """Vertical extent."""
        return self.bottom - self.top

    @property
    def centre(self) -> Point:
        """The middle of the box."""
        return Point((self.left + self.right) / 2, (self.top + self.bottom) / 2)

    def grown(self, margin: float) -> Box:
        """Return the box with `margin` added on all four sides (taken off when negative)."""
        return Box(self.left - margin, self.top - margin, self.right + margin, self.bottom + margin)

    def moved(self, dx: float, dy: float) -> Box:
        """Return the box shifted `dx` to the right and `dy` down."""
        return Box(self.left + dx, self.top + dy, self.right + dx, self.bottom + dy)

    def overlaps(self, other: Box, slack: float = 0.0) -> bool:
        """Say whether the two share area, ignoring an intrusion of up to `slack`."""
        return (
            self.left < other.right - slack
            and other.left < self.right - slack
            and self.top < other.bottom - slack
            and other.top < self.bottom - slack
        )

    def holds(self, other: Box) -> bool:
        """Say whether `other` lies wholly inside."""
        return (
            self.left <= other.left
            and other.right <= self.right
            and self.top <= other.top
            and other.bottom <= self.bottom
        )


def box_round(points: Iterable[Point]) -> Box:
    """Return the smallest box that holds all the points (at least one)."""
    xs, ys = zip(*points, strict=True)
    return Box(min(xs), min(ys), max(xs), max(ys))


def box_of_boxes(boxes: Iterable[Box]) -> Box:
    """Return the smallest box that holds all the boxes (at least one)."""
    lefts, tops, rights, bottoms = zip(*boxes, strict=True)
    return Box(min(lefts), min(tops), max(rights), max(bottoms))


def box_about(centre: Point, half_width: float, half_height: float | None = None) -> Box:
    """Return the box of that half size about a point; square when one measure is given."""
    high = half_width if half_height is None else half_height
    return Box(centre.x - half_width, centre.y - high, centre.x + half_width, centre.y + high)


def straight(points: Iterable[Point]) -> list[Point]:
    """Return the Bezier control points of straight lines through the points."""
    rest = iter(points)
    controls = [next(rest)]
    for end in rest:
        start = controls[-1]
        controls += [start.towards(end, 1 / 3), start.towards(end, 2 / 3), end]
    return controls


def arc(centre: Point, radius: float, start_deg: float, sweep_deg: float) -> list[Point]:
    """Return the Bezier control points of part of a circle, in pieces of at most a quarter turn.

    0 degrees points right and angles grow clockwise on the sheet, as y goes down. The handles have
    the usual length 4/3 tan(a/4) for a piece of angle a, within 0.03 % of the true radius.
    """
    pieces = max(1, math.ceil(abs(sweep_deg) / 90 - 1e-9))
    step = math.radians(sweep_deg) / pieces
    handle = 4 / 3 * math.tan(step / 4) * radius
    angle = math.radians(start_deg)
    controls = [_on_circle(centre, radius, angle)]
    for _ in range(pieces):
        end = _on_circle(centre, radius, angle + step)
        controls += [
            controls[-1].moved(-handle * math.sin(angle), handle * math.cos(angle)),
            end.moved(handle * math.sin(angle + step), -handle * math.cos(angle + step)),
            end,
        ]
        angle += step
    return controls


def _on_circle(centre: Point, radius: float, angle: float) -> Point:
    return centre.moved(radius * math.cos(angle), radius * math.sin(angle))
