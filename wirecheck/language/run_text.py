"""A lead's statement read again where it stands, to see which stretches of text an edit changes.

The model keeps where each end of a lead stands, not its brackets, commas and colons: those are
needed only for the few statements that are edited.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from functools import lru_cache
from typing import Final, NamedTuple

from lark import UnexpectedInput

from wirecheck.language.cut import cut
from wirecheck.language.parser import parse_statement
from wirecheck.language.statements import (
    JumperStatement,
    PlugStatement,
    Statement,
    WireStatement,
    Words,
    end_of,
    start_of,
)
from wirecheck.model.diagram import Lead
from wirecheck.model.text import SourceFile, Span

#: What ends a line; CRLF does too.
LINE_ENDS: Final = ("\n", "\r", "\x85", "\u2028", "\u2029")
_LINE_END: Final = re.compile(f"\r\n|[{''.join(LINE_ENDS)}]")


class Piece(NamedTuple):
    """Characters ``start`` up to ``end`` of the source, and what is to stand there instead."""

    start: int
    end: int
    new_text: str


class StopText(NamedTuple):
    """A stop of a run.

    ``start`` and ``end`` are those of its place, ``brackets_end`` that of its brackets (of the
    place if it has none); ``passed``: it names a part alone or a contact, so that what follows
    may leave from another terminal.
    """

    start: int
    end: int
    brackets_end: int
    passed: bool


class RunText(NamedTuple):
    """The text of one wire or jumper statement.

    ``attributes`` are the stretches of those behind the colon; ``lead_at`` is the stop the lead in
    question leaves from; ``keyword`` is the first word as typed.
    """

    source: SourceFile
    start: int
    end: int
    stops: tuple[StopText, ...]
    attributes: tuple[tuple[int, int], ...]
    lead_at: int
    keyword: str

    @property
    def span(self) -> Span:
        """The whole statement."""
        return Span(self.source, self.start, self.end)

    def brackets(self, at: int) -> str:
        """The brackets behind a stop, with the blanks before them; "" if there are none."""
        return self.source.text[self.stops[at].end : self.stops[at].brackets_end]


class PlugText(NamedTuple):
    """The text of one plug statement: the stretch of each pin, and which one is in question."""

    source: SourceFile
    start: int
    end: int
    pins: tuple[tuple[int, int], ...]
    pin_at: int

    @property
    def span(self) -> Span:
        """The whole statement."""
        return Span(self.source, self.start, self.end)


def run_text(lead: Lead) -> RunText | None:
    """The statement of a wire's or jumper's lead; None if it could not be read."""
    span = lead.statement
    statement, text = _read_again(span.text)
    if not isinstance(statement, WireStatement | JumperStatement):
        return None
    stops = tuple(
        StopText(
            span.start + stop.place.start,
            span.start + stop.place.end,
            span.start + (_closing(text, stop.own) if stop.own else stop.place.end),
            stop.place.terminal is None or stop.place.through is not None,
        )
        for stop in statement.stops
    )
    attributes = tuple(
        (span.start + start_of(words[0]), span.start + end_of(words[-1]))
        for words in statement.attributes
    )
    starts = [stop.start for stop in stops]
    at = starts.index(lead.a_span.start)
    keyword = span.text.split(maxsplit=1)[0]
    return RunText(span.source, span.start, span.end, stops, attributes, at, keyword)


def plug_text(lead: Lead) -> PlugText | None:
    """The statement of a lead in a harness; None if it could not be read."""
    span = lead.statement
    statement, _text = _read_again(span.text)
    if not isinstance(statement, PlugStatement):
        return None
    pins = tuple(
        (span.start + pin.terminal.start, span.start + (pin.to or pin.terminal).end)
        for pin in statement.pins
    )
    at = [start for start, _end in pins].index(lead.a_span.start)
    return PlugText(span.source, span.start, span.end, pins, at)


def merged(source: SourceFile, pieces: Iterable[Piece]) -> tuple[Span, str]:
    """Several changes as one: the stretch from the first to the last, and its new text."""
    ordered = sorted(pieces)
    start, end = ordered[0].start, ordered[-1].end
    texts, at = [], start
    for piece in ordered:
        texts += [source.text[at : piece.start], piece.new_text]
        at = piece.end
    return Span(source, start, end), "".join(texts)


def whole_lines(span: Span) -> Span:
    """The lines a statement stands in, its comment and its line end with it."""
    text = span.source.text
    behind = _LINE_END.search(text, span.end)
    end = behind.end() if behind else len(text)
    return Span(span.source, span.start - len(indent(span)), end)


def indent(span: Span) -> str:
    """The blanks in front of a statement: nothing else stands before it in its line."""
    text, start = span.source.text, span.start
    while start and not _LINE_END.match(text[start - 1]):
        start -= 1
    return text[start : span.start]


def line_break(span: Span) -> str:
    """The line end behind a statement, or else before it: CRLF or a line feed."""
    text = span.source.text
    behind = _LINE_END.search(text, span.end)
    start = span.start - len(indent(span))
    before = text[max(start - 2, 0) : start]
    return "\r\n" if (behind[0] if behind else before) == "\r\n" else "\n"


@lru_cache(maxsize=1024)
def _read_again(typed: str) -> tuple[Statement | None, str]:
    """A statement read by itself; kept, as whoever tries many edits asks for the same ones."""
    text = cut(SourceFile("", typed)).text
    try:
        return parse_statement(text, 0, len(text)), text
    except UnexpectedInput:
        from wirecheck.language.mend import mend

        return mend(text).statement, text


def _closing(text: str, own: list[Words]) -> int:
    return text.index(")", end_of(own[-1][-1])) + 1
