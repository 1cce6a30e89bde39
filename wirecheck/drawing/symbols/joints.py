"""Where wires meet and where they end."""

from __future__ import annotations

from wirecheck.drawing.geometry import Box, Point
from wirecheck.drawing.symbols.symbol import Pen, Standard, Symbol

_HERE = (Point(0, 0),)


def _open_end(pen: Pen) -> None:
    """Draw a wire that stops: a bar across its end."""
    pen.line((0, 0), (8, 0))
    pen.line((8, -5), (8, 5))
    pen.line((11, -5), (17, 5))
    pen.line((11, 5), (17, -5))


def _unknown_end(pen: Pen) -> None:
    pen.line((0, 0), (4, 0))
    pen.circle(11, 0, 7)
    pen.letter(11, 0, "?", 10.0)


CONNECTION = Symbol(
    "connection",
    "wires joined (splice, connector)",
    Standard(iec="03-02-01"),
    _HERE,
    Box(-2.4, -2.4, 2.4, 2.4),
    lambda pen: pen.dot(0, 0, 2.4),
)
TERMINAL = Symbol(
    "terminal",
    "terminal",
    Standard(iec="03-02-02"),
    _HERE,
    Box(-3, -3, 3, 3),
    lambda pen: pen.circle(0, 0, 2.4),
)
OPEN_END = Symbol(
    "open-end",
    "loose end: the lead lands nowhere",
    Standard(note="no standard symbol: a bar, and a cross where the terminal would be"),
    _HERE,
    Box(0, -6, 18, 6),
    _open_end,
)
UNKNOWN_END = Symbol(
    "unknown-end",
    "end not traced",
    Standard(note="no standard symbol: a question mark in a circle"),
    _HERE,
    Box(0, -8, 19, 8),
    _unknown_end,
)
SYMBOLS = (CONNECTION, TERMINAL, OPEN_END, UNKNOWN_END)
