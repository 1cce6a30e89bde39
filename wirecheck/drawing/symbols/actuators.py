"""What moves a switch: the mark on the stem below its arm.

Each function draws from the arm, at the given height, downwards. What stands below the arm pushes
it up as temperature, pressure, flow or level rise, so an arm below its contact closes on a rise and
an arm above opens on it.
"""

from __future__ import annotations

from wirecheck.drawing.geometry import Point
from wirecheck.drawing.symbols.symbol import Pen

STEM_END = 11.0
MARK_END = 19.0
"""How far below the line of the wire an actuator's mark reaches."""


def _stem(pen: Pen, arm_y: float) -> None:
    pen.line((0, arm_y), (0, STEM_END))


def temperature(pen: Pen, arm_y: float) -> None:
    """A bent bimetal strip."""
    end = MARK_END - 1
    pen.line((0, arm_y), (0, STEM_END - 1), (-5, STEM_END - 1), (-5, end), (0, end), (0, end - 4))
    pen.line((0, end - 4), (5, end - 4), (5, end))


def pressure(pen: Pen, arm_y: float) -> None:
    """A diaphragm dome."""
    _stem(pen, arm_y)
    pen.arc(0, STEM_END + 7, 7, (180, 180))
    pen.line((-7, STEM_END + 7), (7, STEM_END + 7))


def flow(pen: Pen, arm_y: float) -> None:
    """A paddle: a pennant on the stem."""
    pen.line((0, arm_y), (0, MARK_END - 1))
    pen.line((0, STEM_END - 1), (8, STEM_END + 3.5), (0, MARK_END - 1))


def level(pen: Pen, arm_y: float) -> None:
    """A float."""
    _stem(pen, arm_y)
    pen.circle(0, STEM_END + 4, 4)


def position(pen: Pen, arm_y: float) -> None:
    """A cam or wedge that pushes the arm: a door, an end of travel."""
    pen.line((-6, arm_y + 7), (0, arm_y), (6, arm_y + 7), (-6, arm_y + 7))


def hand(pen: Pen, arm_y: float) -> None:
    """A hand lever: a crossbar on the stem."""
    _stem(pen, arm_y)
    pen.line((-5, STEM_END), (5, STEM_END))


def mushroom(pen: Pen, arm_y: float) -> None:
    """A mushroom head above a push button."""
    pen.line((0, arm_y), (0, -5.5))
    pen.curve([Point(-9, -5.5), Point(-8, -10.5), Point(8, -10.5), Point(9, -5.5)])
    pen.line((-9, -5.5), (9, -5.5))
