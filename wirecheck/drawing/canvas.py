"""A sheet of vector drawing: lines, curves, boxes, ovals and lettering at fixed places.

Coordinates are points (1/72 inch) from the top left, y down. Nothing is drawn here: the canvas only
collects items, `dot_source.write` turns them into DOT with every position pinned, and
`engine.render` has Graphviz make SVG, PNG or PDF of it:

    canvas = Canvas(842, 595, title="Heater 3", id_prefix="ladder-")
    canvas.box(Box(40, 40, 140, 90), tag=Tag("part-xfmr", ("part",), "xfmr, transformer"))
    canvas.line([Point(140, 65), Point(300, 65)], Stroke(width_pt=1.5), tag=Tag("lead-1"))
    canvas.text(Point(90, 65), "xfmr", Letters(align=Align.CENTRE))
    canvas.curve(arc(Point(300, 65), 8, 180, 90))
    svg = engine.render(canvas, "svg")

What is on top is decided by the layer first and by the order of the calls within a layer. An item
may carry a `Tag`: its id (made safe and unique here, the same on every run), classes, and a title
that a page shows when pointed at. Lettering is always literal, whatever it holds.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from enum import Enum, IntEnum
from typing import NamedTuple

from wirecheck.drawing.geometry import Box, Point, box_of_boxes, box_round, straight
from wirecheck.drawing.lettering import Face, printable, text_width

BLACK = "#000000"
WHITE = "#ffffff"


class Layer(IntEnum):
    """What lies over what, from the bottom up."""

    GROUND = 0
    """Background boxes, shading."""
    WIRE = 1
    SYMBOL = 2
    """Device outlines: a filled one hides a wire that runs under it."""
    TEXT = 3
    MARK = 4
    """Numbers of findings, crosses and plus signs: never hidden."""


class Dash(Enum):
    """Line kinds, by Graphviz's name."""

    SOLID = "solid"
    DASHED = "dashed"
    DOTTED = "dotted"


class Align(Enum):
    """Where the given point lies in a line of text, as a share of its width."""

    LEFT = 0.0
    CENTRE = 0.5
    RIGHT = 1.0


class Tag(NamedTuple):
    """What a page can find an item by; id and classes are made safe by `safe_id`."""

    id: str = ""
    classes: tuple[str, ...] = ()
    title: str = ""


class Stroke(NamedTuple):
    """How a line is drawn; colours are `#rrggbb`, width 0 means no line."""

    colour: str = BLACK
    width_pt: float = 1.0
    dash: Dash = Dash.SOLID


class Letters(NamedTuple):
    """How text is lettered; `backing` is a colour that hides what lies behind it, or empty."""

    size_pt: float = 9.0
    face: Face = Face.PLAIN
    align: Align = Align.LEFT
    colour: str = BLACK
    backing: str = ""


NO_TAG = Tag()
THIN = Stroke(width_pt=0.6)
LINE = Stroke(width_pt=1.0)
HEAVY = Stroke(width_pt=1.6)
NO_LINE = Stroke(width_pt=0.0)
PLAIN = Letters()


@dataclass(frozen=True, slots=True)
class Path:
    """A run of cubic Bezier pieces: 3 n + 1 control points."""

    controls: tuple[Point, ...]
    stroke: Stroke
    layer: Layer
    tag: Tag

    @property
    def bounds(self) -> Box:
        """The box round the control points, line width included."""
        return box_round(self.controls).grown(self.stroke.width_pt / 2)

    def moved(self, dx: float, dy: float) -> Path:
        """Return the same line shifted."""
        return replace(self, controls=tuple(point.moved(dx, dy) for point in self.controls))


@dataclass(frozen=True, slots=True)
class Shape:
    """A box or an oval; `fill` is a colour or empty for an outline only."""

    outline: Box
    is_round: bool
    fill: str
    stroke: Stroke
    layer: Layer
    tag: Tag

    @property
    def bounds(self) -> Box:
        """The outline, line width included."""
        return self.outline.grown(self.stroke.width_pt / 2)

    def moved(self, dx: float, dy: float) -> Shape:
        """Return the same shape shifted."""
        return replace(self, outline=self.outline.moved(dx, dy))


@dataclass(frozen=True, slots=True)
class Lettering:
    """One line of text; `at` is on its middle line, at the end or middle that the style says."""

    at: Point
    text: str
    style: Letters
    layer: Layer
    tag: Tag

    @property
    def bounds(self) -> Box:
        """The room the text takes, from ascender to descender."""
        width = text_width(self.text, self.style.size_pt, self.style.face)
        left = self.at.x - width * self.style.align.value
        half = self.style.size_pt * 0.55
        return Box(left, self.at.y - half, left + width, self.at.y + half)

    def moved(self, dx: float, dy: float) -> Lettering:
        """Return the same text shifted."""
        return replace(self, at=self.at.moved(dx, dy))


Item = Path | Shape | Lettering


@dataclass
class Canvas:
    """A sheet that collects items.

    Attributes:
        width: of the sheet, in points; may be set any time before rendering, as may the height.
        height: of the sheet, in points.
        title: names the document.
        id_prefix: begins every id, so that several sheets can stand in one page.
    """

    width: float = 0.0
    height: float = 0.0
    title: str = ""
    id_prefix: str = ""
    _items: list[Item] = field(default_factory=list, repr=False)
    _ids: set[str] = field(default_factory=set, repr=False)

    def in_order(self) -> list[Item]:
        """Return the items from the bottom up: by layer, then as they were drawn."""
        return sorted(self._items, key=lambda item: item.layer)

    def bounds(self) -> Box:
        """Return the box round all that is drawn so far, or an empty one at the top left."""
        return box_of_boxes(i.bounds for i in self._items) if self._items else Box(0, 0, 0, 0)

    def place(self, other: Canvas, dx: float, dy: float) -> None:
        """Take over all items of another canvas, shifted; ids stay unless one is taken already."""
        for item in other.in_order():
            moved = item.moved(dx, dy)
            self._items.append(replace(moved, tag=self._unique_as_is(moved.tag)))

    def line(
        self,
        points: Iterable[Point],
        stroke: Stroke = LINE,
        *,
        layer: Layer = Layer.WIRE,
        tag: Tag = NO_TAG,
    ) -> None:
        """Draw a straight line through two or more points."""
        self.curve(straight(points), stroke, layer=layer, tag=tag)

    def curve(
        self,
        controls: Iterable[Point],
        stroke: Stroke = LINE,
        *,
        layer: Layer = Layer.WIRE,
        tag: Tag = NO_TAG,
    ) -> None:
        """Draw cubic Bezier pieces through 3 n + 1 control points, at least four.

        Raises:
            ValueError: any other number of points.
        """
        held = tuple(Point(*control) for control in controls)
        if len(held) == 1 or len(held) % 3 != 1:
            raise ValueError(f"a curve takes 3 n + 1 control points, not {len(held)}")
        self._items.append(Path(held, stroke, layer, self._unique(tag)))

    def box(
        self,
        outline: Box,
        *,
        fill: str = "",
        stroke: Stroke = LINE,
        layer: Layer = Layer.SYMBOL,
        tag: Tag = NO_TAG,
    ) -> None:
        """Draw a rectangle, filled when `fill` is a colour."""
        tag = self._unique(tag)
        self._items.append(
            Shape(outline, is_round=False, fill=fill, stroke=stroke, layer=layer, tag=tag)
        )

    def oval(
        self,
        outline: Box,
        *,
        fill: str = "",
        stroke: Stroke = LINE,
        layer: Layer = Layer.SYMBOL,
        tag: Tag = NO_TAG,
    ) -> None:
        """Draw the circle or ellipse in the box, filled when `fill` is a colour."""
        tag = self._unique(tag)
        self._items.append(
            Shape(outline, is_round=True, fill=fill, stroke=stroke, layer=layer, tag=tag)
        )

    def text(
        self,
        at: Point,
        text: str,
        style: Letters = PLAIN,
        *,
        layer: Layer = Layer.TEXT,
        tag: Tag = NO_TAG,
    ) -> None:
        """Letter one line, literally; a blank text draws nothing."""
        shown = printable(text)
        if shown.strip():
            self._items.append(Lettering(at, shown, style, layer, self._unique(tag)))

    def _unique(self, tag: Tag) -> Tag:
        """Return the tag with a safe id that no other item of this canvas has."""
        wanted = safe_id(self.id_prefix + tag.id) if tag.id else ""
        classes = tuple(safe_id(name) for name in tag.classes)
        return self._unique_as_is(Tag(wanted, classes, printable(tag.title)))

    def _unique_as_is(self, tag: Tag) -> Tag:
        free, times = tag.id, 1
        while free and free in self._ids:
            times += 1
            free = f"{tag.id}--{times}"
        self._ids.add(free)
        return tag._replace(id=free)


def safe_id(name: str) -> str:
    """Return `name` as an id fit for XML and CSS; different names give different ids.

    ASCII letters stay, and so do digits and hyphens inside; any other character becomes its
    hexadecimal code point between underscores.
    """
    return "".join(
        c if _may_stand(c, first=not place) else f"_{ord(c):x}_" for place, c in enumerate(name)
    )


def _may_stand(character: str, *, first: bool) -> bool:
    if not character.isascii():
        return False
    return character.isalpha() or (not first and (character.isdigit() or character == "-"))
