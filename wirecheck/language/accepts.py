"""Comments that accept a finding: ``# accept RULE: reason``, behind a statement or above it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final, NamedTuple

from wirecheck.language.cut import cut
from wirecheck.model.finding import Breaks, Finding
from wirecheck.model.text import SourceFile, Span

#: One rule or several; words that go on without a colon make a remark of it, not an acceptance.
_ACCEPT: Final = re.compile(
    r"#\s*accept\s+([\w-]+(?:\s*,\s*[\w-]+)*)\s*(?::[ \t]*(.*\S)?\s*)?", re.IGNORECASE
)


class Accept(NamedTuple):
    """One rule accepted by a comment.

    Attributes:
        rule: its name as typed, in small letters.
        reason: why; "" if none is given.
        span: the name of the rule in the comment.
        statement: where what is accepted begins: in the statement of that line, or the next.
    """

    rule: str
    reason: str
    span: Span
    statement: Span

    def covers(self, finding: Finding) -> bool:
        """Whether it is meant for a finding; one of safety only with a reason."""
        place, within = finding.span, self.statement
        return (
            self.rule == finding.rule
            and place.source is within.source
            and within.start <= place.start <= within.end
            and (bool(self.reason) or finding.breaks < Breaks.SAFETY)
        )


def accepts(source: SourceFile) -> list[Accept]:
    """What the comments of a text accept, in order."""
    if "accept" not in source.text.lower():
        return []
    _text, statements, comments = cut(source)
    return [
        accept for start, end in comments for accept in _in_comment(source, start, end, statements)
    ]


def _in_comment(
    source: SourceFile, start: int, end: int, statements: list[tuple[int, int]]
) -> Iterator[Accept]:
    found = _ACCEPT.fullmatch(source.text, start, end)
    if found is None:
        return
    statement = _statement_at(source, start, statements)
    for name in re.finditer(r"[\w-]+", found[1]):
        at = found.start(1) + name.start()
        span = Span(source, at, at + len(name[0]))
        yield Accept(name[0].lower(), found[2] or "", span, statement)


def _statement_at(source: SourceFile, comment: int, statements: list[tuple[int, int]]) -> Span:
    """The statement in whose line a comment stands, or else the next one; the line if none is."""
    line_start, line_end = source.line_span(comment)
    for start, end in statements:
        goes_on_here = start < line_end and end > line_start
        if goes_on_here or start >= line_end:
            return Span(source, start, end)
    return Span(source, line_start, max(line_start, line_end - 1))
