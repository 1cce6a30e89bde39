"""What takes current at the right end of a rung."""

from __future__ import annotations

from wirecheck.drawing.geometry import Box
from wirecheck.drawing.symbols.symbol import Pen, Standard, Symbol, two_ports

_HALF = 20.0
_RADIUS = 9.5
_LONG = 3
"""So many letters stand in a circle in a smaller size."""
_BLOCK = Box(-14, -8.5, 14, 8.5)


def _tails(pen: Pen, reach: float) -> None:
    pen.line((-_HALF, 0), (-reach, 0))
    pen.line((reach, 0), (_HALF, 0))


def _coil(pen: Pen) -> None:
    _tails(pen, _RADIUS)
    pen.circle(0, 0, _RADIUS)
    pen.letter(0, 0, pen.inside, 8.0 if len(pen.inside) < _LONG else 6.5)


def _motor(pen: Pen) -> None:
    _tails(pen, _RADIUS)
    pen.circle(0, 0, _RADIUS)
    pen.letter(0, 0, pen.inside or "M", 10.0)


def _lamp(pen: Pen) -> None:
    _tails(pen, _RADIUS)
    pen.circle(0, 0, _RADIUS)
    across = _RADIUS * 0.7071
    pen.line((-across, -across), (across, across))
    pen.line((-across, across), (across, -across))


def _solenoid(pen: Pen) -> None:
    """Draw a winding of four turns, with the rod of the plunger above."""
    turns, radius = 4, 3.6
    _tails(pen, turns * radius)
    for turn in range(turns):
        pen.arc((2 * turn + 1 - turns) * radius, 0, radius, (180, 180))
    pen.line((-turns * radius, -7.5), (turns * radius, -7.5), width_pt=2.0)


def _block(pen: Pen) -> None:
    _tails(pen, _BLOCK.right)
    pen.box(_BLOCK)
    pen.letter(0, 0, pen.inside, 7.0)


def _heater(pen: Pen) -> None:
    peaks = [(-13 + 26 * place / 8, 6 if place % 2 else -6) for place in range(1, 8)]
    _tails(pen, 13)
    pen.line((-13, 0), *peaks, (13, 0))


COIL = Symbol(
    "coil",
    "relay coil",
    Standard("4.5", "07-15-01", "S00305", "drawn as the circle of American ladders"),
    two_ports(_HALF),
    Box(-_HALF, -10.5, _HALF, 10.5),
    _coil,
)
VALVE_OPERATOR = Symbol(
    "valve-operator",
    "valve operator (solenoid)",
    Standard(note="solenoid as NFPA 79 letters it, SOL; a winding with its plunger"),
    two_ports(_HALF),
    Box(-_HALF, -9, _HALF, 4),
    _solenoid,
)
MOTOR = Symbol(
    "motor",
    "motor",
    Standard(iec="06-04-01"),
    two_ports(_HALF),
    Box(-_HALF, -10.5, _HALF, 10.5),
    _motor,
)
LAMP = Symbol(
    "lamp",
    "lamp",
    Standard(iec="08-10-01"),
    two_ports(_HALF),
    Box(-_HALF, -10.5, _HALF, 10.5),
    _lamp,
)
ELECTRONICS = Symbol(
    "electronics",
    "electronics",
    Standard(note="a block with its name, as block diagrams have it; no number"),
    two_ports(_HALF),
    Box(-_HALF, -10, _HALF, 10),
    _block,
)
HEATER = Symbol(
    "heater",
    "heating element",
    Standard(note="the resistor of American ladders; no number"),
    two_ports(_HALF),
    Box(-_HALF, -7, _HALF, 7),
    _heater,
)
GENERIC_LOAD = Symbol(
    "load",
    "load in general",
    Standard(note="a block with its name, as block diagrams have it; no number"),
    two_ports(_HALF),
    Box(-_HALF, -10, _HALF, 10),
    _block,
)
SYMBOLS = (COIL, VALVE_OPERATOR, MOTOR, LAMP, ELECTRONICS, HEATER, GENERIC_LOAD)
