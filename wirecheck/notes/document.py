"""A document and the blocks of wiring in it."""

from __future__ import annotations

import re
from collections.abc import Iterator
from itertools import chain
from pathlib import Path, PurePath
from typing import Final, NamedTuple

from wirecheck.language.characters import decode
from wirecheck.language.read import LARGEST_FILE_BYTES
from wirecheck.model.finding import NotChecked, Problem
from wirecheck.model.text import SourceFile, Span, Within
from wirecheck.notes.fences import Fence, Form, find_fences
from wirecheck.notes.opening import NameAt, Sheet, is_wiring, meant_as_wiring, read_opening

PLAIN: Final = (".txt", ".text")
#: How documents of a folder are known; others are read if they are named.
SUFFIXES: Final = (".md", ".markdown", *PLAIN)

_FENCE_INSIDE: Final = re.compile(r"^[ \t]*(?P<fence>`{3,}|~{3,})(?P<info>[^\r\n]*)", re.MULTILINE)
_LONE_RETURN: Final = re.compile(r"\r(?!\n)")


class Block(NamedTuple):
    """A block of wiring in a document.

    Attributes:
        name: if it has one; ``opening`` is the whole line that opens it.
        on: the blocks it builds on.
        sheets: the sheets that are drawn of it, each with the place that says so.
        piece: it is no diagram by itself.
        lost: where it ends is not known, so nothing of it was read.
        source: what stands in it.
        before: what stands in the document before each of its lines and before the fence that
            closes it: the blanks of a list, the marks of a quotation.
    """

    name: NameAt | None
    opening: Span
    on: tuple[NameAt, ...]
    sheets: tuple[tuple[Sheet, Span], ...]
    piece: bool
    lost: bool
    source: SourceFile
    before: tuple[str, ...]


class Document(NamedTuple):
    """A document as it was read.

    Attributes:
        source: its whole text.
        path: where it lies; None if nowhere, as standard input does.
        blocks: its blocks of wiring, in the order of the text.
        problems: what of it could not be used; those inside the blocks are not among them.
        passed_over: what looks like a block of wiring and was not read.
    """

    source: SourceFile
    path: Path | None
    blocks: tuple[Block, ...]
    problems: tuple[Problem, ...]
    passed_over: tuple[NotChecked, ...]


def form_of(name: str) -> Form:
    """How a document is read: as plain text if its name says so, else as Markdown."""
    return "plain" if PurePath(name).suffix.lower() in PLAIN else "markdown"


def read_document(path: Path, name: str) -> Document:
    """Read a document that lies in a folder; ``name`` stands in front of its messages.

    Raises:
        OSError: it cannot be read, or is larger than any document.
    """
    with path.open("rb") as file:
        data = file.read(LARGEST_FILE_BYTES + 1)
    return read_data(data, name, path)


def read_data(data: bytes, name: str, path: Path | None = None) -> Document:
    """Read the bytes of a document; without a path it can include nothing and draw nothing.

    Raises:
        OSError: it is larger than any document.
    """
    if len(data) > LARGEST_FILE_BYTES:
        raise OSError(0, f"it has more than {LARGEST_FILE_BYTES // (1024 * 1024)} MB")
    problems: list[Problem] = []
    source = decode(data, name, problems)
    lone = _LONE_RETURN.search(source.text)
    if lone:
        message = "a lone carriage return stands here: a fence behind it is not seen"
        problems.append(Problem(message, Span(source, *lone.span())))
    found = find_fences(source, form_of(name))
    blocks: list[Block] = []
    for fence in chain.from_iterable(map(_taken_apart, found.fences)):
        if is_wiring(fence.info):
            blocks.append(_block(fence, problems))
        else:
            slip = meant_as_wiring(fence.info)
            problems.extend([slip] if slip else [])
    passed_over = tuple(
        NotChecked("a fence that opens no block", shown.reason, shown.line)
        for shown in found.shown
        if is_wiring(shown.info)
    )
    return Document(source, path, tuple(blocks), tuple(problems), passed_over)


def _block(fence: Fence, problems: list[Problem]) -> Block:
    """The block of a fence; one whose end is not known is left empty."""
    said = read_opening(fence.info)
    problems.extend(said.problems)
    source = fence.content
    if not fence.closed:
        mark = fence.opening.text[:3]
        message = f"nothing closes this block, so it was not read: end it with a line of {mark}"
        problems.append(Problem(message, fence.opening))
        source = SourceFile(source.name, "", source.within)
    return Block(
        said.name,
        fence.opening,
        said.on,
        said.sheets,
        said.piece,
        not fence.closed,
        source,
        fence.before,
    )


def _taken_apart(fence: Fence) -> Iterator[Fence]:
    """A fence, and those inside it that were meant to stand behind it.

    No wiring begins with a fence: where one stands in a block, the block was not closed.
    """
    inside = list(_FENCE_INSIDE.finditer(fence.content.text)) if is_wiring(fence.info) else []
    opened = fence
    for match in inside:
        yield opened._replace(closed=False)
        opened = _opened_at(fence, match)
        if not is_wiring(opened.info):
            return  # what it holds is no wiring, wherever it ends
    yield _with_rest(opened, fence, inside[-1]) if inside else opened


def _opened_at(fence: Fence, match: re.Match[str]) -> Fence:
    """The fence that opens inside another one, with nothing in it."""
    document, content = fence.info.source, fence.content
    line, column = content.position(match.start("fence"))
    start = document.line_starts[line - 1] + column - 1
    info = start + match.start("info") - match.start("fence")
    end = start + match.end() - match.start("fence")
    nothing = SourceFile(content.name, "", Within(line + 1, ()))
    return Fence(Span(document, info, end), Span(document, start, end), nothing, (), fence.closed)


def _with_rest(opened: Fence, fence: Fence, match: re.Match[str]) -> Fence:
    """The last fence that opens inside another one, with what stands from there to its end."""
    content = fence.content
    line = opened.opening.line
    before = fence.before[line + 1 - (content.within or Within(1, ())).line :]
    within = Within(line + 1, tuple(map(len, before)))
    rest = SourceFile(content.name, content.text[match.end() :].partition("\n")[2], within)
    return opened._replace(content=rest, before=before)
