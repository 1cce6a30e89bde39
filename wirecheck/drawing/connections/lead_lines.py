"""Draw the leads: their lines, their lettering and marks, their ends, plugs and cables."""

from __future__ import annotations

import math
from collections.abc import Sequence
from itertools import pairwise

from wirecheck.drawing.canvas import (
    BLACK,
    NO_LINE,
    WHITE,
    Canvas,
    Layer,
    Letters,
    Stroke,
    Tag,
)
from wirecheck.drawing.connections.blocks import SMALL_PT, End
from wirecheck.drawing.connections.device_boxes import draw_marks, splice_dot
from wirecheck.drawing.connections.edges import LEFT, RIGHT, Side
from wirecheck.drawing.connections.lead_words import LeadWords, lead_ink
from wirecheck.drawing.connections.marking import MARK_ROOM_PT
from wirecheck.drawing.connections.scene import Anchor, Scene
from wirecheck.drawing.connections.stubs import HOUSING_PT, PAD_PT, TAIL_PT, Bundle, sign
from wirecheck.drawing.geometry import Box, Point, box_about, box_round
from wirecheck.drawing.ink import draw_lead
from wirecheck.drawing.lettering import Face
from wirecheck.drawing.marks import NumberedFinding
from wirecheck.drawing.symbols.supply import EARTH
from wirecheck.drawing.symbols.symbol import Pose, Symbol, Turn, place
from wirecheck.model.diagram import LeadRole

_LEAD_PT = 2.0
_HEAVY_PT = 3.0
"""Ignition cables and jumpers."""
_LINE_PT = 3.8
"""Leads at line voltage."""
_TAIL_SCALE = 0.75
_RISE_PT = 6.4
"""From a lead to the middle of its lettering."""
_HALO = Stroke("#f2bcbc", 6.4)
"""Lies under a lead that a finding speaks of."""
_HOUSING_FILL = "#d4d8dc"


def draw_routed(canvas: Canvas, scene: Scene, lead: int) -> None:
    """Draw a lead between two blocks."""
    _draw_line(canvas, scene, lead, routed_line(scene, lead))


def routed_line(scene: Scene, lead: int) -> list[Point]:
    """Return the line of a lead between two blocks, to the dot of a splice where it ends on one."""
    start, finish = (_at_splice(scene, End(lead, at_b=at_b)) for at_b in (False, True))
    return [*start, *scene.routed.lines[lead], *finish]


def stub_line(scene: Scene, end: End) -> list[Point]:
    """Return the line of an end whose lead lands on no other block; empty where it does."""
    pin = scene.plan.faces.pins[end]
    anchor = scene.anchor(end)
    if not scene.stubs[end].tail:
        return []
    return [
        *_at_splice(scene, end),
        anchor.at,
        anchor.out(scene.strip(pin.block, pin.side).tail_at),
    ]


def _at_splice(scene: Scene, end: End) -> list[Point]:
    block = scene.plan.faces.pins[end].block
    return [splice_dot(scene, block)] if scene.block(block).type == "splice" else []


def _draw_line(canvas: Canvas, scene: Scene, number: int, points: Sequence[Point]) -> None:
    """Draw a lead in its colour; with a halo when a finding speaks of it."""
    lead = scene.diagram.leads[number]
    if number in scene.marks.leads:
        canvas.line(points, _HALO, layer=Layer.GROUND)
    heavy = "ignition-cable" in lead.given or lead.role is LeadRole.JUMPER
    width = _LINE_PT if number in scene.on_line else _HEAVY_PT if heavy else _LEAD_PT
    tag = Tag(f"lead-{number}", ("lead", f"lead-{number}"), scene.diagram.lead_name(lead))
    draw_lead(canvas, points, lead_ink(lead), width, tag)
    if not lead.conducts:
        _draw_break(canvas, points)


def _draw_break(canvas: Canvas, points: Sequence[Point]) -> None:
    """Draw a gap with two strokes across it, on an upright stretch if there is one.

    The lettering stands above level stretches, near the blocks.
    """
    start, end = max(pairwise(points), key=lambda pair: (pair[0].x == pair[1].x, math.dist(*pair)))
    upright = start.x == end.x
    at = start.towards(end, 0.5)
    canvas.box(box_about(at, 3.0), fill=WHITE, stroke=NO_LINE, layer=Layer.WIRE)
    for step in (-3, 3):
        middle = at.moved(0, step) if upright else at.moved(step, 0)
        stroke = [middle.moved(-4, 3), middle.moved(4, -3)]
        canvas.line(stroke, Stroke(BLACK, 1.2), layer=Layer.WIRE)


def draw_stub(canvas: Canvas, scene: Scene, end: End, findings: Sequence[NumberedFinding]) -> None:
    """Draw what is beside a terminal: marks, lettering, the sign of an end that lands nowhere."""
    stub, anchor, pin = scene.stubs[end], scene.anchor(end), scene.plan.faces.pins[end]
    strip = scene.strip(pin.block, pin.side)
    if stub.tail:
        line = stub_line(scene, end)
        _draw_line(canvas, scene, end.lead, line)
        _draw_tail(canvas, stub.tail, line[-1], pin.side)
    draw_marks(canvas, anchor, strip.marks_at, [findings[n - 1] for n in stub.marks])
    left = anchor.out(strip.letters_at)
    if pin.side == LEFT:
        left = left.moved(-stub.words.width_pt, 0)
    _draw_words(canvas, stub.words, left)


def _draw_words(canvas: Canvas, words: LeadWords, left: Point) -> None:
    """Letter a lead above its line."""
    at = left.moved(0, -_RISE_PT)
    canvas.text(at, words.number, Letters(SMALL_PT, Face.BOLD))
    canvas.text(at.moved(words.words_at_pt, 0), words.words, Letters(SMALL_PT))


def _draw_tail(canvas: Canvas, symbol: Symbol, at: Point, side: Side) -> None:
    """Draw the sign of an end that lands on no block, away from the block."""
    turn = Turn.BACK if side == LEFT else Turn.ACROSS
    if symbol is EARTH:
        turn = Turn.DOWN if side == LEFT else Turn.UP
    place(canvas, symbol, Pose(at, turn, _TAIL_SCALE))


def draw_bundle(canvas: Canvas, scene: Scene, bundle: Bundle) -> None:
    """Draw a plug's housing round its leads, or the ring of a cable."""
    first, last = scene.anchor(bundle.first), scene.anchor(bundle.last)
    corners = box_round([first.out(PAD_PT), last.out(PAD_PT + HOUSING_PT - 4)])
    room = Box(corners.left, corners.top - 5, corners.right, corners.bottom + 5)
    type_, name = bundle.holder
    if type_ == "plug":
        tag = Tag("", ("plug",), "plug")
        canvas.box(room, fill=_HOUSING_FILL, stroke=Stroke(BLACK, 0.8), layer=Layer.GROUND, tag=tag)
    else:
        tag = Tag("", ("cable",), f"cable {name}")
        canvas.oval(room, stroke=Stroke(BLACK, 0.9), layer=Layer.SYMBOL, tag=tag)


def draw_stray(
    canvas: Canvas, scene: Scene, number: int, findings: Sequence[NumberedFinding]
) -> None:
    """Draw a lead neither end of which is on a device or splice."""
    box = scene.box(number)
    end = End(int(scene.block(number).key), at_b=False)
    lead, stub = scene.diagram.leads[end.lead], scene.stubs[end]
    y = box.top + 2 * box.height / 3
    start, finish = Point(box.left + TAIL_PT, y), Point(box.right - TAIL_PT, y)
    _draw_line(canvas, scene, end.lead, [start, finish])
    _draw_tail(canvas, sign(lead.a), start, LEFT)
    _draw_tail(canvas, sign(lead.b), finish, RIGHT)
    draw_marks(canvas, Anchor(start, RIGHT), 4.0, [findings[n - 1] for n in stub.marks])
    _draw_words(canvas, stub.words, start.moved(8 + MARK_ROOM_PT * len(stub.marks), 0))
