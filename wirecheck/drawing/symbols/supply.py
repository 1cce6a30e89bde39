"""Transformer, protection, earth and frame."""

from __future__ import annotations

from wirecheck.drawing.geometry import Box, Point
from wirecheck.drawing.symbols import actuators
from wirecheck.drawing.symbols.symbol import Pen, Standard, Symbol, two_ports

_HALF = 17.0
_TURN_RADIUS = 3.8
_TURNS = 5
_WINDING = _TURNS * _TURN_RADIUS
_RISE = 10.0
"""Distance of a winding's ends from the core."""
_TRANSFORMER_HALF = 23.0


def _transformer(pen: Pen) -> None:
    """Draw the primary above the core and the secondary below it."""
    for side in (-1, 1):
        level = side * _RISE
        pen.line((-_TRANSFORMER_HALF, level), (-_WINDING, level))
        pen.line((_WINDING, level), (_TRANSFORMER_HALF, level))
        for turn in range(_TURNS):
            x = (2 * turn + 1 - _TURNS) * _TURN_RADIUS
            pen.arc(x, level, _TURN_RADIUS, (180, side * 180))
    for level in (-2.0, 2.0):
        pen.line((-_WINDING, level), (_WINDING, level))


def _winding(pen: Pen, side: int) -> None:
    """Draw one winding and the core beside it: below it for side 1, above it for side -1."""
    pen.line((-_TRANSFORMER_HALF, 0), (-_WINDING, 0))
    pen.line((_WINDING, 0), (_TRANSFORMER_HALF, 0))
    for turn in range(_TURNS):
        x = (2 * turn + 1 - _TURNS) * _TURN_RADIUS
        pen.arc(x, 0, _TURN_RADIUS, (180, -side * 180))
    for level in (_RISE - 2, _RISE + 2):
        pen.line((-_WINDING, side * level), (_WINDING, side * level))


def _metal_bond(pen: Pen) -> None:
    """Draw metal that carries current: a heavy line, hatched below."""
    pen.line((-_HALF, 0), (-11, 0))
    pen.line((11, 0), (_HALF, 0))
    pen.line((-11, 0), (11, 0), width_pt=2.4)
    for x in (-8, -2, 4, 10):
        pen.line((x, 0), (x - 5, 7))


def _source(pen: Pen) -> None:
    pen.line((-_HALF, 0), (-11, 0))
    pen.line((11, 0), (_HALF, 0))
    pen.circle(0, 0, 11)
    wave = [Point(-7, 0), Point(-4, -9), Point(-2, -6), Point(0, 0)]
    pen.curve([*wave, Point(2, 6), Point(4, 9), Point(7, 0)])


def _fuse(pen: Pen) -> None:
    pen.box(Box(-11, -5, 11, 5))
    pen.line((-_HALF, 0), (_HALF, 0))


def _fusible_link(pen: Pen) -> None:
    _fuse(pen)
    actuators.temperature(pen, 5.0)


def _breaker(pen: Pen) -> None:
    """Draw two posts and the arc of American practice that bridges them."""
    pen.line((-_HALF, 0), (-11, 0))
    pen.line((11, 0), (_HALF, 0))
    pen.circle(-11, 0, 2.2)
    pen.circle(11, 0, 2.2)
    pen.curve([Point(-11, -4), Point(-6, -13), Point(6, -13), Point(11, -4)])


def _earth(pen: Pen) -> None:
    pen.line((0, 0), (0, 9))
    for step, half in enumerate((8.0, 5.0, 2.0)):
        pen.line((-half, 9 + 3 * step), (half, 9 + 3 * step))


def _frame(pen: Pen) -> None:
    pen.line((0, 0), (0, 9))
    pen.line((-8, 9), (8, 9))
    for x in (-8, 0, 8):
        pen.line((x, 9), (x - 5, 15))


TRANSFORMER = Symbol(
    "transformer",
    "transformer, two windings",
    Standard("6.4", "06-09-01"),
    (
        Point(-_TRANSFORMER_HALF, -_RISE),
        Point(_TRANSFORMER_HALF, -_RISE),
        Point(-_TRANSFORMER_HALF, _RISE),
        Point(_TRANSFORMER_HALF, _RISE),
    ),
    Box(-_TRANSFORMER_HALF, -_RISE - 1, _TRANSFORMER_HALF, _RISE + 1),
    _transformer,
)
PRIMARY_WINDING = Symbol(
    "primary-winding",
    "primary winding of a transformer",
    Standard("6.4", note="one winding and core of the transformer"),
    two_ports(_TRANSFORMER_HALF),
    Box(-_TRANSFORMER_HALF, -1, _TRANSFORMER_HALF, _RISE + 3),
    lambda pen: _winding(pen, 1),
)
SECONDARY_WINDING = Symbol(
    "secondary-winding",
    "secondary winding of a transformer",
    Standard("6.4", note="one winding and core of the transformer"),
    two_ports(_TRANSFORMER_HALF),
    Box(-_TRANSFORMER_HALF, -_RISE - 3, _TRANSFORMER_HALF, 1),
    lambda pen: _winding(pen, -1),
)
METAL_BOND = Symbol(
    "metal-bond",
    "metal of the appliance as a way for current",
    Standard(note="heavy line with the hatching of frame, IEEE 315 3.9.2"),
    two_ports(_HALF),
    Box(-_HALF, -2, _HALF, 8),
    _metal_bond,
)
SOURCE = Symbol(
    "source",
    "alternating-current supply",
    Standard(note="circle with one wave, the usual source of circuit diagrams; no number"),
    two_ports(_HALF),
    Box(-_HALF, -12, _HALF, 12),
    _source,
)
FUSE = Symbol(
    "fuse",
    "fuse",
    Standard("9.1", "07-21-01", "S00362"),
    two_ports(_HALF),
    Box(-_HALF, -6, _HALF, 6),
    _fuse,
)
FUSIBLE_LINK = Symbol(
    "fusible-link",
    "fusible link, melts when hot",
    Standard("9.1", note="fuse with the temperature mark of 4.20"),
    two_ports(_HALF),
    Box(-_HALF, -6, _HALF, actuators.MARK_END),
    _fusible_link,
)
BREAKER = Symbol(
    "breaker",
    "circuit breaker",
    Standard(note="arc over two posts, American practice; IEEE 315 section 9"),
    two_ports(_HALF),
    Box(-_HALF, -12, _HALF, 3),
    _breaker,
    has_posts=True,
)
EARTH = Symbol(
    "earth",
    "earth",
    Standard("3.9.1", "02-15-01", "S00200"),
    (Point(0, 0),),
    Box(-9, 0, 9, 16),
    _earth,
)
FRAME = Symbol(
    "frame",
    "frame of the appliance",
    Standard("3.9.2", "02-15-04"),
    (Point(0, 0),),
    Box(-14, 0, 9, 16),
    _frame,
)
SYMBOLS = (
    TRANSFORMER,
    PRIMARY_WINDING,
    SECONDARY_WINDING,
    SOURCE,
    FUSE,
    FUSIBLE_LINK,
    BREAKER,
    EARTH,
    FRAME,
    METAL_BOND,
)
