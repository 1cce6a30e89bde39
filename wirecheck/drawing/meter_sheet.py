"""The meter sheet on pages of A4: a table to take to the unit and to write the readings in.

Every page has the frame of the other sheets, with the cautions on top.  A row is one reading, and
leaves room for what was read.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import NamedTuple

from wirecheck.drawing.canvas import HEAVY, LINE, THIN, Canvas, Layer, Letters
from wirecheck.drawing.geometry import Box, Point
from wirecheck.drawing.lettering import LINE_PITCH, Face, text_width, wrapped
from wirecheck.drawing.sheet import SIGNAL_COLOUR, TitleBlock, framed, paper_for, title_block
from wirecheck.meter.reading import MeterSheet, Reading, Wrong

#: Room between the margins of A4 upright, in points.
WIDTH = 533.0
#: Findings listed at the foot; a check tells the rest.
MOST_FINDINGS = 6

_SIZE_PT = 7.5
_PITCH = _SIZE_PT * LINE_PITCH
_PAD = 3.0
_BAR = "#e4e4e4"
_PLAIN = Letters(_SIZE_PT)
_BOLD = Letters(_SIZE_PT, Face.BOLD)
_STAGE = Letters(9.0, Face.BOLD)


class Column(NamedTuple):
    """A column of the table: its heading and its left and right edge."""

    heading: str
    left: float
    right: float

    @property
    def room(self) -> float:
        """Width for lettering."""
        return self.right - self.left - 2 * _PAD


COLUMNS = (
    Column("", 0.0, 22.0),
    Column("probes: red, then black", 22.0, 196.0),
    Column("shows", 196.0, 286.0),
    Column("you read", 286.0, 338.0),
    Column("another reading means", 338.0, WIDTH),
)
NUMBER, PROBES, SHOWS, READ, MEANS = COLUMNS


class Words(NamedTuple):
    """One line of a cell; ``lead`` stands in front of it in bold."""

    text: str
    style: Letters = _PLAIN
    lead: str = ""


@dataclass(frozen=True)
class Row:
    """A row of the table: lines for each column, or one that goes all across.

    Attributes:
        cells: the lines, by column.
        across: lines that take the whole width instead.
        bar: it begins a stage.
        line_voltage: it carries the mark of line voltage.
    """

    cells: tuple[tuple[Column, tuple[Words, ...]], ...] = ()
    across: tuple[Words, ...] = ()
    bar: bool = False
    line_voltage: bool = False

    @property
    def height(self) -> float:
        """From line to line."""
        lines = max((len(words) for _column, words in self.cells), default=len(self.across))
        return lines * _PITCH + 2 * _PAD


def meter_pages(sheet: MeterSheet) -> list[Canvas]:
    """The pages of a meter sheet, as many as it takes."""
    blocks = _blocks(sheet)
    pages = list(_paged(list(_rows(sheet)), blocks))
    finished = []
    for number, rows in enumerate(pages, 1):
        block = blocks[0] if number == 1 else blocks[1]
        name = f"Meter sheet {number} of {len(pages)}"
        content = _page(rows, _room(block), f"meter-{number}-")
        finished.append(framed(content, replace(block, sheet=name)))
    return finished


def _blocks(sheet: MeterSheet) -> tuple[TitleBlock, TitleBlock]:
    """The title blocks of the first page, which lists findings, and of the others."""
    mistakes = sorted(sheet.mistakes, key=lambda finding: finding.breaks, reverse=True)
    listed = tuple(mistakes[:MOST_FINDINGS])
    left = len(mistakes) - len(listed)
    notes = (f"and {left} more: see what wirecheck check tells",) if left else ()
    first = title_block(sheet.checked._replace(findings=listed), "Meter sheet", notes=notes)
    summary = title_block(sheet.checked, "Meter sheet").summary
    first = replace(first, summary=summary)
    return first, replace(first, findings=(), notes=())


def _room(block: TitleBlock) -> float:
    """The greatest height of a table of full width on A4 upright, its lines included."""
    low, high = 0.0, 900.0
    while high - low > 0.5:
        middle = (low + high) / 2
        fits = paper_for(WIDTH + HEAVY.width_pt, middle + HEAVY.width_pt, block).name == "A4"
        low, high = (middle, high) if fits else (low, middle)
    return low


def _paged(rows: Sequence[Row], blocks: tuple[TitleBlock, TitleBlock]) -> Iterator[list[Row]]:
    """The rows of each page; a stage's bar is never the last of a page."""
    heading = _heading()
    room = _room(blocks[0])
    page: list[Row] = []
    used, stage = 0.0, None
    for place, row in enumerate(rows):
        needed = row.height
        if row.bar:
            stage = row
            following = rows[place + 1] if place + 1 < len(rows) else None
            needed += following.height if following else 0.0
        if used + needed > room and len(page) > 1:
            yield page
            room = _room(blocks[1])
            page, used = [heading], heading.height
            if stage is not None and not row.bar:
                again = _continued(stage)
                page.append(again)
                used += again.height
        page.append(row)
        used += row.height
    yield page


# ---- rows ------------------------------------------------------------------------------------


def _heading() -> Row:
    return Row(tuple((column, (Words(column.heading, _BOLD),)) for column in COLUMNS))


def _continued(stage: Row) -> Row:
    title = stage.across[0]
    return replace(stage, across=(title._replace(text=f"{title.text} (continued)"),))


def _rows(sheet: MeterSheet) -> Iterator[Row]:
    yield _across([*_head(sheet)])
    yield _heading()
    for section in sheet.sections:
        set_up = [words for line in section.set_up for words in _wrapped(line)]
        yield Row(across=(Words(section.title, _STAGE), *set_up), bar=True)
        for group in section.groups:
            if group.name:
                yield _across([Words(f"at {group.name}", _BOLD)])
            if group.notes:
                yield _across([words for note in group.notes for words in _wrapped(note)])
            yield from map(_reading, group.readings)


def _across(lines: Sequence[Words]) -> Row:
    return Row(across=tuple(lines))


def _head(sheet: MeterSheet) -> Iterator[Words]:
    """What goes for all of it."""
    if not sheet.is_good:
        warning = "As drawn, not as it should be: these values are those of the unit with its "
        yield from _wrapped(f"{warning}mistakes. Mend first.", _BOLD)
    for danger in sheet.dangers:
        yield from _wrapped(f"Danger: {danger}", _BOLD)
    for caution in sheet.cautions:
        yield from _wrapped(f"! {caution}")
    for line in (*sheet.as_drawn, *sheet.remarks):
        yield from _wrapped(line)


def _reading(reading: Reading) -> Row:
    return Row(
        (
            (NUMBER, (Words(str(reading.step), _BOLD),)),
            (PROBES, tuple(_places(reading))),
            (SHOWS, tuple(_wrapped(reading.good, _BOLD, SHOWS))),
            (READ, ()),
            (
                MEANS,
                tuple(words for wrong in reading.wrong for words in _meaning(wrong)),
            ),
        ),
        line_voltage=reading.line_voltage,
    )


def _places(reading: Reading) -> Iterator[Words]:
    """What the meter is set to, where the probes go, and what to do first."""
    mark = "   LINE VOLTAGE" if reading.line_voltage else ""
    series = ", in series" if reading.in_series else ""
    yield Words(f"{reading.meter}{series}{mark}", _BOLD)
    ends = [reading.red.shown, *([reading.black.shown] if reading.black else [])]
    yield from _wrapped(" / ".join(ends), column=PROBES)
    if reading.how:
        yield from _wrapped(f"first: {reading.how}", column=PROBES)


def _meaning(wrong: Wrong) -> Iterator[Words]:
    """Another reading in bold, and what it means."""
    lead = f"{wrong.reading}: "
    bolder = text_width(lead, _SIZE_PT, Face.BOLD) - text_width(lead, _SIZE_PT)
    first, *rest = wrapped(f"{lead}{wrong.means}", MEANS.room - bolder, _SIZE_PT)
    behind = first.removeprefix(lead)
    yield Words(behind, lead=lead) if behind != first else Words(first)
    yield from map(Words, rest)


def _wrapped(text: str, style: Letters = _PLAIN, column: Column | None = None) -> Iterator[Words]:
    room = column.room if column else WIDTH - 2 * _PAD
    for line in wrapped(text, room, style.size_pt, style.face):
        yield Words(line, style)


# ---- ink -------------------------------------------------------------------------------------


def _page(rows: Sequence[Row], height: float, id_prefix: str) -> Canvas:
    """One page's table, as high as the page has room, the rest of it left to write in."""
    canvas = Canvas(WIDTH, height, "Meter sheet", id_prefix)
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
        mark = Box(NUMBER.left, top, NUMBER.right, top + row.height)
        canvas.box(mark, fill=SIGNAL_COLOUR, stroke=THIN, layer=Layer.GROUND)
    _letter(canvas, Point(_PAD, top), row.across)
    for column, words in row.cells:
        _letter(canvas, Point(column.left + _PAD, top), words)
        canvas.line([Point(column.right, top), Point(column.right, top + row.height)], THIN)


def _letter(canvas: Canvas, corner: Point, words: Sequence[Words]) -> None:
    for number, each in enumerate(words):
        at = corner.moved(0, _PAD + (number + 0.5) * _PITCH)
        canvas.text(at, each.lead, _BOLD)
        indent = text_width(each.lead, _SIZE_PT, Face.BOLD)
        canvas.text(at.moved(indent, 0), each.text, each.style)
