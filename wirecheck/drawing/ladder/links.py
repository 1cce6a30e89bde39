"""What fits in no rung: each piece on a row of its own between two named wires."""

from __future__ import annotations

from wirecheck.drawing.canvas import Align, Letters, Tag
from wirecheck.drawing.geometry import Point
from wirecheck.drawing.ladder.layout import Layout
from wirecheck.drawing.ladder.plan import Link, real_net
from wirecheck.drawing.ladder.rails import (
    ABOVE_ROW,
    NUMBERS_WIDTH,
    STUB,
    draw_rungs,
    number_lines,
    rows_at,
)
from wirecheck.drawing.ladder.section import HEADING_HEIGHT, draw_heading
from wirecheck.drawing.ladder.series_parallel import leaves
from wirecheck.drawing.ladder.work import CELL, ROW, Work
from wirecheck.drawing.lettering import fitted
from wirecheck.drawing.symbols import joints
from wirecheck.drawing.symbols.symbol import Pose, place
from wirecheck.model.diagram import OPEN_END, UNKNOWN_END

_END_ROOM = 130.0
_END = Letters(8.0)


def draw_links(work: Work, links: list[tuple[Link, Layout]]) -> None:
    """Draw the section from the top left of the canvas down."""
    draw_heading(work, "In no rung: not on a complete way between two rails, or bypassed")
    y = HEADING_HEIGHT + ABOVE_ROW
    for link, layout in links:
        corner = Point(NUMBERS_WIDTH + _END_ROOM + STUB, y)
        draw_rungs(work, layout, corner)
        number_lines(work, layout, Point(NUMBERS_WIDTH - 8, y))
        end = corner.moved(layout.width * CELL, 0)
        _draw_bus(work, link.left, corner.moved(-STUB, 0), rows_at(layout, 0.0))
        _draw_bus(work, link.right, end.moved(STUB, 0), rows_at(layout, layout.width))
        _draw_end(work, link, link.left, corner.moved(-STUB, 0), is_left=True)
        _draw_end(work, link, link.right, end.moved(STUB, 0), is_left=False)
        y += layout.rows * ROW


def _draw_bus(work: Work, net: int, first: Point, rows: list[int]) -> None:
    """Join the rows that begin or end a piece."""
    inward = STUB if first.x < NUMBERS_WIDTH + _END_ROOM + STUB else -STUB
    ends = [first.moved(0, row * ROW) for row in rows]
    for end in ends:
        work.wire(net, [end, end.moved(inward, 0)])
    for end in ends[1:]:
        work.wire(net, [first, end])
    for end in ends[:-1] if len(ends) > 1 else []:
        place(work.canvas, joints.CONNECTION, Pose(end), tag=work.wire_tag(net))


def _draw_end(work: Work, link: Link, net: int, at: Point, *, is_left: bool) -> None:
    """Draw where a piece ends: on a wire of the ladder, at a loose end, or at nothing."""
    outward = -1 if is_left else 1
    end = at
    members = work.nets.members[real_net(net)]
    ends = {terminal.part for terminal in members}
    if UNKNOWN_END in ends or OPEN_END in ends:
        symbol = joints.UNKNOWN_END if UNKNOWN_END in ends else joints.OPEN_END
        nudge = -symbol.room.right if is_left else 0.0
        place(work.canvas, symbol, Pose(end.moved(nudge, 0)), tag=Tag(title=symbol.title))
        end = end.moved(outward * (symbol.room.right + 4), 0)
    words = fitted(_end_words(work, link, net), _END_ROOM - 6, _END.size_pt)
    align = Align.RIGHT if is_left else Align.LEFT
    style = _END._replace(align=align)
    work.canvas.text(end.moved(outward * 6, 0), words, style, tag=work.wire_tag(net))


def _end_words(work: Work, link: Link, net: int) -> str:
    """Return the wire number at an end and one other terminal on that wire."""
    number = work.number(net)
    if not number:
        return "no lead"
    ours = {leaf.branch.part.key for leaf in leaves(link.tree)}
    others = [
        terminal
        for terminal in work.nets.members[real_net(net)]
        if terminal.part not in ours
        and terminal.part not in (OPEN_END, UNKNOWN_END)
        and (spec := work.diagram.spec(terminal)) is not None
        and not spec.inner
    ]
    return f"wire {number}" + (f" ({work.diagram.show(others[0])})" if others else "")
