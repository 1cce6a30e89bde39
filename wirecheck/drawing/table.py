"""Tables on pages of A4: rows of words in columns, a heading on every page, bars between parts.

A row is as high as its highest cell and never cut in two; the table fills each page, so that room
is left to write in.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple

from wirecheck.drawing.canvas import HEAVY, LINE, THIN, Canvas, Layer, Letters
from wirecheck.drawing.geometry import Box, Point
from wirecheck.drawing.lettering import LINE_PITCH, Face, text_width, wrapped
from wirecheck.drawing.sheet import SIGNAL_COLOUR, TitleBlock, paper_for

#: Room between the margins of A4 upright, in points.
WIDTH = 533.0
SIZE_PT = 7.5

_PITCH = SIZE_PT * LINE_PITCH
_PAD = 3.0
_BAR = "#e4e4e4"
PLAIN = Letters(SIZE_PT)
BOLD = Letters(SIZE_PT, Face.BOLD)
BAR = Letters(9.0, Face.BOLD)


class Column(NamedTuple):
    """A column of a table: its heading and its left and right edge."""

    heading: str
    left: float
    right: float

    @property
    def room(self) -> float:
        """Width for lettering."""
        return self.right - self.left - 2 * _PAD


class Words(NamedTuple):
    """One line of a cell; ``lead`` stands in front of it in bold."""

    text: str
    style: Letters = PLAIN
    lead: str = ""


@dataclass(frozen=True)
class Row:
    """A row of a table: lines for each column, or one that goes all across.

    Attributes:
        cells: the lines, by column.
        across: lines that take the whole width instead.
        bar: it begins a part of the table, which has a heading of its own on the next pages.
        line_voltage: its first column carries the mark of line voltage.
        heading: it names the columns, and does so again on the next pages.
    """

    cells: tuple[tuple[Column, tuple[Words, ...]], ...] = ()
    across: tuple[Words, ...] = ()
    bar: bool = False
    line_voltage: bool = False
    heading: bool = False

    @property
    def height(self) -> float:
        """From line to line."""
        lines = max((len(words) for _column, words in self.cells), default=len(self.across))
        return lines * _PITCH + 2 * _PAD


def heading(columns: Sequence[Column]) -> Row:
    """The row that names the columns; it stands on every page its part goes on over."""
    return Row(tuple((c, tuple(lines(c.heading, BOLD, c))) for c in columns), heading=True)


def lines(text: str, style: Letters = PLAIN, column: Column | None = None) -> Iterator[Words]:
    """A text in lines that fit a column, or the whole width."""
    room = column.room if column else WIDTH - 2 * _PAD
    for line in wrapped(text, room, style.size_pt, style.face):
        yield Words(line, style)


def paged(rows: Sequence[Row], first: TitleBlock, others: TitleBlock) -> Iterator[list[Row]]:
    """The rows of each page; neither a bar nor a heading is the last of a page."""
    room = room_for(first)
    page: list[Row] = []
    again: list[Row] = []
    used = 0.0
    for place, row in enumerate(rows):
        needed = row.height + sum(each.height for each in _kept_with(rows, place))
        again = _again(again, rows, place)
        if used + needed > room and len(page) > 1:
            yield page
            room = room_for(others)
            page = [each for each in again if each is not row and not _names_again(row, each)]
            used = sum(each.height for each in page)
        page.append(row)
        used += row.height
    yield page


def _kept_with(rows: Sequence[Row], place: int) -> Iterator[Row]:
    """The rows that a bar or a heading must have below it on the same page."""
    while place + 1 < len(rows) and (rows[place].bar or rows[place].heading):
        place += 1
        yield rows[place]


def _again(again: list[Row], rows: Sequence[Row], place: int) -> list[Row]:
    """What a page begins with if the table goes on over it behind this row: heading and bar.

    A heading that stands below a bar holds for that part only, one above for all.
    """
    row = rows[place]
    if row.heading:
        below_a_bar = place > 0 and rows[place - 1].bar
        return [*(each for each in again if each.bar and below_a_bar), row]
    if row.bar:
        has_its_own = place + 1 < len(rows) and rows[place + 1].heading
        return [*(each for each in again if each.heading and not has_its_own), _continued(row)]
    return again


def _continued(bar: Row) -> Row:
    title = bar.across[0]
    return replace(bar, across=(title._replace(text=f"{title.text} (continued)"),))


def _names_again(row: Row, other: Row) -> bool:
    """Whether a bar would stand a second time on the page that it begins."""
    return row.bar and other.bar


def room_for(block: TitleBlock) -> float:
    """The greatest height of a table of full width on A4 upright, its lines included."""
    low, high = 0.0, 900.0
    while high - low > 0.5:
        middle = (low + high) / 2
        fits = paper_for(WIDTH + HEAVY.width_pt, middle + HEAVY.width_pt, block).name == "A4"
        low, high = (middle, high) if fits else (low, middle)
    return low


def table(rows: Sequence[Row], height: float, name: str, id_prefix: str) -> Canvas:
    """One page's table, as high as the page has room, the rest of it left to write in."""
    canvas = Canvas(WIDTH, height, name, id_prefix)
    canvas.box(Box(0, 0, WIDTH, height), stroke=LINE)
    top = 0.0
    for row in rows:
        _draw(canvas, row, top)
        top += row.height
        canvas.line([Point(0, top), Point(WIDTH, top)], HEAVY if row.bar else THIN)
    return canvas


def _draw(canvas: Canvas, row: Row, top: float) -> None:
    if row.bar:
        canvas.box(Box(0, top, WIDTH, top + row.height), fill=_BAR, stroke=THIN, layer=Layer.GROUND)
    if row.line_voltage:
        first = row.cells[0][0]
        mark = Box(first.left, top, first.right, top + row.height)
        canvas.box(mark, fill=SIGNAL_COLOUR, stroke=THIN, layer=Layer.GROUND)
    _letter(canvas, Point(_PAD, top), row.across)
    for column, words in row.cells:
        _letter(canvas, Point(column.left + _PAD, top), words)
        canvas.line([Point(column.right, top), Point(column.right, top + row.height)], THIN)


def _letter(canvas: Canvas, corner: Point, words: Sequence[Words]) -> None:
    for number, each in enumerate(words):
        at = corner.moved(0, _PAD + (number + 0.5) * _PITCH)
        canvas.text(at, each.lead, BOLD)
        indent = text_width(each.lead, SIZE_PT, Face.BOLD)
        canvas.text(at.moved(indent, 0), each.text, each.style)
