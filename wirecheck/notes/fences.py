"""Finding the fenced blocks of a document, each with its place in it.

Markdown is read by a parser of CommonMark, so a block may stand in a list or a quotation, and what
a comment or a longer fence holds is no block. In plain text only the fences count, whatever they
are indented by.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cache
from typing import TYPE_CHECKING, Final, Literal, NamedTuple

from wirecheck.model.text import SourceFile, Span, Within

if TYPE_CHECKING:
    from markdown_it import MarkdownIt
    from markdown_it.token import Token

Form = Literal["markdown", "plain"]

#: What a fence is made of (CommonMark: three or more of one of them).
FENCES: Final = ("```", "~~~")
#: HTML that shows its content as it is written (CommonMark, HTML blocks 1 to 5).
_VERBATIM: Final = ("<!", "<?", "<pre", "<script", "<style", "<textarea")
_FRONT_MATTER: Final = "---"
_ENDS_FRONT_MATTER: Final = ("---", "...")


class Fence(NamedTuple):
    """A fenced block.

    Attributes:
        info: the words behind the fence that opens it, in the document.
        opening: the fence and those words.
        content: what stands in it, as a text within the document.
        before: what stands before each line of it, and before the fence that closes it.
        closed: whether a fence closes it.
    """

    info: Span
    opening: Span
    content: SourceFile
    before: tuple[str, ...]
    closed: bool


class Shown(NamedTuple):
    """A line that looks like a fence and opens no block there, and why; ``info`` are its words."""

    line: Span
    info: Span
    reason: str


class Fences(NamedTuple):
    """The fenced blocks of a document, and what only looks like one, in the order of the text."""

    fences: list[Fence]
    shown: list[Shown]


def find_fences(document: SourceFile, form: Form) -> Fences:
    """Find the fenced blocks of a document."""
    # The parser drops characters and counts other line ends, so it gets a text of the same lines.
    text = document.text.replace("\r\n", "\n").replace("\r", " ").replace("\0", "\ufffd")
    lines = text.split("\n")
    if form == "markdown":
        _blank_front_matter(lines)
        seen = lines
    else:  # a line that runs on from one above it is told by being indented
        seen = [line.lstrip(" \t") for line in lines]
    found = Fences([], [])
    for token in _parser(form).parse("\n".join(seen)):
        if token.map is None:
            continue
        if token.type == "fence":
            found.fences.append(_fence(document, lines, token))
        elif token.type == "code_block":
            reason = "it is indented so far that it is shown as it is written"
            found.shown.extend(_looks_like_fences(document, lines, token, reason))
        elif token.type == "html_block" and not token.content.lower().startswith(_VERBATIM):
            reason = "it stands in HTML with no blank line between"
            found.shown.extend(_looks_like_fences(document, lines, token, reason))
    return found


@cache
def _parser(form: Form) -> MarkdownIt:
    """The parser, told to look for blocks only: what is inside a line does not matter."""
    from markdown_it import MarkdownIt

    parser = MarkdownIt("commonmark" if form == "markdown" else "zero")
    if form == "plain":
        parser.enable("fence")
    parser.core.ruler.enableOnly(["block"])
    return parser


def _blank_front_matter(lines: list[str]) -> None:
    """Blank what stands between two lines of ``---`` at the very top: it is no Markdown.

    No YAML line begins with a backquote: with a fence between them, they are two rules.
    """
    if lines[0].rstrip() != _FRONT_MATTER:
        return
    for number, line in enumerate(lines[1:], start=1):
        if line.startswith(FENCES):
            return
        if line.rstrip() in _ENDS_FRONT_MATTER:
            lines[: number + 1] = [""] * (number + 1)
            return


def _fence(document: SourceFile, lines: list[str], token: Token) -> Fence:
    first, behind = token.map or (0, 0)
    content = token.content.split("\n")
    if content[-1] == "":
        content.pop()
    closed = behind - first == len(content) + 2
    opening = lines[first]
    marker = opening.index(token.markup)
    words = opening[marker + len(token.markup) :]
    start = document.line_starts[first]
    info = start + len(opening) - len(words.lstrip()), start + len(opening.rstrip())
    before = [
        line[: len(line) - len(inside if line.endswith(inside) else inside.lstrip())]
        for line, inside in zip(lines[first + 1 :], content, strict=False)
    ]
    if closed:
        closing = lines[behind - 1]
        before.append(closing[: closing.index(token.markup)])
    return Fence(
        Span(document, min(info), info[1]),
        Span(document, start + marker, info[1]),
        _within(document, first + 1, before, len(content)),
        tuple(before),
        closed,
    )


def _within(document: SourceFile, first: int, before: Sequence[str], count: int) -> SourceFile:
    """So many lines of a document from one on, without what stands before each."""
    pieces = []
    for number in range(count):
        start, end = document.line_span(document.line_starts[first + number])
        pieces.append(document.text[start + len(before[number]) : end])
    within = Within(first + 1, tuple(map(len, before)))
    return SourceFile(document.name, "".join(pieces), within)


def _looks_like_fences(
    document: SourceFile, lines: list[str], token: Token, reason: str
) -> Iterator[Shown]:
    first, behind = token.map or (0, 0)
    for number in range(first, behind):
        line = lines[number]
        bare = line.strip(" \t>")
        words = bare.lstrip("`~").lstrip()
        if bare.startswith(FENCES) and words:
            start = document.line_starts[number] + line.index(bare)
            end = start + len(bare)
            yield Shown(Span(document, start, end), Span(document, end - len(words), end), reason)
