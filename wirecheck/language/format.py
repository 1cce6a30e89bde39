"""The canonical form of a text: the same statements and comments in the same order.

Keywords are lower-case, blanks single, quotes where they are needed, units by their symbols; one
blank line at most between two lines; what belongs to a variant is indented.  A statement longer
than a line goes on behind a ``to`` or a comma.  A statement that cannot be read stays as it is.
"""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator
from typing import Final, NamedTuple

from lark import UnexpectedInput

from wirecheck.language.canonical import Line, Piece, write
from wirecheck.language.cut import Cut, cut
from wirecheck.language.known_kinds import KnownKinds
from wirecheck.language.parser import parse_statement
from wirecheck.language.statements import (
    EndStatement,
    Name,
    Statement,
    VariantStatement,
)
from wirecheck.model.diagram import key_of
from wirecheck.model.text import SourceFile
from wirecheck.parts.amounts import parse_quantity

LINE_LENGTH: Final = 100
_INDENT: Final = "    "
_BEFORE_COMMENT: Final = "  "

Stretch = tuple[int, int]


def format_text(text: str) -> str:
    """The text in its canonical form; the first line end decides between CRLF and line feeds."""
    source = SourceFile("", text.removeprefix("\ufeff"))
    first = source.text.find("\n")
    newline = "\r\n" if first > 0 and source.text[first - 1] == "\r" else "\n"
    return "".join(f"{line}{newline}" for line in _lines(source))


class _Item(NamedTuple):
    """What stands in lines of its own: a statement with its comments, or a comment.

    ``end`` is behind the comment that ends its last line, if there is one.
    """

    start: int
    end: int
    statement: Statement | None
    inside: list[Stretch]
    behind: Stretch | None
    is_comment: bool


def _lines(source: SourceFile) -> Iterator[str]:
    whole = cut(source)
    items = list(_items(whole))
    known = KnownKinds(item.statement for item in items)
    indent, done = "", -1
    for item in items:
        if done >= 0 and whole.text.count("\n", done, item.start) > 1:
            yield ""
        done = item.end
        if isinstance(item.statement, VariantStatement | EndStatement):
            indent = ""
        if item.is_comment:
            yield indent + source.text[item.start : item.end]
        elif item.statement is None:
            yield from _as_it_is(source.text[item.start : item.end], indent)
        else:
            yield from _written(source, item, item.statement, known, indent)
        if isinstance(item.statement, VariantStatement):
            indent = _INDENT


def _items(whole: Cut) -> Iterator[_Item]:
    """Statements and the comments between them, in order; linear in the text."""
    comments = iter([*whole.comments, (len(whole.text) + 1, 0)])
    comment = next(comments)
    for start, end in whole.statements:
        while comment[0] < start:
            yield _Item(*comment, None, [], None, is_comment=True)
            comment = next(comments)
        inside: list[Stretch] = []
        while comment[0] < end:
            inside.append(comment)
            comment = next(comments)
        behind = None
        if comment[1] and "\n" not in whole.text[end : comment[0]]:
            behind, comment = comment, next(comments)
        stop = behind[1] if behind else end
        yield _Item(start, stop, _parsed(whole.text, start, end), inside, behind, is_comment=False)
    while comment[1]:
        yield _Item(*comment, None, [], None, is_comment=True)
        comment = next(comments)


def _parsed(text: str, start: int, end: int) -> Statement | None:
    try:
        return parse_statement(text, start, end)
    except UnexpectedInput:
        return None


def _as_it_is(text: str, indent: str) -> Iterator[str]:
    first, *more = text.replace("\r\n", "\n").replace("\r", "\n").split("\n")
    yield indent + first.rstrip(" \t")
    for line in more:
        yield line.rstrip(" \t")


def _written(
    source: SourceFile, item: _Item, statement: Statement, known: KnownKinds, indent: str
) -> list[str]:
    """The lines of a statement; as it is, should its canonical form not say the same."""
    line = Line()
    write(statement, line, known)
    pieces = line.pieces()
    lines = _broken(source, pieces, item, indent)
    if _says(lines, statement):
        return lines
    return list(_as_it_is(source.text[item.start : item.end], indent))


def _broken(source: SourceFile, pieces: list[Piece], item: _Item, indent: str) -> list[str]:
    """The pieces in lines that are not too long, each comment behind the piece it stood behind."""
    comments: dict[int, list[Stretch]] = {}
    ends = [piece.end for piece in pieces]
    for start, end in item.inside:
        comments.setdefault(bisect_right(ends, start) - 1, []).append((start, end))
    lines: list[str] = []
    current = indent + pieces[0].text
    for number, piece in enumerate(pieces[1:]):
        own_lines = list(comments.get(number, ()))
        if own_lines and "\n" not in source.text[pieces[number].end : own_lines[0][0]]:
            current += _BEFORE_COMMENT + source.text[slice(*own_lines.pop(0))]
        elif number not in comments and len(current) + len(piece.text) < LINE_LENGTH:
            current += " " + piece.text
            continue
        lines.append(current)
        lines += [indent + _INDENT + source.text[slice(*comment)] for comment in own_lines]
        current = indent + _INDENT + piece.text
    if item.behind:
        current += _BEFORE_COMMENT + source.text[slice(*item.behind)]
    return [*lines, current]


def _says(lines: list[str], statement: Statement) -> bool:
    """Whether the lines are one statement, whatever stands behind it, and say the same as this."""
    whole = cut(SourceFile("", "\n".join([*lines, "x"])))
    if len(whole.statements) != 2:
        return False
    again = _parsed(whole.text, *whole.statements[0])
    return again is not None and _meaning(again) == _meaning(statement)


def _meaning(node: object) -> object:
    """A statement without places and spellings; how often attributes stand, not what they say."""
    if isinstance(node, Name):
        return parse_quantity(node.text) or key_of(node.text)
    if isinstance(node, list):
        return [None if isinstance(each, list) else _meaning(each) for each in node]
    if isinstance(node, tuple):
        return (type(node), *map(_meaning, node))
    return None
