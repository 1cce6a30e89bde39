"""Marks laid over a sheet: numbered findings, leads to take away, leads to add.

All of them read in black and white. A finding's ring tells what it breaks by its shape: a filled
disc for safety, a heavy ring for operation, a thin double ring for workmanship. A lead to take away
is dashed and crossed out; a lead to add is a hollow double line with plus signs.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

from wirecheck.drawing.canvas import (
    BLACK,
    NO_LINE,
    NO_TAG,
    WHITE,
    Align,
    Canvas,
    Dash,
    Layer,
    Letters,
    Stroke,
    Tag,
)
from wirecheck.drawing.geometry import Box, Point, box_about
from wirecheck.drawing.lettering import Face
from wirecheck.model.finding import Breaks

MARK_RADIUS = 8.0
ALARM = "#b00000"
"""Red dark enough to be black on a copy."""
TAKE_AWAY = "#b00000"
ADD = "#00562c"

_SIGN_EVERY_PT = 42.0
_SIGN_ARM = 4.0
_FLAG_PT = 8.5
_FLAG = Letters(8.0, Face.BOLD, Align.CENTRE)

Clear = tuple[float, float]
"""Points at the start and at the end of a line where lettering stands."""


class NumberedFinding(NamedTuple):
    """A finding as the sheets show it: a number, and its words in the list at the foot."""

    number: int
    breaks: Breaks
    words: str


def finding_mark(
    canvas: Canvas,
    at: Point,
    finding: NumberedFinding,
    *,
    ring_id: str = "mark",
    radius: float = MARK_RADIUS,
) -> Box:
    """Draw the number of a finding in its ring, and return the room it takes.

    The ring's id is `ring_id` with the number; it has the classes `finding` and `finding-NUMBER`.
    """
    number, breaks, words = finding
    fill, line_pt, ink = _RINGS[breaks]
    room = box_about(at, radius)
    tag = Tag(f"{ring_id}-{number}", ("finding", f"finding-{number}"), words)
    canvas.oval(room, fill=fill, stroke=Stroke(ALARM, line_pt), layer=Layer.MARK, tag=tag)
    if breaks is Breaks.WORKMANSHIP:
        canvas.oval(box_about(at, radius - 2), stroke=Stroke(ALARM, 0.7), layer=Layer.MARK)
    shown = str(number)
    size_pt = (12.0 - 2 * len(shown)) * radius / MARK_RADIUS
    style = Letters(size_pt, Face.BOLD, Align.CENTRE, ink)
    canvas.text(at, shown, style, layer=Layer.MARK, tag=Tag(title=words))
    return room.grown(line_pt / 2)


def point_out(canvas: Canvas, place: Point, ring: Point) -> None:
    """Draw a short line from the ring of a finding to the place that the finding speaks of."""
    canvas.line([place, ring], Stroke(ALARM, 1.2), layer=Layer.MARK)
    canvas.oval(box_about(place, 2.2), fill=ALARM, stroke=NO_LINE, layer=Layer.MARK)


# Fill of the ring, width of its line, colour of the number.
_RINGS = {
    Breaks.SAFETY: (ALARM, 2.0, WHITE),
    Breaks.OPERATION: (WHITE, 2.4, BLACK),
    Breaks.WORKMANSHIP: (WHITE, 0.9, BLACK),
}


def lead_to_take_away(
    canvas: Canvas, points: Sequence[Point], tag: Tag = NO_TAG, *, clear: Clear = (0.0, 0.0)
) -> None:
    """Draw a lead that is to come out: dashed, with crosses along it, none so near its ends."""
    canvas.line(points, Stroke(WHITE, 4.0), layer=Layer.MARK)
    canvas.line(points, Stroke(TAKE_AWAY, 1.6, Dash.DASHED), layer=Layer.MARK, tag=tag)
    cross = Stroke(TAKE_AWAY, 1.6)
    for at in along(points, _SIGN_EVERY_PT, clear):
        for rise in (-_SIGN_ARM, _SIGN_ARM):
            ends = [at.moved(-_SIGN_ARM, -rise), at.moved(_SIGN_ARM, rise)]
            canvas.line(ends, cross, layer=Layer.MARK)


def lead_to_add(
    canvas: Canvas, points: Sequence[Point], tag: Tag = NO_TAG, *, clear: Clear = (0.0, 0.0)
) -> None:
    """Draw a lead that is to go in: a hollow double line with plus signs, none so near its ends."""
    hollow_line(canvas, points, tag)
    for at in along(points, _SIGN_EVERY_PT, clear):
        _plus_sign(canvas, at, NO_TAG)


def hollow_line(canvas: Canvas, points: Sequence[Point], tag: Tag = NO_TAG) -> None:
    """Draw the hollow double line of a lead that is to go in, without its signs."""
    canvas.line(points, Stroke(ADD, 4.2), layer=Layer.MARK, tag=tag)
    canvas.line(points, Stroke(WHITE, 2.0), layer=Layer.MARK)


def end_to_land(canvas: Canvas, points: Sequence[Point], tag: Tag, *, clear: float) -> None:
    """Draw a plus sign near the start of a line, behind its lettering: that end is to be landed."""
    lengths = [math.dist(start, end) for start, end in pairwise(points)]
    behind = min(clear + _SIGN_ARM, sum(lengths) / 2)
    _plus_sign(canvas, _at_length(points, lengths, behind), tag)


def _plus_sign(canvas: Canvas, at: Point, tag: Tag) -> None:
    room = box_about(at, _SIGN_ARM + 1.5)
    canvas.oval(room, fill=WHITE, stroke=Stroke(ADD, 1.0), layer=Layer.MARK, tag=tag)
    for across, down in ((_SIGN_ARM - 1, 0.0), (0.0, _SIGN_ARM - 1)):
        ends = [at.moved(-across, -down), at.moved(across, down)]
        canvas.line(ends, Stroke(ADD, 1.6), layer=Layer.MARK)


def flag_to_take_away(canvas: Canvas, at: Point, number: int, title: str) -> Box:
    """Draw the flag of a lead to take away, for one of its ends: dashed, with a cross."""
    room = box_about(at, _FLAG_PT)
    tag = Tag(classes=("edit", "take-away"), title=title)
    line = Stroke(TAKE_AWAY, 1.2, Dash.DASHED)
    canvas.box(room, fill=WHITE, stroke=line, layer=Layer.MARK, tag=tag)
    canvas.text(at, f"x{number}", _FLAG._replace(colour=TAKE_AWAY), layer=Layer.MARK)
    return room.grown(0.6)


def flag_to_add(canvas: Canvas, at: Point, number: int, title: str) -> Box:
    """Draw the flag of a lead to add, for one of its ends: a double line, with a plus sign."""
    room = box_about(at, _FLAG_PT)
    tag = Tag(classes=("edit", "add"), title=title)
    canvas.box(room, fill=WHITE, stroke=Stroke(ADD, 1.2), layer=Layer.MARK, tag=tag)
    canvas.box(room.grown(-2.2), stroke=Stroke(ADD, 0.7), layer=Layer.MARK)
    canvas.text(at, f"+{number}", _FLAG._replace(colour=ADD), layer=Layer.MARK)
    return room.grown(0.6)


def along(points: Sequence[Point], every_pt: float, clear: Clear = (0.0, 0.0)) -> Iterator[Point]:
    """Yield places at even distances along a line, at least one, none of them at an end.

    ``clear`` is the stretch at either end to leave free, if the line is longer than both.
    """
    lengths = [math.dist(start, end) for start, end in pairwise(points)]
    first, whole = clear[0], sum(lengths) - sum(clear)
    if whole <= 0:
        first, whole = 0.0, sum(lengths)
    count = max(1, round(whole / every_pt))
    for number in range(count):
        yield _at_length(points, lengths, first + whole * (number + 0.5) / count)


def _at_length(points: Sequence[Point], lengths: Sequence[float], length: float) -> Point:
    for start, end, piece in zip(points, points[1:], lengths, strict=False):
        if length <= piece and piece:
            return start.towards(end, length / piece)
        length -= piece
    return points[-1]
