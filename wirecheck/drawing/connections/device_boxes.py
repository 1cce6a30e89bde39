"""Draw the blocks: a device's box with its terminals, a splice's dot."""

from __future__ import annotations

from collections.abc import Sequence

from wirecheck.drawing.canvas import (
    BLACK,
    THIN,
    WHITE,
    Align,
    Canvas,
    Dash,
    Layer,
    Letters,
    Stroke,
    Tag,
)
from wirecheck.drawing.connections.blocks import TERMINAL_PT, UNIT_PT, Block, heading_height
from wirecheck.drawing.connections.edges import LEFT, RIGHT
from wirecheck.drawing.connections.marking import MARK_PT, MARK_ROOM_PT
from wirecheck.drawing.connections.scene import Anchor, Scene
from wirecheck.drawing.geometry import Box, Point
from wirecheck.drawing.lettering import text_width
from wirecheck.drawing.marks import NumberedFinding, finding_mark
from wirecheck.drawing.symbols.joints import CONNECTION
from wirecheck.drawing.symbols.symbol import Pose, place

_OUTLINE = Stroke(BLACK, 1.2)
_PAD_HALF_PT = 3.0
_LABEL_PT = 6.0
"""From the edge to a terminal's label."""
_LINK = Stroke("#6a6a6a", 1.0, Dash.DASHED)
_LINK_REACH_PT = 5.0
_DOT_SCALE = 1.5
_HEADING_FILL = "#eef0f2"


def draw_part(
    canvas: Canvas, scene: Scene, number: int, findings: Sequence[NumberedFinding]
) -> None:
    """Draw a device: heading, terminals with their printed labels, named links inside, marks."""
    block, box = scene.block(number), scene.box(number)
    tag = Tag(f"part-{block.key}", ("part",), block.title)
    canvas.box(box, fill=WHITE, stroke=_OUTLINE, layer=Layer.SYMBOL, tag=tag)
    heading = box._replace(bottom=box.top + block.heading_units * UNIT_PT)
    canvas.box(heading, fill=_HEADING_FILL, stroke=_OUTLINE, layer=Layer.SYMBOL)
    _draw_heading(canvas, block, heading)
    _draw_links(canvas, scene, number)
    for row in range(len(block.rows)):
        _draw_terminal(canvas, scene, number, row)
        _mark_terminal(canvas, scene, (number, row), findings)
    for step, mark in enumerate(scene.marks.at_part.get(block.key, ())):
        at = Point(box.right - 8 - step * MARK_ROOM_PT, box.top)
        finding_mark(canvas, at, findings[mark - 1], ring_id="finding", radius=MARK_PT)


def _draw_heading(canvas: Canvas, block: Block, room: Box) -> None:
    y = room.centre.y - heading_height(block.heading) / 2
    for line in block.heading:
        pitch = line.size_pt * 1.2
        style = Letters(line.size_pt, line.face, Align.CENTRE)
        canvas.text(Point(room.centre.x, y + pitch / 2), line.text, style)
        y += pitch


def _draw_terminal(canvas: Canvas, scene: Scene, number: int, row: int) -> None:
    """Draw the pad at the edge, black where a lead lands, and the label printed there."""
    block, box = scene.block(number), scene.box(number)
    line, where = block.rows[row], scene.places(number)[row]
    y = scene.middle(number, row)
    half = (where.last - where.first) / 2 * UNIT_PT + _PAD_HALF_PT
    name = f"terminal-{block.key}-{line.terminal.name}"
    tag = Tag(name, ("terminal",), scene.diagram.show(line.terminal))
    for side in (LEFT, RIGHT) if block.both_sides else (where.side,):
        x = scene.edge(number, side, y).at.x
        pad = Box(x - _PAD_HALF_PT, y - half, x + _PAD_HALF_PT, y + half)
        lands = any(scene.plan.faces.pins[end].side == side for end in line.ends)
        fill = BLACK if lands else WHITE
        canvas.box(pad, fill=fill, stroke=THIN, layer=Layer.SYMBOL, tag=tag)
    if block.both_sides:
        at, align = Point(box.centre.x, y), Align.CENTRE
    elif where.side == LEFT:
        at, align = Point(box.left + _LABEL_PT, y), Align.LEFT
    else:
        at, align = Point(box.right - _LABEL_PT, y), Align.RIGHT
    canvas.text(at, line.label, Letters(TERMINAL_PT, align=align))


def _mark_terminal(
    canvas: Canvas, scene: Scene, at: tuple[int, int], findings: Sequence[NumberedFinding]
) -> None:
    """Mark a terminal on which no lead lands."""
    number, row = at
    where = scene.places(number)[row]
    anchor = scene.edge(number, where.side, scene.middle(number, row))
    marks = scene.marks.at_terminal.get(scene.block(number).rows[row].terminal)
    if marks:
        distance = scene.strip(number, where.side).marks_at
        canvas.line([anchor.at, anchor.out(distance)])
        draw_marks(canvas, anchor, distance, [findings[mark - 1] for mark in marks])


def draw_marks(
    canvas: Canvas, anchor: Anchor, distance: float, findings: Sequence[NumberedFinding]
) -> None:
    """Draw marks in a row, from so far off the edge outward."""
    for step, finding in enumerate(findings):
        at = anchor.out(distance + MARK_ROOM_PT * (step + 0.5))
        finding_mark(canvas, at, finding, ring_id="finding", radius=MARK_PT)


def _draw_links(canvas: Canvas, scene: Scene, number: int) -> None:
    """Draw the named links between terminals, dashed from label to label."""
    block = scene.block(number)
    rows = {line.terminal.name: row for row, line in enumerate(block.rows)}
    for link in block.links:
        a, b = (rows.get(name) for name in link.between)
        if a is None or b is None:
            continue
        start, end = (_behind_label(scene, number, row) for row in (a, b))
        places = scene.places(number)
        if places[a].side != places[b].side:
            x = (start.x + end.x) / 2
        elif places[a].side == LEFT:
            x = max(start.x, end.x) + _LINK_REACH_PT
        else:
            x = min(start.x, end.x) - _LINK_REACH_PT
        points = [start, Point(x, start.y), Point(x, end.y), end]
        title = f"{link.name}, {link.between[0]} to {link.between[1]}"
        canvas.line(points, _LINK, layer=Layer.SYMBOL, tag=Tag("", ("link",), title))


def _behind_label(scene: Scene, number: int, row: int) -> Point:
    side = scene.places(number)[row].side
    edge = scene.edge(number, side, scene.middle(number, row))
    return edge.out(-_LABEL_PT - text_width(scene.block(number).rows[row].label, TERMINAL_PT) - 3)


def splice_dot(scene: Scene, number: int) -> Point:
    """Return where the leads of a splice meet."""
    return Point(scene.box(number).centre.x, scene.middle(number, 0))


def draw_splice(canvas: Canvas, scene: Scene, number: int) -> None:
    """Draw a splice: its dot, and its name above."""
    block, box = scene.block(number), scene.box(number)
    line = block.heading[0]
    tag = Tag(f"splice-{block.key}", ("splice",), block.title)
    place(canvas, CONNECTION, Pose(splice_dot(scene, number), scale=_DOT_SCALE), tag=tag)
    at = Point(box.centre.x, box.top + line.size_pt * 0.6)
    canvas.text(at, line.text, Letters(line.size_pt, line.face, Align.CENTRE))
