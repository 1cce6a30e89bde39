"""What a symbol is: strokes in a small frame of its own, ports to wire it by, and its standard.

A symbol is drawn about its own origin, lying, current from left to right; `place` puts it on a
sheet, lying or upright. Numbers of clauses are from memory, as no copy of the standards was at
hand; a number that was uncertain is left out.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable
from dataclasses import dataclass
from enum import Enum
from typing import NamedTuple

from wirecheck.drawing.canvas import (
    BLACK,
    NO_LINE,
    NO_TAG,
    WHITE,
    Align,
    Canvas,
    Layer,
    Letters,
    Stroke,
    Tag,
)
from wirecheck.drawing.geometry import Box, Point, arc, box_about, box_round
from wirecheck.drawing.lettering import Face

SYMBOL_PT = 1.2
"""Line width of a symbol: a little over that of a wire."""


class Standard(NamedTuple):
    """Where a symbol comes from, from memory.

    Attributes:
        ieee: clause of IEEE 315 (ANSI Y32.2).
        iec: number in IEC 60617 of 1996.
        database: number in the IEC 60617 database.
        note: what else shaped it, or why it has no number.
    """

    ieee: str = ""
    iec: str = ""
    database: str = ""
    note: str = ""

    def __str__(self) -> str:
        """Return the reference as it is printed."""
        told = (
            f"IEEE 315 {self.ieee}" if self.ieee else "",
            f"IEC 60617 {self.iec}" if self.iec else "",
            self.database,
            self.note,
        )
        return ", ".join(text for text in told if text)


class Turn(Enum):
    """How a symbol lies: its first port at the left, at the top, at the right or at the bottom."""

    ACROSS = "across"
    DOWN = "down"
    BACK = "back"
    UP = "up"


@dataclass(frozen=True)
class Symbol:
    """A symbol in its own frame, lying, in points.

    Attributes:
        name: as code and classes call it.
        title: in words.
        standard: where it comes from.
        ports: where wires end, in the order of the current.
        room: what it covers, ports included.
        strokes: draws it.
        has_posts: whether circles of its own stand for the terminals.
    """

    name: str
    title: str
    standard: Standard
    ports: tuple[Point, ...]
    room: Box
    strokes: Callable[[Pen], None]
    has_posts: bool = False


class Placed(NamedTuple):
    """A symbol on the sheet: where its wires end, and what it covers."""

    ports: tuple[Point, ...]
    box: Box


class Pose(NamedTuple):
    """Where a symbol's origin comes to lie, how it is turned, and how large it is drawn."""

    at: Point
    turn: Turn = Turn.ACROSS
    scale: float = 1.0


class Pen:
    """Draws in a symbol's own frame, wherever that lies on the sheet.

    `inside` is the text that a symbol with room for it shows (a coil's letter); it stays upright.
    """

    def __init__(self, canvas: Canvas, pose: Pose, tag: Tag, inside: str) -> None:
        self._canvas = canvas
        self._at, self._turn, self._scale = pose
        self._tag = tag
        self.inside = inside

    def spot(self, x: float, y: float) -> Point:
        """Return the place on the sheet of a point of the symbol."""
        x, y = self._scale * x, self._scale * y
        turned = {
            Turn.ACROSS: (x, y),
            Turn.DOWN: (-y, x),
            Turn.BACK: (-x, -y),
            Turn.UP: (y, -x),
        }
        return self._at.moved(*turned[self._turn])

    def area(self, box: Box) -> Box:
        """Return the place on the sheet of a box of the symbol."""
        return box_round([self.spot(box.left, box.top), self.spot(box.right, box.bottom)])

    def line(self, *points: tuple[float, float], width_pt: float = SYMBOL_PT) -> None:
        """Draw straight lines from point to point."""
        spots = [self.spot(x, y) for x, y in points]
        self._canvas.line(spots, Stroke(BLACK, width_pt), layer=Layer.SYMBOL, tag=self._tag)

    def curve(self, controls: Iterable[Point], width_pt: float = SYMBOL_PT) -> None:
        """Draw Bezier pieces."""
        spots = [self.spot(x, y) for x, y in controls]
        self._canvas.curve(spots, Stroke(BLACK, width_pt), layer=Layer.SYMBOL, tag=self._tag)

    def arc(self, x: float, y: float, radius: float, degrees: tuple[float, float]) -> None:
        """Draw an arc from a start angle through a sweep, both clockwise in degrees."""
        self.curve(arc(Point(x, y), radius, *degrees))

    def circle(self, x: float, y: float, radius: float, *, fill: str = WHITE) -> None:
        """Draw a circle; white inside by default, so that no wire shows through."""
        room = box_about(self.spot(x, y), radius * self._scale)
        stroke = Stroke(BLACK, SYMBOL_PT)
        self._canvas.oval(room, fill=fill, stroke=stroke, layer=Layer.SYMBOL, tag=self._tag)

    def dot(self, x: float, y: float, radius: float) -> None:
        """Draw a filled disc."""
        room = box_about(self.spot(x, y), radius * self._scale)
        self._canvas.oval(room, fill=BLACK, stroke=NO_LINE, layer=Layer.SYMBOL, tag=self._tag)

    def box(self, room: Box) -> None:
        """Draw a rectangle, white inside."""
        area, stroke = self.area(room), Stroke(BLACK, SYMBOL_PT)
        self._canvas.box(area, fill=WHITE, stroke=stroke, layer=Layer.SYMBOL, tag=self._tag)

    def letter(self, x: float, y: float, text: str, size_pt: float = 8.0) -> None:
        """Letter a short text about a point."""
        style = Letters(size_pt * self._scale, Face.BOLD, Align.CENTRE)
        self._canvas.text(self.spot(x, y), text, style, tag=Tag(title=self._tag.title))


def place(
    canvas: Canvas, symbol: Symbol, pose: Pose, *, inside: str = "", tag: Tag = NO_TAG
) -> Placed:
    """Draw a symbol, and say where its ports came to lie.

    The tag's id goes to an unseen field over the whole symbol, the thing that a page links to and
    points at; every stroke has the tag's classes and title and the class `symbol-NAME`.
    """
    strokes = Tag("", (*tag.classes, "symbol", f"symbol-{symbol.name}"), tag.title)
    pen = Pen(canvas, pose, strokes, inside)
    area = pen.area(symbol.room)
    if tag.id:
        whole = strokes._replace(id=tag.id)
        canvas.box(area, stroke=NO_LINE, layer=Layer.GROUND, tag=whole)
    symbol.strokes(pen)
    return Placed(tuple(pen.spot(*port) for port in symbol.ports), area)


def two_ports(half_length: float) -> tuple[Point, Point]:
    """Return the ports of a symbol in a rung, left and right of its origin."""
    return Point(-half_length, 0), Point(half_length, 0)
