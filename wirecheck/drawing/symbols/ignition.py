"""Spark and flame: the gap, the rod, the spark coil and the amplifier of the flame signal."""

from __future__ import annotations

from wirecheck.drawing.geometry import Box, Point
from wirecheck.drawing.symbols.symbol import Pen, Standard, Symbol, two_ports

_HALF = 22.0


def _spark_gap(pen: Pen) -> None:
    """Draw two arrows that face each other across the gap."""
    for side in (-1, 1):
        pen.line((side * _HALF, 0), (side * 3, 0))
        pen.line((side * 9, -4), (side * 3, 0), (side * 9, 4))


def _flame_rod(pen: Pen) -> None:
    """Draw a rod that ends in a flame over the burner metal."""
    pen.line((-_HALF, 0), (-16, 0))
    pen.line((-16, 0), (-2, 0), width_pt=2.6)
    left = [Point(0, 9), Point(-11, 5), Point(-3, -3), Point(0, -9)]
    right = [Point(4, -3), Point(10, 5), Point(0, 9)]
    pen.curve([*left, *right])
    pen.line((-9, 10), (8, 10), width_pt=2.0)
    pen.line((8, 10), (8, 0), (_HALF, 0))


def _spark_coil(pen: Pen) -> None:
    """Draw a winding of many narrow turns over a core."""
    turns, radius = 6, 2.6
    pen.line((-_HALF, 0), (-turns * radius, 0))
    pen.line((turns * radius, 0), (_HALF, 0))
    for turn in range(turns):
        pen.arc((2 * turn + 1 - turns) * radius, 0, radius, (180, 180))
    for level in (-5.5, -8.0):
        pen.line((-turns * radius, level), (turns * radius, level))


def _amplifier(pen: Pen) -> None:
    pen.line((-_HALF, 0), (-11, 0))
    pen.line((12, 0), (_HALF, 0))
    pen.line((-11, -10), (-11, 10), (12, 0), (-11, -10), (-11, 10))


def _pilot_generator(pen: Pen) -> None:
    """Draw two unlike conductors, one heavy, joined at their hot end."""
    pen.line((-_HALF, 0), (-10, 0), (0, -9))
    pen.line((0, -9), (10, 0), width_pt=2.6)
    pen.line((10, 0), (_HALF, 0))
    pen.dot(0, -9, 2.2)


PILOT_GENERATOR = Symbol(
    "pilot-generator",
    "thermocouple or thermopile in the pilot flame",
    Standard(note="two unlike conductors joined at the hot end; no number"),
    two_ports(_HALF),
    Box(-_HALF, -12, _HALF, 2),
    _pilot_generator,
)
SPARK_GAP = Symbol(
    "spark-gap",
    "spark gap, electrode to burner metal",
    Standard("9.3", "07-22-01"),
    two_ports(_HALF),
    Box(-_HALF, -6, _HALF, 6),
    _spark_gap,
)
FLAME_ROD = Symbol(
    "flame-rod",
    "flame rod in its flame over burner metal",
    Standard(note="rod, flame and burner drawn as they are; no number"),
    two_ports(_HALF),
    Box(-_HALF, -10, _HALF, 11),
    _flame_rod,
)
SPARK_COIL = Symbol(
    "spark-coil",
    "spark coil, high voltage side",
    Standard("6.4", note="one winding and core of the transformer"),
    two_ports(_HALF),
    Box(-_HALF, -9, _HALF, 1),
    _spark_coil,
)
FLAME_AMPLIFIER = Symbol(
    "flame-amplifier",
    "flame amplifier",
    Standard(note="the triangle of amplifiers; no number"),
    two_ports(_HALF),
    Box(-_HALF, -11, _HALF, 11),
    _amplifier,
)
SYMBOLS = (PILOT_GENERATOR, SPARK_GAP, FLAME_ROD, SPARK_COIL, FLAME_AMPLIFIER)
