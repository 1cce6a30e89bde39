"""The meter sheet on pages of A4: a table to take to the unit and to write the readings in.

Every page has the frame of the other sheets, with the cautions on top.  A row is one reading, and
leaves room for what was read.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from wirecheck.drawing.canvas import Canvas
from wirecheck.drawing.lettering import Face, text_width, wrapped
from wirecheck.drawing.sheet import TitleBlock, framed, title_block
from wirecheck.drawing.table import (
    BAR,
    BOLD,
    SIZE_PT,
    WIDTH,
    Column,
    Row,
    Words,
    heading,
    lines,
    paged,
    room_for,
    table,
)
from wirecheck.meter.reading import MeterSheet, Reading, Wrong

#: Findings listed at the foot; a check tells the rest.
MOST_FINDINGS = 6

COLUMNS = (
    Column("", 0.0, 22.0),
    Column("probes: red, then black", 22.0, 196.0),
    Column("shows", 196.0, 286.0),
    Column("you read", 286.0, 338.0),
    Column("another reading means", 338.0, WIDTH),
)
NUMBER, PROBES, SHOWS, READ, MEANS = COLUMNS


def meter_pages(sheet: MeterSheet) -> list[Canvas]:
    """The pages of a meter sheet, as many as it takes."""
    blocks = _blocks(sheet)
    pages = list(paged(list(_rows(sheet)), *blocks))
    finished = []
    for number, rows in enumerate(pages, 1):
        block = blocks[0] if number == 1 else blocks[1]
        name = f"Meter sheet {number} of {len(pages)}"
        content = table(rows, room_for(block), "Meter sheet", f"meter-{number}-")
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


def _rows(sheet: MeterSheet) -> Iterator[Row]:
    yield _across([*_head(sheet)])
    yield heading(COLUMNS)
    for section in sheet.sections:
        set_up = [words for line in section.set_up for words in lines(line)]
        yield Row(across=(Words(section.title, BAR), *set_up), bar=True)
        for group in section.groups:
            if group.name:
                yield _across([Words(f"at {group.name}", BOLD)])
            if group.notes:
                yield _across([words for note in group.notes for words in lines(note)])
            yield from map(_reading, group.readings)


def _across(words: list[Words]) -> Row:
    return Row(across=tuple(words))


def _head(sheet: MeterSheet) -> Iterator[Words]:
    """What goes for all of it."""
    if not sheet.is_good:
        warning = "As drawn, not as it should be: these values are those of the unit with its "
        yield from lines(f"{warning}mistakes. Mend first.", BOLD)
    for danger in sheet.dangers:
        yield from lines(f"Danger: {danger}", BOLD)
    for caution in sheet.cautions:
        yield from lines(f"! {caution}")
    for line in (*sheet.as_drawn, *sheet.remarks):
        yield from lines(line)


def _reading(reading: Reading) -> Row:
    return Row(
        (
            (NUMBER, (Words(str(reading.step), BOLD),)),
            (PROBES, tuple(_places(reading))),
            (SHOWS, tuple(lines(reading.good, BOLD, SHOWS))),
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
    yield Words(f"{reading.meter}{series}{mark}", BOLD)
    ends = [reading.red.shown, *([reading.black.shown] if reading.black else [])]
    yield from lines(" / ".join(ends), column=PROBES)
    if reading.how:
        yield from lines(f"first: {reading.how}", column=PROBES)


def _meaning(wrong: Wrong) -> Iterator[Words]:
    """Another reading in bold, and what it means."""
    lead = f"{wrong.reading}: "
    bolder = text_width(lead, SIZE_PT, Face.BOLD) - text_width(lead, SIZE_PT)
    first, *rest = wrapped(f"{lead}{wrong.means}", MEANS.room - bolder, SIZE_PT)
    behind = first.removeprefix(lead)
    yield Words(behind, lead=lead) if behind != first else Words(first)
    yield from map(Words, rest)
