"""A table on a page of text: columns as wide as they need to be, long cells folded."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from wirecheck.report.page import WIDEST, Page
from wirecheck.report.visible import cells, folded, visible

_GAP = "  "


def table_text(headings: Sequence[str], rows: Sequence[Sequence[str]], page: Page) -> Iterator[str]:
    """Write a table, line by line, its columns lined up and no wider than the page.

    In a file or a pipe it takes what is comfortable to read, as rows are easier to follow unfolded.
    """
    shown = [[visible(cell) for cell in row] for row in rows]
    room = WIDEST if page.to_pipe else page.width
    widths = _widths([list(headings), *shown], room)
    yield from map(page.strong, _lines(headings, widths))
    for row in shown:
        yield from _lines(row, widths)


def _widths(rows: list[list[str]], page_width: int) -> list[int]:
    """The width of each column; what is too much is taken from the widest, step by step.

    No column is narrower than its longest word, as a terminal's name is not broken: a row whose
    words do not fit side by side is wider than the page, and still lined up.
    """
    columns = list(zip(*rows, strict=True))
    widths = [max(map(cells, column)) for column in columns]
    least = [max(map(_longest_word, column)) for column in columns]
    left = page_width - len(_GAP) * (len(widths) - 1)
    while sum(widths) > left:
        spare = [(width, -place) for place, width in enumerate(widths) if width > least[place]]
        if not spare:
            break
        widths[-max(spare)[1]] -= 1
    return widths


def _longest_word(text: str) -> int:
    return max(map(cells, text.split()), default=0)


def _lines(row: Sequence[str], widths: Sequence[int]) -> Iterator[str]:
    """Write one row, as many lines as its highest cell."""
    columns = [folded(cell, width) for cell, width in zip(row, widths, strict=True)]
    for number in range(max(map(len, columns))):
        line = [column[number] if number < len(column) else "" for column in columns]
        padded = (
            f"{text}{' ' * (width - cells(text))}" for text, width in zip(line, widths, strict=True)
        )
        yield _GAP.join(padded).rstrip()
