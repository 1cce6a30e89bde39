"""Read a finished sheet back and say what touches what it must not touch."""

import math
from collections.abc import Iterator
from itertools import combinations, pairwise
from typing import NamedTuple

from wirecheck.drawing.canvas import Canvas, Lettering, Path, Shape
from wirecheck.drawing.geometry import Box, Point, box_round

APART_PT = 5.0
"""Leads side by side are at least so far apart."""


class Stretch(NamedTuple):
    """A straight piece of a lead."""

    lead: str
    start: Point
    end: Point

    @property
    def room(self) -> Box:
        return box_round([self.start, self.end])

    @property
    def lies(self) -> bool:
        return self.start.y == self.end.y

    @property
    def stands(self) -> bool:
        return self.start.x == self.end.x


def leads(page: Canvas) -> dict[str, list[Path]]:
    """The lines of each lead by its id; a lead with a loose end is one line too."""
    found: dict[str, list[Path]] = {}
    for item in page.in_order():
        if isinstance(item, Path) and item.tag.id.startswith("connections-lead-"):
            found.setdefault(item.tag.id, []).append(item)
    return found


def stretches(page: Canvas) -> list[Stretch]:
    return [
        Stretch(name, start, end)
        for name, lines in leads(page).items()
        for line in lines
        for start, end in pairwise(line.controls[::3])
    ]


def parts(page: Canvas) -> dict[str, Box]:
    return {i.tag.id: i.bounds for i in page.in_order() if "part" in i.tag.classes}


def collisions(page: Canvas) -> list[str]:
    """Everything that is wrong with a page, in words."""
    return [*_through_parts(page), *_too_close(page), *_lettering(page), *_bent(page)]


def _through_parts(page: Canvas) -> Iterator[str]:
    boxes = parts(page)
    for piece in stretches(page):
        for name, box in boxes.items():
            if _crosses(piece, box.grown(-2)):
                yield f"{piece.lead} runs through {name}"
    for (one, box), (other, second) in combinations(boxes.items(), 2):
        if box.overlaps(second):
            yield f"{one} and {other} overlap"


def _crosses(piece: Stretch, box: Box) -> bool:
    room = piece.room
    return (
        room.left < box.right
        and box.left < room.right + 1e-9
        and room.top < box.bottom
        and box.top < room.bottom + 1e-9
    )


def _too_close(page: Canvas) -> Iterator[str]:
    dots = [i.bounds.centre for i in page.in_order() if "splice" in i.tag.classes]
    pieces = [
        piece
        for piece in stretches(page)
        if (piece.lies or piece.stands) and not any(_ends_at(piece, dot) for dot in dots)
    ]
    for one, other in combinations(pieces, 2):
        if one.lead == other.lead:
            continue
        a, b = one.room, other.room
        if one.lies and other.lies:
            shared = min(a.right, b.right) - max(a.left, b.left)
            distance = abs(a.top - b.top)
        elif one.stands and other.stands:
            shared = min(a.bottom, b.bottom) - max(a.top, b.top)
            distance = abs(a.left - b.left)
        else:
            continue
        if shared > -1 and distance < APART_PT:
            yield f"{one.lead} and {other.lead} share {shared:.1f} pt, {distance:.1f} pt apart"


def _ends_at(piece: Stretch, dot: Point) -> bool:
    return min(math.dist(dot, piece.start), math.dist(dot, piece.end)) < 0.1


def _bent(page: Canvas) -> Iterator[str]:
    """Leads are upright or level, but for the last bit to the dot of a splice."""
    for lines in leads(page).values():
        for line in lines:
            inner = line.controls[::3][1:-1]
            for start, end in pairwise(inner):
                if start.x != end.x and start.y != end.y:
                    yield f"{line.tag.id} runs askew"


def _lettering(page: Canvas) -> Iterator[str]:
    items = page.in_order()
    rings = [i.bounds for i in items if isinstance(i, Shape) and "finding" in i.tag.classes]
    texts = [item for item in items if isinstance(item, Lettering)]
    for one, other in combinations(texts, 2):
        if one.bounds.overlaps(other.bounds, slack=0.8):
            yield f"“{one.text}” and “{other.text}” overlap"
    # The number in a ring lies on its lead, or on the edge of its part: that is its place.
    loose = [text for text in texts if not any(r.grown(1).holds(text.bounds) for r in rings)]
    yield from (
        f"a mark covers “{text.text}”"
        for text in loose
        for ring in rings
        if text.bounds.overlaps(ring, slack=1.5)
    )
    yield from (
        f"“{text.text}” lies across {name}"
        for text in loose
        for name, box in parts(page).items()
        if text.bounds.overlaps(box) and not box.grown(1).holds(text.bounds)
    )
    pieces = stretches(page)
    yield from (
        f"{piece.lead} runs through “{text.text}”"
        for text in loose
        for piece in pieces
        if _crosses(piece, text.bounds.grown(-1.2))
    )
