"""A table on a page of text: columns as wide as they need to be, long cells folded."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecheck.report.page import Page
from wirecheck.report.visible import cells, folded, visible

_GAP = "  "
#: No column is folded narrower than this.
_NARROWEST = 8


def table_text(headings: Sequence[str], rows: Sequence[Sequence[str]], page: Page) -> Iterator[str]:
    """Write a table, line by line, its columns lined up and no wider than the page."""
    shown = [[visible(cell) for cell in row] for row in rows]
    widths = _widths([list(headings), *shown], page.width)
    yield from map(page.strong, _lines(headings, widths))
    for row in shown:
        yield from _lines(row, widths)


def _widths(rows: Sequence[Sequence[str]], page_width: int) -> list[int]:
    """The width of each column; what is too much is taken from the widest, step by step."""
    widths = [max(cells(row[place]) for row in rows) for place in range(len(rows[0]))]
    left = page_width - len(_GAP) * (len(widths) - 1)
    while sum(widths) > left and max(widths) > _NARROWEST:
        widths[widths.index(max(widths))] -= 1
    return widths


def _lines(row: Sequence[str], widths: Sequence[int]) -> Iterator[str]:
    """Write one row, as many lines as its highest cell."""
    columns = [folded(cell, width) for cell, width in zip(row, widths, strict=True)]
    for number in range(max(map(len, columns))):
        line = [column[number] if number < len(column) else "" for column in columns]
        padded = (
            f"{text}{' ' * (width - cells(text))}" for text, width in zip(line, widths, strict=True)
        )
        yield _GAP.join(padded).rstrip()
