"""Contacts and switches, drawn with power off and nothing acting on them."""

from __future__ import annotations

from collections.abc import Callable
from typing import NamedTuple

from wirecheck.drawing.geometry import Box
from wirecheck.drawing.symbols import actuators
from wirecheck.drawing.symbols.symbol import Pen, Standard, Symbol, two_ports

_HALF = 17.0
"""Half the length of a switch, port to port."""
_POST = 11.0
"""Where its two posts stand."""
_POST_RADIUS = 2.2

Actuator = Callable[[Pen, float], None]


class _Arm(NamedTuple):
    """Where a switch arm ends, from the left post; `middle` is the height of its middle."""

    end_x: float
    end_y: float

    @property
    def middle(self) -> float:
        return self.end_y / 2


_OPEN_BELOW = _Arm(_POST + 1, 9.0)
"""Open, closes when pushed up."""
_OPEN_ABOVE = _Arm(_POST + 1, -10.0)
"""Open, closes when what pushes it up gives way."""
_REST_ABOVE = _Arm(_POST + 3, -_POST_RADIUS - 1.2)
"""Closed, lying on the post, opens when pushed up."""


def _contact(pen: Pen, *, is_break: bool) -> None:
    pen.line((-_HALF, 0), (-4, 0))
    pen.line((4, 0), (_HALF, 0))
    pen.line((-4, -9), (-4, 9), width_pt=1.6)
    pen.line((4, -9), (4, 9), width_pt=1.6)
    if is_break:
        pen.line((-8, 9), (8, -9))


def _switch(pen: Pen, arm: _Arm, actuator: Actuator | None) -> None:
    pen.line((-_HALF, 0), (-_POST, 0))
    pen.line((_POST, 0), (_HALF, 0))
    pen.line((-_POST, 0), (arm.end_x, arm.end_y))
    pen.circle(-_POST, 0, _POST_RADIUS)
    pen.circle(_POST, 0, _POST_RADIUS)
    if actuator is not None:
        actuator(pen, arm.middle)


def _push_button(pen: Pen) -> None:
    """Draw a break push button: a bar held against both posts from below, head above."""
    bar = _POST_RADIUS + 0.6
    pen.line((-_HALF, 0), (-_POST, 0))
    pen.line((_POST, 0), (_HALF, 0))
    pen.circle(-_POST, 0, _POST_RADIUS)
    pen.circle(_POST, 0, _POST_RADIUS)
    pen.line((-_POST - 3, bar), (_POST + 3, bar))
    actuators.mushroom(pen, bar)


MAKE_CONTACT = Symbol(
    "make-contact",
    "make contact",
    Standard("4.3", "07-02-01", "S00227"),
    two_ports(_HALF),
    Box(-_HALF, -10, _HALF, 10),
    lambda pen: _contact(pen, is_break=False),
)
BREAK_CONTACT = Symbol(
    "break-contact",
    "break contact",
    Standard("4.3", "07-02-03", "S00229"),
    two_ports(_HALF),
    Box(-_HALF, -10, _HALF, 10),
    lambda pen: _contact(pen, is_break=True),
)


def _pair(
    name: str, words: str, standards: tuple[Standard, Standard], actuator: Actuator | None
) -> tuple[Symbol, Symbol]:
    """Return the make and the break form of a switch with one actuator."""
    low = actuators.MARK_END
    return (
        Symbol(
            f"{name}-make",
            f"{words}, open at rest",
            standards[0],
            two_ports(_HALF),
            Box(-_HALF, -5, _HALF, low),
            lambda pen: _switch(pen, _OPEN_BELOW, actuator),
            has_posts=True,
        ),
        Symbol(
            f"{name}-break",
            f"{words}, closed at rest",
            standards[1],
            two_ports(_HALF),
            Box(-_HALF, -5, _HALF, low),
            lambda pen: _switch(pen, _REST_ABOVE, actuator),
            has_posts=True,
        ),
    )


_MARKS = "qualifying symbols 02-14"

POSITION_MAKE, POSITION_BREAK = _pair(
    "position",
    "position switch",
    (Standard("4.14", "07-08-01"), Standard("4.14", "07-08-02")),
    actuators.position,
)
TEMPERATURE_MAKE, TEMPERATURE_BREAK = _pair(
    "temperature",
    "temperature switch",
    (Standard("4.20", "07-09-01"), Standard("4.20", "07-09-02")),
    actuators.temperature,
)
PRESSURE_MAKE, PRESSURE_BREAK = _pair(
    "pressure",
    "pressure switch",
    (Standard("4.19", note=_MARKS), Standard("4.19", note=_MARKS)),
    actuators.pressure,
)
FLOW_MAKE, FLOW_BREAK = _pair(
    "flow",
    "flow or air switch",
    (Standard("4.17", note=_MARKS), Standard("4.17", note=_MARKS)),
    actuators.flow,
)
LEVEL_MAKE, LEVEL_BREAK = _pair(
    "level",
    "level switch",
    (Standard("4.18", note=_MARKS), Standard("4.18", note=_MARKS)),
    actuators.level,
)
HAND_MAKE, HAND_BREAK = _pair(
    "hand",
    "hand switch",
    (
        Standard(note="switch of IEEE 315 section 4 with a hand lever"),
        Standard(note="switch of IEEE 315 section 4 with a hand lever"),
    ),
    actuators.hand,
)

THERMOSTAT = Symbol(
    "thermostat",
    "thermostat, closes as the room cools",
    Standard("4.21"),
    two_ports(_HALF),
    Box(-_HALF, -12, _HALF, actuators.MARK_END),
    lambda pen: _switch(pen, _OPEN_ABOVE, actuators.temperature),
    has_posts=True,
)
EMERGENCY_STOP = Symbol(
    "emergency-stop",
    "emergency stop, mushroom head",
    Standard(note="break push button of IEEE 315 section 4"),
    two_ports(_HALF),
    Box(-_HALF, -10.5, _HALF, 5),
    _push_button,
    has_posts=True,
)
SYMBOLS = (
    MAKE_CONTACT,
    BREAK_CONTACT,
    POSITION_MAKE,
    POSITION_BREAK,
    TEMPERATURE_MAKE,
    TEMPERATURE_BREAK,
    PRESSURE_MAKE,
    PRESSURE_BREAK,
    FLOW_MAKE,
    FLOW_BREAK,
    LEVEL_MAKE,
    LEVEL_BREAK,
    HAND_MAKE,
    HAND_BREAK,
    THERMOSTAT,
    EMERGENCY_STOP,
)
