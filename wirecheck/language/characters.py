"""From bytes to characters, and each character read as it was meant.

Nothing changes its offset: what phones, word processors and other systems put in is replaced one
character by one character, and what cannot be meant at all becomes a problem.
"""

from __future__ import annotations

import codecs
import re
from collections.abc import Iterator
from itertools import pairwise
from typing import Final

from wirecheck.model.finding import Problem
from wirecheck.model.text import SourceFile, Span

_OTHER_ENCODINGS: Final = (
    (codecs.BOM_UTF32_LE, "utf-32"),
    (codecs.BOM_UTF32_BE, "utf-32"),
    (codecs.BOM_UTF16_LE, "utf-16"),
    (codecs.BOM_UTF16_BE, "utf-16"),
)
#: A text with more zero bytes than one in so many is no text.
_ONE_ZERO_BYTE_IN: Final = 16

_CURLY: Final = "“”„‟"
_BLANKS: Final = "\t\v\f\u00a0\u1680\u180e\u200b\u202f\u205f\u2060\u3000\ufeff" + "".join(
    map(chr, range(0x2000, 0x200B))
)
_LINE_ENDS: Final = "\x85\u2028\u2029"
#: Characters that print nothing (control characters, halves of pairs), and the mark of lost bytes.
_ODD: Final = (
    "\x00-\x08\x0e-\x1f\x7f-\x84\x86-\x9f\u202a-\u202e\u2066-\u2069\ud800-\udfff\ufffd-\uffff"
)
_SPACING: Final = str.maketrans(dict.fromkeys(_BLANKS, " ") | dict.fromkeys(_LINE_ENDS, "\n"))
_AS_MEANT: Final = _SPACING | str.maketrans(dict.fromkeys(_CURLY, '"'))
_NEEDS_READING: Final = re.compile(f"[{_CURLY}{_BLANKS}{_LINE_ENDS}{_ODD}\r]")
_ODD_CHARACTER: Final = re.compile(f"[{_ODD}]")
_LONE_RETURN: Final = re.compile(r"\r(?!\n)")
_STRAIGHT_QUOTED: Final = re.compile(r'"[^"\n]*"')


def decode(data: bytes, name: str, problems: list[Problem]) -> SourceFile:
    """The characters of a file that should be UTF-8; bytes that are not become U+FFFD."""
    for mark, encoding in _OTHER_ENCODINGS:
        if data.startswith(mark):
            source = SourceFile(name, data.decode(encoding, errors="replace"))
            message = f"this file is {encoding.upper()}; save it as plain text in UTF-8"
            problems.append(Problem(message, Span(source, 0, 0)))
            return source
    if data.count(b"\x00") * _ONE_ZERO_BYTE_IN > len(data):
        source = SourceFile(name, "")
        problems.append(
            Problem("this is no text; save it as plain text in UTF-8", Span(source, 0, 0))
        )
        return source
    return SourceFile(name, data.decode("utf-8-sig", errors="replace"))


def odd_characters(source: SourceFile) -> Iterator[Problem]:
    """Characters that nobody means: at most one problem of a sort in a line."""
    returns = list(_LONE_RETURN.finditer(source.text))
    if returns:
        more = f" (and {len(returns) - 1} more)" if len(returns) > 1 else ""
        span = Span(source, *returns[0].span())
        yield Problem(f"a lone carriage return stands here{more}; end lines with a line feed", span)
    line_end = -1
    for match in _ODD_CHARACTER.finditer(source.text):
        if match.start() < line_end:
            continue
        _, line_end = source.line_span(match.start())
        yield Problem(_odd(match[0]), Span(source, *match.span()))


def _odd(character: str) -> str:
    if character == "\ufffd":
        return "what stands here is not UTF-8; save the file as UTF-8 and type the character again"
    return f"a character that does not print (U+{ord(character):04X}) stands here; take it away"


def read_as_meant(text: str) -> str:
    """The text for the parser, of the same length: straight quotes, plain blanks, line feeds.

    A curly quote inside straight ones is part of what they hold.
    """
    if not _NEEDS_READING.search(text):
        return text
    plain = _ODD_CHARACTER.sub(" ", text).replace("\r\n", " \n").replace("\r", "\n")
    if any(curly in plain for curly in _CURLY) and '"' in plain:
        return "".join(map(_read_line, plain.splitlines(keepends=True)))
    return plain.translate(_AS_MEANT)


def _read_line(line: str) -> str:
    """One line: as a whole, unless its straight quotes hold curly ones."""
    if line.count('"') % 2:
        return line.translate(_AS_MEANT)
    ends = [0]
    for match in _STRAIGHT_QUOTED.finditer(line):
        ends += match.span()
    ends.append(len(line))
    pieces = [line[start:end] for start, end in pairwise(ends)]
    pieces[::2] = [piece.translate(_AS_MEANT) for piece in pieces[::2]]
    pieces[1::2] = [piece.translate(_SPACING) for piece in pieces[1::2]]
    return "".join(pieces)
