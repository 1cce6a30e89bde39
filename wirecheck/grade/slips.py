"""Slips of the pen read as what was meant: a letter too many in a word is no mistake of wiring."""

from __future__ import annotations

from collections.abc import Sequence

from wirecheck.language.build import Built
from wirecheck.language.load import load_text
from wirecheck.model.finding import Problem

#: A word read right can show another slip behind it; so often that is done.
_ROUNDS = 4


def read_as_meant(built: Built) -> Built:
    """Read a text again with each word that is not known read as the nearest that is.

    Words are exchanged in the text itself, line by line as they stand; a text that includes others
    stays as it is, and so does one that would get worse.
    """
    for _round in range(_ROUNDS):
        source = built.diagram.source
        if not built.problems or len(built.diagram.sources) > 1:
            break
        text = _exchanged(source.text, built.problems)
        if text == source.text:
            break
        again = load_text(text, source.name)
        if len(again.problems) >= len(built.problems):
            break
        built = again
    return built


def _exchanged(text: str, problems: Sequence[Problem]) -> str:
    """The text with the nearest right word in the place of each wrong one, from the end on."""
    words = {
        (each.span.start, each.span.end): each.nearest
        for each in problems
        if each.nearest and each.span.start < each.span.end and "\n" not in each.span.text
    }
    before = len(text) + 1
    for (start, end), word in sorted(words.items(), reverse=True):
        if end <= before:
            text = f"{text[:start]}{word}{text[end:]}"
            before = start
    return text
