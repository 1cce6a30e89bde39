"""The lists of a diagram on pages of A4: to order by, to pull leads by, and to tick off."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from wirecheck.drawing.canvas import Canvas
from wirecheck.drawing.lettering import Face, text_width
from wirecheck.drawing.sheet import framed, title_block
from wirecheck.drawing.table import (
    BAR,
    PLAIN,
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
from wirecheck.lists.lists import Lists
from wirecheck.lists.tables import Table, What, tables

#: No column is so narrow that a short word does not fit into it.
_NARROWEST_PT = 34.0
#: Room beside the lettering of a column.
_BESIDE_PT = 8.0


def lists_pages(lists: Lists, what: Sequence[What], date: str = "") -> list[Canvas]:
    """The pages of some lists, as many as it takes.

    Args:
        lists: what `wirecheck.lists.lists.lists_of` gave.
        what: which of them.
        date: as it shall be printed in the title block.
    """
    block = replace(title_block(lists.checked, "Lists", date=date), findings=())
    rows = [row for each in tables(lists, what) for row in _rows(each)]
    pages = list(paged(rows, block, block))
    return [
        framed(
            table(page, room_for(block), "Lists", f"lists-{number}-"),
            replace(block, sheet=f"Lists {number} of {len(pages)}"),
        )
        for number, page in enumerate(pages, 1)
    ]


def _rows(shown: Table) -> Iterator[Row]:
    columns = _columns(shown)
    note = tuple(lines(shown.note)) if shown.note else ()
    yield Row(across=(Words(shown.title, BAR), *note), bar=True)
    yield heading(columns)
    for cells, line_voltage in zip(shown.rows, shown.line_voltage, strict=True):
        filled = (
            (column, tuple(lines(text, PLAIN, column)))
            for column, text in zip(columns, cells, strict=True)
        )
        yield Row(tuple(filled), line_voltage=line_voltage)


def _columns(shown: Table) -> list[Column]:
    """Columns as wide as their texts; what is too much is taken from the widest."""
    widths = [
        max(
            _NARROWEST_PT if heading_text else 0.0,
            text_width(heading_text, SIZE_PT, Face.BOLD) + _BESIDE_PT,
            *(text_width(row[place], SIZE_PT) + _BESIDE_PT for row in shown.rows),
        )
        for place, heading_text in enumerate(shown.headings)
    ]
    widths = _shared_out(widths)
    edges = [sum(widths[:place]) for place in range(len(widths) + 1)]
    return [
        Column(text, left, right)
        for text, left, right in zip(shown.headings, edges, edges[1:], strict=False)
    ]


def _shared_out(widths: list[float]) -> list[float]:
    """The widths, so that together they take the page: none is cut below an equal share."""
    if sum(widths) <= WIDTH:
        return [width * WIDTH / sum(widths) for width in widths]
    low, high = 0.0, max(widths)
    while high - low > 0.1:
        middle = (low + high) / 2
        fits = sum(min(width, middle) for width in widths) <= WIDTH
        low, high = (middle, high) if fits else (low, middle)
    cut = [min(width, low) for width in widths]
    return [*cut[:-1], WIDTH - sum(cut[:-1])]
