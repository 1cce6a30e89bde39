"""The fault chart as a picture: readings at the left, what they come to along the lines, repairs.

The ways on stand below each other, the likeliest on top, each reading level with the middle of
what follows from it.
"""

from __future__ import annotations

from dataclasses import replace
from typing import NamedTuple

from wirecheck.drawing.canvas import HEAVY, LINE, WHITE, Align, Canvas, Layer, Letters, Tag
from wirecheck.drawing.faults.words import block, end_words, share
from wirecheck.drawing.geometry import Box, Point
from wirecheck.drawing.lettering import LINE_PITCH, Face, wrapped
from wirecheck.drawing.sheet import framed
from wirecheck.model.diagram import Diagram
from wirecheck.troubleshoot.chart import Branch, Step

_BOX_PT, _WAY_PT = 150.0, 84.0
_BUS_PT = 12.0
_GAP_PT, _PAD_PT = 9.0, 5.0
_SIZE_PT = 7.5
_PITCH = _SIZE_PT * LINE_PITCH
_PLAIN, _BOLD = Letters(_SIZE_PT), Letters(_SIZE_PT, Face.BOLD)
_READING_FILL = "#eef0f2"
LEGEND = (
    "Begin at the left. A shaded box is a reading, numbered as on the pages with the steps; a heavy"
    " box is what is to be mended. Along the lines: what the reading comes to, and how often that"
    " is to be expected, by likelihoods that are common practice and no statistics."
)


def chart_picture(diagram: Diagram, top: Step, seen: str, date: str = "") -> Canvas:
    """Draw a chart.

    Args:
        diagram: of the unit.
        top: the first step.
        seen: what the chart begins with, in words.
        date: as it shall be printed in the title block.
    """
    canvas = Canvas(title="Fault chart", id_prefix="chart-")
    _draw(canvas, _placed(top), 0.0, 0.0)
    frame = block(diagram, "Fault chart", seen, date)
    return framed(canvas, replace(frame, notes=(*frame.notes, LEGEND)))


class _Placed(NamedTuple):
    """A step with the room that it and all that follows takes.

    ``middle`` is how far below the top of that room its own box has its middle.
    """

    step: Step
    lines: tuple[str, ...]
    height: float
    middle: float
    ways: tuple[tuple[Branch, tuple[str, ...], _Placed], ...]

    @property
    def box_height(self) -> float:
        return len(self.lines) * _PITCH + 2 * _PAD_PT


def _placed(step: Step) -> _Placed:
    lines = tuple(_lines(step))
    own = len(lines) * _PITCH + 2 * _PAD_PT + _GAP_PT
    ways = []
    for branch in step.branches:
        said = f"{branch.words} ({share(branch.probability)})"
        words = tuple(wrapped(said, _WAY_PT - _BUS_PT - 6.0, _SIZE_PT))
        ways.append((branch, words, _with_room(_placed(branch.step), len(words) * _PITCH)))
    height = sum(below.height for _branch, _words, below in ways)
    if not ways:
        return _Placed(step, lines, own, own / 2, ())
    first, last = ways[0][2], ways[-1][2]
    middle = (first.middle + height - last.height + last.middle) / 2
    # A box higher than all that follows needs room above and below its middle.
    above, below = max(0.0, own / 2 - middle), max(0.0, own / 2 - (height - middle))
    if above or below:
        raised = ways[0][2]._replace(height=first.height + above, middle=first.middle + above)
        ways[0] = (*ways[0][:2], raised)
        last = ways[-1][2]
        ways[-1] = (*ways[-1][:2], last._replace(height=last.height + below))
    return _Placed(step, lines, height + above + below, middle + above, tuple(ways))


def _with_room(placed: _Placed, words_pt: float) -> _Placed:
    """Leave room above the middle for the words along the line that leads there."""
    missing = max(0.0, words_pt + _GAP_PT / 2 - placed.middle)
    return placed._replace(height=placed.height + missing, middle=placed.middle + missing)


def _lines(step: Step) -> list[str]:
    if step.reading is None:
        room = _BOX_PT - 2 * _PAD_PT
        return [line for words in end_words(step) for line in wrapped(words, room, _SIZE_PT)]
    room = _BOX_PT - 2 * _PAD_PT
    said = (f"{step.number}. {step.reading.ask}", *(f"! {each}" for each in step.reading.cautions))
    return [line for words in said for line in wrapped(words, room, _SIZE_PT)]


def _draw(canvas: Canvas, placed: _Placed, left: float, top: float) -> None:
    """Draw a step and all that follows from it."""
    y, half = top + placed.middle, placed.box_height / 2
    box = Box(left, y - half, left + _BOX_PT, y + half)
    is_end = placed.step.reading is None
    name = "" if is_end else f"step-{placed.step.number}"
    tag = Tag(name, ("end" if is_end else "step",), placed.lines[0])
    canvas.box(
        box,
        fill=WHITE if is_end else _READING_FILL,
        stroke=HEAVY if is_end else LINE,
        layer=Layer.SYMBOL,
        tag=tag,
    )
    for number, words in enumerate(placed.lines):
        at = Point(box.left + _PAD_PT, box.top + _PAD_PT + (number + 0.5) * _PITCH)
        canvas.text(at, words, _PLAIN)
    _draw_ways(canvas, placed, box, top)


def _draw_ways(canvas: Canvas, placed: _Placed, box: Box, top: float) -> None:
    """Draw the lines to what follows, each with its words above it."""
    bus = box.right + _BUS_PT
    right = box.right + _WAY_PT
    heights = []
    for _branch, words, below in placed.ways:
        y = top + below.middle
        heights.append(y)
        canvas.line([Point(bus, y), Point(right, y)], LINE)
        for number, line in enumerate(reversed(words)):
            at = Point(bus + 3.0, y - 2.0 - (number + 0.5) * _PITCH)
            canvas.text(at, line, Letters(_SIZE_PT, align=Align.LEFT))
        _draw(canvas, below, right, top)
        top += below.height
    if heights:
        canvas.line([Point(box.right, box.centre.y), Point(bus, box.centre.y)], LINE)
        ends = [min(*heights, box.centre.y), max(*heights, box.centre.y)]
        canvas.line([Point(bus, y) for y in ends], LINE)
