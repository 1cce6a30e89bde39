"""Where the findings are marked on the ladder: beside the terminals that they speak of."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence

from wirecheck.drawing.canvas import Canvas, Layer, Path
from wirecheck.drawing.geometry import Box, Point, box_about
from wirecheck.drawing.marks import MARK_RADIUS, NumberedFinding, finding_mark, point_out
from wirecheck.model.diagram import Diagram, Terminal
from wirecheck.model.finding import Finding

_DISTANCES = (17.0, 24.0, 32.0, 42.0)
_DIRECTIONS = 16


def mark_findings(
    canvas: Canvas, diagram: Diagram, findings: Sequence[Finding], places: Mapping[Terminal, Point]
) -> None:
    """Put the number of each finding beside the first place of it that is on the sheet.

    One that speaks of nothing drawn stands in the list at the foot alone.
    """
    taken = in_the_way(canvas)
    used: Counter[Point] = Counter()
    for number, finding in enumerate(findings, 1):
        here = [places[terminal] for terminal in _terminals(diagram, finding) if terminal in places]
        if here:
            place = min(here, key=lambda point: used[point])
            used[place] += 1
            at = free_place(place, taken, canvas.bounds())
            told = NumberedFinding(number, finding.breaks, finding.message)
            point_out(canvas, place, at)
            taken.append(finding_mark(canvas, at, told))


def in_the_way(canvas: Canvas) -> list[Box]:
    """Return the room of everything that a mark must not cover."""
    return [item.bounds for item in canvas.in_order() if _is_in_the_way(item)]


def _is_in_the_way(item: object) -> bool:
    """Say whether a mark must not cover an item: all but background, plain wire and rails."""
    layer = getattr(item, "layer", Layer.GROUND)
    return not (layer is Layer.GROUND or (isinstance(item, Path) and layer is Layer.WIRE))


def _terminals(diagram: Diagram, finding: Finding) -> Iterator[Terminal]:
    """Yield the terminals a finding speaks of, then the ends of its leads."""
    yield from finding.at_terminals
    for number in finding.lead_numbers:
        yield diagram.leads[number].a
        yield diagram.leads[number].b


def free_place(near: Point, taken: Sequence[Box], sheet: Box) -> Point:
    """Return the nearest place round a point where a ring covers nothing; above and right first."""
    candidates = [
        near.moved(distance * math.cos(angle), distance * math.sin(angle))
        for distance in _DISTANCES
        for angle in (math.tau * (turn - 2) / _DIRECTIONS for turn in range(_DIRECTIONS))
    ]
    free = [at for at in candidates if _is_free(box_about(at, MARK_RADIUS + 1), taken, sheet)]
    return next((at for at in free if _is_clear(near, at, taken)), (free or candidates)[0])


def _is_free(room: Box, taken: Sequence[Box], sheet: Box) -> bool:
    return sheet.holds(room) and not any(room.overlaps(box) for box in taken)


def _is_clear(near: Point, ring: Point, taken: Sequence[Box]) -> bool:
    """Say whether the line from the ring runs over nothing but what is at its place."""
    steps = [box_about(near.towards(ring, share), 1) for share in (0.3, 0.45, 0.6, 0.75, 0.9)]
    return not any(step.overlaps(box) for step in steps for box in taken)
