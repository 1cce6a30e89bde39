"""Slips that only the words themselves tell: a blank inside a kind's name, words behind an end.

Where the parser stops at such a word, its place alone would suggest a colon or a “to”.
"""

from __future__ import annotations

import re
from typing import Final, NamedTuple

from wirecheck.parts.attributes import COMMENT_SIGNS, understood
from wirecheck.parts.library import kind_names, lead_attributes
from wirecheck.parts.trade_names import is_trade_name, kind_meant
from wirecheck.parts.typed_values import Fault

_KIND_BEGUN: Final = re.compile(
    r"(?:part|kind)\s+(?:\"[^\"]*\"|[^\s\":]+)\s+is\s+(?P<first>[^\s\":,]+)\s+$", re.IGNORECASE
)
_WORDS: Final = re.compile(r"[^\s:,()\"]+(?:[ \t]+[^\s:,()\"]+)*")
_ARTICLES: Final = frozenset({"a", "an", "the"})
#: The longest name of a kind has so many words.
_MOST_WORDS: Final = 5

_END_BEGUN: Final = re.compile(
    r"(?:wire|jumper)\s+(?P<before>.*\sto\s+)?(?P<end>[^\s:,()\"]+)\s+$", re.IGNORECASE
)


_TERMINAL_ALONE: Final = re.compile(r"[\w\-/]*\w")


class Split(NamedTuple):
    """What is wrong, how many characters it is about, and what would be right ("" if unknown)."""

    message: str
    seen: int
    nearest: str


def split_words(before: str, after: str) -> Split | None:
    """What the words at the place of a fault are, if they tell more than their place does."""
    return _split_kind(before, after) or _behind_end(before, after)


def _split_kind(before: str, after: str) -> Split | None:
    """A kind of several words typed with blanks, an article before it or not."""
    begun, found = _KIND_BEGUN.match(before), _WORDS.match(after)
    if begun is None or found is None:
        return None
    first, words = begun["first"], found[0].split()[: _MOST_WORDS - 1]
    article = first.lower() in _ARTICLES
    for count in range(len(words), 1 if article else 0, -1):
        typed = words[:count] if article else [first, *words[:count]]
        joined = "-".join(typed)
        if joined.lower() in kind_names() or is_trade_name(joined) or _unlike_any(first, joined):
            meant = kind_meant(joined)
            if meant is not None:
                message = (
                    f"no kind of part is called “{' '.join(typed)}”; did you mean {meant.words}?"
                )
                return Split(message, len(" ".join(words[:count])), meant.nearest)
    return None


def _unlike_any(first: str, joined: str) -> bool:
    """Whether only the joined words are like a kind; the first alone may be one of the user's."""
    return first.lower() not in _ARTICLES and kind_meant(first) is None and "-" in joined


def _behind_end(before: str, after: str) -> Split | None:
    """A terminal without its dot, or words behind an end that are no attributes."""
    begun, found = _END_BEGUN.match(before), _WORDS.match(after)
    if begun is None or found is None or begun["end"].lower() == "to":
        return None
    end, words = begun["end"], found[0].split()
    word, goes_on = words[0], words[1:2] in (["to"], ["TO"], ["To"])
    if "?" in word or word.startswith(COMMENT_SIGNS):
        return None
    if not goes_on and (begun["before"] is None or _begins_attribute(words)):
        return None
    near = f"{end}.{word}"
    if _TERMINAL_ALONE.fullmatch(word) and "." not in end and (goes_on or len(words) == 1):
        message = f"a dot is missing between a part and its terminal: {near}"
        return Split(message, len(word), near)
    if goes_on:
        return None
    message = (
        f"behind an end stands “to”, or a colon and attributes; “{word}” is neither "
        "(a name has no blank, a comment begins with #)"
    )
    return Split(message, len(word), "")


def _begins_attribute(words: list[str]) -> bool:
    """Whether some of the words, from the first on, state an attribute of a lead."""
    specs = lead_attributes()
    return any(
        not isinstance(understood(tuple(words[:count]), specs), Fault)
        for count in range(1, min(len(words), _MOST_WORDS) + 1)
    )
