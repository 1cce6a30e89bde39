"""Cutting a text into statements, before any of them is parsed.

A statement is one line; it goes on where a line ends with a comma or with the keyword ``to``,
blank lines and comments in between or not.  A line that begins with a statement word always
begins a new statement, so one bad statement costs only itself.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.language.characters import read_as_meant
from wirecheck.language.spelling import NAME_CHARACTERS
from wirecheck.language.statements import STATEMENT_WORDS
from wirecheck.model.text import SourceFile

#: What may stand before a comment; a quote without its partner counts as any character.
_BEFORE_COMMENT = re.compile(r'(?:[^"#]++|"(?:[^"]|"")*+"|")*+')
_STATEMENT_START = re.compile(rf'\s*(?:{"|".join(STATEMENT_WORDS)})(?![^\s"])', re.IGNORECASE)
_ENDS_WITH_TO = re.compile(rf"(?:^|[^.{NAME_CHARACTERS}])to$", re.IGNORECASE)


class Cut(NamedTuple):
    """A text ready for the parser.

    Attributes:
        text: as long as the source, comments blanked and odd characters read as meant.
        statements: start and end offset of each statement.
        comments: start and end offset of each comment, ``#`` included.
    """

    text: str
    statements: list[tuple[int, int]]
    comments: list[tuple[int, int]]


def cut(source: SourceFile) -> Cut:
    """Find the statements of a source."""
    text, comments = _blank_comments(read_as_meant(source.text))
    return Cut(text, list(_statements(text)), comments)


def _blank_comments(text: str) -> tuple[str, list[tuple[int, int]]]:
    if "#" not in text:
        return text, []
    comments: list[tuple[int, int]] = []
    pieces, done, length = [], 0, len(text)
    position = text.find("#")
    while position >= 0:
        line_start = text.rfind("\n", 0, position) + 1
        line_end = text.find("\n", position)
        line_end = length if line_end < 0 else line_end
        match = _BEFORE_COMMENT.match(text, line_start, line_end)
        start = match.end() if match else line_start
        if start < line_end:
            comments.append((start, start + len(text[start:line_end].rstrip())))
            pieces += [text[done:start], " " * (line_end - start)]
            done = line_end
        position = text.find("#", line_end)
    pieces.append(text[done:])
    return "".join(pieces), comments


def _statements(text: str) -> Iterator[tuple[int, int]]:
    begun, ended, goes_on = -1, -1, False
    position, length = 0, len(text)
    begins, ends_with_to = _STATEMENT_START.match, _ENDS_WITH_TO.search
    while position < length:
        line_end = text.find("\n", position)
        if line_end < 0:
            line_end = length
        line = text[position:line_end]
        content = line.strip()
        if content:
            if begun < 0 or not goes_on or begins(line):
                if begun >= 0:
                    yield begun, ended
                begun = position + line.index(content[0])
            ended = position + len(line.rstrip())
            goes_on = content[-1] == "," or (
                content[-1] in "oO" and ends_with_to(content[-3:]) is not None
            )
        position = line_end + 1
    if begun >= 0:
        yield begun, ended
