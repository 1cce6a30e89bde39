"""How much room lettering takes: widths, cutting and wrapping.

The embedded engine letters with Arimo (for Helvetica) and Cousine (for Courier), which have the
advance widths of Helvetica and Courier. The tables below are those widths in 1/1000 em, measured
from the engine's own layout of each character and equal to the Adobe core font metrics.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable
from enum import Enum


class Face(Enum):
    """A type face by the PostScript name that both engines know."""

    PLAIN = "Helvetica"
    BOLD = "Helvetica-Bold"
    MONO = "Courier"


LINE_PITCH = 1.25
"""Distance of two baselines, as a multiple of the letter size."""

# One number for each character from space to tilde, in 1/1000 em.
_PLAIN_WIDTHS = (
    278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278,
    556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 278, 278, 584, 584, 584, 556,
    1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
    667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556,
    333, 556, 556, 500, 556, 556, 278, 556, 556, 222, 222, 500, 222, 833, 556, 556,
    556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584,
)  # fmt: skip
_BOLD_WIDTHS = (
    278, 333, 474, 556, 556, 889, 722, 238, 333, 333, 389, 584, 278, 333, 278, 278,
    556, 556, 556, 556, 556, 556, 556, 556, 556, 556, 333, 333, 584, 584, 584, 611,
    975, 722, 722, 722, 722, 667, 611, 778, 722, 278, 556, 722, 611, 833, 722, 778,
    667, 778, 722, 667, 611, 722, 667, 944, 667, 667, 611, 333, 278, 333, 584, 556,
    333, 556, 611, 556, 611, 556, 333, 611, 611, 278, 278, 556, 278, 889, 611, 611,
    611, 611, 389, 556, 333, 611, 556, 778, 556, 556, 500, 389, 280, 389, 584,
)  # fmt: skip
_MONO_WIDTH = 600
_OTHER_WIDTH = 780
"""Taken for a letter outside the table: as wide as the widest common Greek or Cyrillic capital."""
_FULL_WIDTH = 1000
_ELLIPSIS = "..."


def text_width(text: str, size_pt: float, face: Face = Face.PLAIN) -> float:
    """Return the width of one line of `text` in points; generous outside ASCII."""
    return sum(map(_WIDTHS[face].__getitem__, text)) * size_pt / 1000


class _Widths(dict[str, int]):
    """The widths of a face, those of characters outside the table worked out when first met."""

    def __init__(self, table: Iterable[int]) -> None:
        super().__init__((chr(32 + place), width) for place, width in enumerate(table))

    def __missing__(self, character: str) -> int:
        width = self[character] = self._other_width(character)
        return width

    def _other_width(self, character: str) -> int:
        if unicodedata.combining(character):
            return 0
        is_wide = unicodedata.east_asian_width(character) in "WF"
        if is_wide or unicodedata.category(character) == "So":
            return _FULL_WIDTH
        base = unicodedata.normalize("NFD", character)[0]
        return self[base] if base != character and base.isascii() else _OTHER_WIDTH


_WIDTHS = {
    Face.PLAIN: _Widths(_PLAIN_WIDTHS),
    Face.BOLD: _Widths(_BOLD_WIDTHS),
    Face.MONO: _Widths([_MONO_WIDTH] * len(_PLAIN_WIDTHS)),
}


def printable(text: str) -> str:
    """Return `text` as one line that can be lettered: control characters become blanks."""
    return "".join(" " if unicodedata.category(c) in _UNPRINTABLE else c for c in text)


# Control, format (bidirectional overrides among them), surrogate, unassigned (some of which XML
# forbids), line and paragraph separators.
_UNPRINTABLE = frozenset({"Cc", "Cf", "Cs", "Cn", "Zl", "Zp"})


def fitted(text: str, room_pt: float, size_pt: float, face: Face = Face.PLAIN) -> str:
    """Return `text`, cut and ended with three dots when it is wider than `room_pt`."""
    line = printable(text)
    if text_width(line, size_pt, face) <= room_pt:
        return line
    while line and text_width(line + _ELLIPSIS, size_pt, face) > room_pt:
        line = line[:-1]
    return line.rstrip() + _ELLIPSIS


def fitting_size(
    text: str, room_pt: float, sizes_pt: tuple[float, ...], face: Face = Face.PLAIN
) -> float:
    """Return the first of the sizes, largest first, at which `text` fits, or else the last."""
    fits = (size for size in sizes_pt if text_width(text, size, face) <= room_pt)
    return next(fits, sizes_pt[-1])


def wrapped(text: str, room_pt: float, size_pt: float, face: Face = Face.PLAIN) -> list[str]:
    """Break `text` at blanks into lines no wider than `room_pt`, a longer word at a sign."""
    lines = [""]
    for word in printable(text).split():
        longer = f"{lines[-1]} {word}" if lines[-1] else word
        if text_width(longer, size_pt, face) <= room_pt:
            lines[-1] = longer
            continue
        pieces = _pieces(word, room_pt, size_pt, face)
        lines[-1:] = [lines[-1], *pieces] if lines[-1] else pieces
    return lines


def _pieces(word: str, room_pt: float, size_pt: float, face: Face) -> list[str]:
    """Break a word behind the last sign that fits, or anywhere if there is none."""
    pieces = [""]
    for character in word:
        if pieces[-1] and text_width(pieces[-1] + character, size_pt, face) > room_pt:
            cut = max(map(pieces[-1].rfind, _BREAK_BEHIND)) + 1 or len(pieces[-1])
            pieces[-1:] = [pieces[-1][:cut], pieces[-1][cut:]]
        pieces[-1] += character
    return pieces


_BREAK_BEHIND = "/-_."
