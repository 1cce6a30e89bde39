"""What the words behind an opening fence say: ```` ```wiring name heater, on supply ````."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final, Literal, NamedTuple

from wirecheck.language.characters import read_as_meant
from wirecheck.language.spelling import NAME_CHARACTERS
from wirecheck.model.diagram import key_of
from wirecheck.model.finding import Problem
from wirecheck.model.nearest import either, nearest
from wirecheck.model.text import Span

Sheet = Literal["ladder", "connections"]

WIRING: Final = "wiring"
SHEETS: Final[tuple[Sheet, ...]] = ("ladder", "connections")
#: The words of a block, and what stands behind each.
WORDS: Final = {"name": "NAME", "on": "NAME", "draw": "ladder or draw connections", "piece": ""}

_TOKEN: Final = re.compile(rf'"(?:[^"]|"")*"|[{NAME_CHARACTERS}]+|,|\S')
#: So like ``wiring`` is nothing else that stands behind a fence.
_LIKENESS: Final = 0.82


class NameAt(NamedTuple):
    """A name, and where it stands."""

    text: str
    span: Span

    @property
    def key(self) -> str:
        """The form under which it is compared."""
        return key_of(self.text)


class Opening(NamedTuple):
    """What a block says of itself.

    Attributes:
        name: its name, if it has one.
        on: the blocks it builds on, in the order typed.
        sheets: the sheets that are drawn of it, and where that is said.
        piece: it is no diagram by itself: blocks that build on it are.
        problems: what of the words could not be used.
    """

    name: NameAt | None
    on: tuple[NameAt, ...]
    sheets: tuple[tuple[Sheet, Span], ...]
    piece: bool
    problems: tuple[Problem, ...]


class _Token(NamedTuple):
    text: str
    span: Span

    @property
    def word(self) -> str:
        return self.text.lower()

    @property
    def name(self) -> NameAt:
        quoted = self.text.startswith('"') and len(self.text) > 1
        text = self.text[1:-1].replace('""', '"') if quoted else self.text
        return NameAt(text, self.span)


def first_word(info: Span) -> Span:
    """The first word behind a fence: what the block is written in."""
    words = info.text.split(maxsplit=1)
    return info._replace(end=info.start + len(words[0]) if words else info.start)


def is_wiring(info: Span) -> bool:
    """Whether a block is one of wiring."""
    return first_word(info).text.lower() == WIRING


def meant_as_wiring(info: Span) -> Problem | None:
    """The problem of a block whose first word is a slip of ``wiring``."""
    from difflib import get_close_matches

    word = first_word(info)
    letters = "".join(filter(str.isalpha, word.text.lower()))
    if letters and get_close_matches(letters, [WIRING], cutoff=_LIKENESS):
        message = (
            f"“{word.text}” is not wiring: this block was not read; write {WIRING} and a blank"
        )
        return Problem(message, word, WIRING)
    return None


def read_opening(info: Span) -> Opening:
    """Read the words of a wiring block, commas between them."""
    reader = _Reader()
    for item in _items(list(_tokens(info))):
        reader.read(item)
    return Opening(
        reader.name, tuple(reader.on), tuple(reader.sheets), reader.piece, tuple(reader.problems)
    )


def _tokens(info: Span) -> Iterator[_Token]:
    text = read_as_meant(info.text)
    for match in _TOKEN.finditer(text, len(first_word(info).text)):
        span = Span(info.source, info.start + match.start(), info.start + match.end())
        yield _Token(match[0], span)


def _items(tokens: list[_Token]) -> Iterator[list[_Token]]:
    """What stands between commas; of two commas in a row the second is one too many."""
    item: list[_Token] = []
    for token in tokens:
        if token.text == ",":
            if item:
                yield item
            item = []
        else:
            item.append(token)
    if item:
        yield item


class _Reader:
    """Reads one item after the other."""

    def __init__(self) -> None:
        self.name: NameAt | None = None
        self.on: list[NameAt] = []
        self.sheets: list[tuple[Sheet, Span]] = []
        self.piece = False
        self.problems: list[Problem] = []

    def read(self, item: list[_Token]) -> None:
        """Take in one item, such as ``name heater``, and those behind it without a comma."""
        rest = item
        while rest:
            rest = self._one(rest)

    def _one(self, item: list[_Token]) -> list[_Token]:
        """Take in an item; what follows it where a comma is missing, plainly meant, is left."""
        lone = next((token for token in item if token.text == '"'), None)
        if lone is not None:
            self._problem("a quote has no partner", lone.span)
            return []
        word, values = item[0], item[1:]
        if word.word not in WORDS:
            self._unknown(word)
            return []
        if values and values[0].text in "=:" and len(values) > 1:
            said = f"{word.text} {values[1].text}"
            self._problem(f"write {said}, with a blank between", values[0].span)
            values = values[1:]
        room = 0 if word.word == "piece" else 1
        for extra in values[room : room + 1]:
            self._too_much(extra)
        self._say(word, values)
        rest = values[room:]
        return rest if rest and rest[0].word in WORDS else []

    def _say(self, word: _Token, values: list[_Token]) -> None:
        if word.word == "piece":
            self.piece = True
        elif not values:
            self._problem(f"{word.text} what? Write {word.word} {WORDS[word.word]}", word.span)
        elif word.word == "draw":
            self._draw(values[0])
        elif word.word == "on":
            self.on.append(values[0].name)
        elif self.name is not None:
            self._problem(f"this block is called {self.name.text} already", values[0].span)
        else:
            self.name = values[0].name

    def _draw(self, value: _Token) -> None:
        for sheet in SHEETS:
            if value.word == sheet:
                self.sheets.append((sheet, value.span))
                return
        near = nearest(value.text, SHEETS)
        hint = f"did you mean {near}?" if near else f"there are {either(SHEETS)}"
        self._problem(f"“{value.text}” is no sheet; {hint}", value.span, near)

    def _unknown(self, word: _Token) -> None:
        near = nearest(word.text, WORDS) if word.text.isalpha() else None
        forms = [f"{each} {value}".strip() for each, value in WORDS.items()]
        hint = f"did you mean {near}?" if near else f"it takes {either(forms)}"
        message = f"“{word.text}” says nothing of a wiring block; {hint}"
        self._problem(message, word.span, near)

    def _too_much(self, extra: _Token) -> None:
        comma = extra.word in WORDS
        message = (
            f"a comma is missing before {extra.text}"
            if comma
            else f"“{extra.text}” is one word too many; put a name of several words in quotes"
        )
        self._problem(message, extra.span)

    def _problem(self, message: str, span: Span, near: str | None = None) -> None:
        self.problems.append(Problem(message, span, near))
