"""Where something stands in the text a person typed.

A span keeps character offsets into its source; lines and columns are worked out only when
something is printed.  Columns count code points from 1 and a tab counts as one.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Sequence
from typing import NamedTuple


class Within(NamedTuple):
    """Where a text stands in a larger one, whose lines and columns are told.

    Attributes:
        line: the line of the larger text that the first line of this one is.
        before: how many characters stand before each line of this one, such as the blanks of a
            list or the marks of a quotation; nothing stands before lines beyond the last.
    """

    line: int
    before: Sequence[int]


class SourceFile:
    """One text as it was read: its display name and its characters, no byte-order mark."""

    __slots__ = ("_line_starts", "name", "text", "within")

    def __init__(self, name: str, text: str, within: Within | None = None) -> None:
        """Keep the text; ``name`` is the path or title shown in front of every message."""
        self.name = name
        self.text = text
        self.within = within
        self._line_starts: list[int] | None = None

    def __repr__(self) -> str:
        """Show the name only: the text may be large."""
        return f"SourceFile({self.name!r})"

    @property
    def line_starts(self) -> list[int]:
        """Offsets of the first character of each line, in order."""
        if self._line_starts is None:
            starts = [0]
            find, position = self.text.find, -1
            while (position := find("\n", position + 1)) >= 0:
                starts.append(position + 1)
            self._line_starts = starts
        return self._line_starts

    def position(self, offset: int) -> tuple[int, int]:
        """Line and column of a character, both from 1, in the text that this one stands in."""
        number = bisect_right(self.line_starts, offset) - 1
        column = offset - self.line_starts[number] + 1
        if self.within is None:
            return number + 1, column
        before = self.within.before
        return self.within.line + number, column + (before[number] if number < len(before) else 0)

    def line_span(self, offset: int) -> tuple[int, int]:
        """Start of the line that holds ``offset``, and the start of the next line (or the end)."""
        line = bisect_right(self.line_starts, offset)
        start = self.line_starts[line - 1]
        end = self.line_starts[line] if line < len(self.line_starts) else len(self.text)
        return start, end


class Span(NamedTuple):
    """A half-open stretch of a source: characters ``start`` up to, not including, ``end``."""

    source: SourceFile
    start: int
    end: int

    @property
    def file(self) -> str:
        """Display name of the source."""
        return self.source.name

    @property
    def text(self) -> str:
        """The characters covered."""
        return self.source.text[self.start : self.end]

    @property
    def line(self) -> int:
        """Line of the first character, from 1."""
        return self.source.position(self.start)[0]

    @property
    def column(self) -> int:
        """Column of the first character, from 1."""
        return self.source.position(self.start)[1]

    @property
    def end_line(self) -> int:
        """Line of the end, from 1."""
        return self.source.position(self.end)[0]

    @property
    def end_column(self) -> int:
        """Column just behind the last character, from 1."""
        return self.source.position(self.end)[1]

    def __str__(self) -> str:
        """``file:line:column``, the form editors jump to (GNU coding standards, from memory)."""
        return f"{self.file}:{self.line}:{self.column}"
