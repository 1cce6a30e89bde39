"""Lead colours as drawn: the paint of each colour name, and a dark rim where the paint is pale.

Names are those of IEC 60757 (its letters are read too) with the plain English words of the trade.
The shades are chosen to print and to differ on a screen; no standard sets them.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import NamedTuple

from wirecheck.drawing.canvas import NO_TAG, Canvas, Dash, Layer, Stroke, Tag
from wirecheck.drawing.geometry import Point

RIM = "#303030"
UNSTATED = "#404040"
"""A lead whose colour the text does not give."""

# Letters of IEC 60757, name, shade.
_SHADES = (
    ("BK", "black", "#111111"),
    ("BN", "brown", "#7a4a21"),
    ("RD", "red", "#d01818"),
    ("OG", "orange", "#f07800"),
    ("YE", "yellow", "#f7d800"),
    ("GN", "green", "#128a32"),
    ("BU", "blue", "#1c4fd0"),
    ("VT", "violet", "#7b2fa8"),
    ("GY", "grey", "#999999"),
    ("WH", "white", "#ffffff"),
    ("PK", "pink", "#f8a5c2"),
    ("GD", "gold", "#c9a227"),
    ("TQ", "turquoise", "#25b5b0"),
    ("SR", "silver", "#c4c8cc"),
    ("tan", "tan", "#d9b98c"),
)
"""Tan has no letters in the standard: its word stands for them."""
_OTHER_WORDS = {"purple": "violet", "gray": "grey"}
_SHADE_OF = {name: shade for _, name, shade in _SHADES}
_LETTERS_OF_NAME = {name: letters for letters, name, _ in _SHADES}
_NAME_OF_LETTERS = {letters: name for letters, name, _ in _SHADES}

_PALE = 0.55
"""Relative luminance from which a line on white paper needs a rim."""


class Ink(NamedTuple):
    """The paint of a lead; `stripe` is a second colour, or empty."""

    base: str
    stripe: str = ""


def ink_for(colour: str) -> Ink:
    """Return the paint for a colour as typed: `red`, `RD`, `green-yellow`, `white/red`, `GNYE`.

    A word that names no colour gives the paint of an unstated colour.
    """
    shades = [_SHADE_OF[name] for name in _names(colour)]
    if not shades:
        return Ink(UNSTATED)
    return Ink(shades[0], shades[1] if len(shades) > 1 else "")


def colour_letters(colour: str) -> str:
    """Return the letters of IEC 60757 for a colour as typed: `RD`, `WH/RD` (with its tracer).

    Green with yellow is `GNYE`, as the standard joins them. A word that names no colour stays.
    """
    names = _names(colour)
    if set(names) == {"green", "yellow"}:
        return "GNYE"
    return "/".join(_LETTERS_OF_NAME[name] for name in names) or colour


def _names(colour: str) -> list[str]:
    letters = re.findall("..?", colour.upper())
    if letters and all(pair in _NAME_OF_LETTERS for pair in letters):
        return [_NAME_OF_LETTERS[pair] for pair in letters]
    words = (_OTHER_WORDS.get(word, word) for word in re.split(r"[^a-z]+", colour.casefold()))
    return [word for word in words if word in _SHADE_OF]


def is_pale(shade: str) -> bool:
    """Say whether a `#rrggbb` shade is lost on white paper (relative luminance, sRGB weights)."""
    red, green, blue = (int(shade[place : place + 2], 16) / 255 for place in (1, 3, 5))
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue > _PALE


def draw_lead(
    canvas: Canvas,
    points: Sequence[Point],
    ink: Ink,
    width_pt: float = 2.0,
    tag: Tag = NO_TAG,
) -> None:
    """Draw a lead in its colour; a pale one as a narrow line on a wide dark one.

    The tag goes to the lowest line, which is the widest and so the easiest to point at.
    """
    pale = is_pale(ink.base) or (ink.stripe and is_pale(ink.stripe))
    under = Stroke(RIM if pale else ink.base, width_pt + (1.4 if pale else 0.0))
    canvas.line(points, under, layer=Layer.WIRE, tag=tag)
    untitled = Tag(classes=tag.classes, title=tag.title)
    if pale:
        canvas.line(points, Stroke(ink.base, width_pt), layer=Layer.WIRE, tag=untitled)
    if ink.stripe:
        stripe = Stroke(ink.stripe, width_pt, Dash.DASHED)
        canvas.line(points, stripe, layer=Layer.WIRE, tag=untitled)
