"""Text from a file made harmless for a terminal, and how wide it is there.

A label can hold anything: an escape that clears the screen, a mark that turns the reading
direction round. What does not print is shown as its code, so that nothing acts and nothing hides.
"""

from __future__ import annotations

import unicodedata
from typing import Final

#: Characters that print nothing themselves: controls, formats (the reading-direction marks among
#: them), lone surrogates, private use, unassigned, line and paragraph separators (Unicode
#: general categories).
_UNSEEN: Final = frozenset({"Cc", "Cf", "Cs", "Co", "Cn", "Zl", "Zp"})
#: East Asian widths that take two cells (Unicode annex 11).
_WIDE: Final = frozenset({"W", "F"})


def visible(text: str) -> str:
    """Return the text with every character that does not print replaced by its code."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(map(_shown, text))


def _shown(character: str) -> str:
    if character == "\t":
        return " "
    if unicodedata.category(character) not in _UNSEEN:
        return character
    return character.encode("unicode_escape").decode("ascii")


def cells(text: str) -> int:
    """Return how many cells of a terminal a visible text takes."""
    if text.isascii():
        return len(text)
    return sum(map(_cells_of, text))


def _cells_of(character: str) -> int:
    if unicodedata.combining(character):
        return 0
    return 2 if unicodedata.east_asian_width(character) in _WIDE else 1


def folded(text: str, width: int, first: str = "", rest: str = "") -> list[str]:
    """Break a text into lines of at most ``width`` cells where it has blanks.

    ``first`` stands in front of the first line, ``rest`` in front of the others; a word wider than
    a line keeps a line of its own, as a path cut in two is of no use.
    """
    lines: list[str] = []
    line, bare = first, True
    for word in text.split():
        if not bare and cells(line) + 1 + cells(word) > width:
            lines.append(line)
            line, bare = rest, True
        line = f"{line}{word}" if bare else f"{line} {word}"
        bare = False
    return [*lines, line]
