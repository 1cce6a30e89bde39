"""Attributes as typed, made sense of against what the kind, or a lead, takes."""

from __future__ import annotations

from collections.abc import Mapping
from itertools import pairwise

from wirecheck.language.read import Parsed
from wirecheck.language.scope import Scope
from wirecheck.language.statements import Name, OneWord, Words, end_of, start_of
from wirecheck.model.diagram import Attribute
from wirecheck.model.finding import Problem
from wirecheck.model.kind import AttributeSpec
from wirecheck.model.text import Span
from wirecheck.parts.attributes import Word, interpret


def read_attributes(
    scope: Scope,
    parsed: Parsed,
    attributes: list[Words],
    specs: Mapping[str, AttributeSpec],
    owner: str,
) -> dict[str, Attribute]:
    """The attributes of one list; what cannot be read, or stands twice, becomes a problem."""
    given: dict[str, Attribute] = {}
    for words in attributes:
        result = _inch_mark(words, parsed) or interpret(
            [_word(word, parsed) for word in words], specs, owner
        )
        if isinstance(result, Problem):
            scope.problems.append(result)
        elif result.name in given:
            first = given[result.name].span.text
            scope.problem(f"{result.name} stands here twice: “{first}” before this", result.span)
        else:
            given[result.name] = result
    return given


def _inch_mark(words: Words, parsed: Parsed) -> Problem | None:
    """A quote right behind a number: two inch marks in one statement look like quoted text."""
    for number, text in pairwise(words):
        if isinstance(text, Name) and end_of(number) == text.start and str(number)[:1].isdigit():
            span = Span(parsed.source, text.start, text.start + 1)
            near = f"{number} in"
            return Problem(f"an inch mark stands here; write the unit: {near}", span, near)
    return None


def _word(word: OneWord, parsed: Parsed) -> Word:
    span = Span(parsed.source, start_of(word), end_of(word))
    if isinstance(word, Name):
        return Word(word.text, quoted=True, span=span)
    return Word(str(word), quoted=False, span=span)
