"""A kind of part as a small drawing: its block with a stub for each terminal."""

from __future__ import annotations

from wirecheck.drawing.canvas import HEAVY, LINE, Align, Canvas, Letters, Tag
from wirecheck.drawing.engine import Engine, Format, render
from wirecheck.drawing.geometry import Box, Point
from wirecheck.drawing.lettering import Face, text_width
from wirecheck.model.kind import Kind
from wirecheck.report.kind_block import sides, terminal_names

MARGIN_PT = 12.0
STUB_PT = 26.0
PITCH_PT = 18.0
NAME = Letters(9.0)
TITLE = Letters(11.0, Face.BOLD, Align.CENTRE)
UNDER = Letters(9.0, align=Align.CENTRE)
_LANDING_PT = 2.2


def kind_picture(kind: Kind, file_format: Format, engine: Engine = "embedded") -> bytes:
    """Draw the block of a kind and return the finished file; raises as `render` does."""
    return render(_block(kind), file_format, engine=engine)


def _block(kind: Kind) -> Canvas:
    left, right = sides(terminal_names(kind))
    words = ((kind.title, TITLE), (kind.letters, UNDER), (kind.name, UNDER))
    inner = max(text_width(text, style.size_pt, style.face) for text, style in words) + 28
    names = max(text_width(name, NAME.size_pt) for name in (*left, *right)) + 4
    body = Box(
        MARGIN_PT + names + STUB_PT,
        MARGIN_PT,
        MARGIN_PT + names + STUB_PT + inner,
        MARGIN_PT + PITCH_PT * (max(len(left), len(words)) + 1),
    )
    canvas = Canvas(body.right + STUB_PT + names + MARGIN_PT, body.bottom + MARGIN_PT, kind.title)
    canvas.box(body, stroke=HEAVY, tag=Tag("block", ("part",), kind.title))
    for row, (text, style) in enumerate(words):
        middle = body.centre.y + (row - 1) * 15.0
        canvas.text(Point(body.centre.x, middle), text, style)
    for names_there, edge, outward, align in (
        (left, body.left, -1, Align.RIGHT),
        (right, body.right, 1, Align.LEFT),
    ):
        for row, name in enumerate(names_there, start=1):
            at = Point(edge, body.top + row * PITCH_PT)
            end = at.moved(outward * STUB_PT, 0)
            canvas.line([at, end], LINE)
            landing = Box(end.x, end.y, end.x, end.y).grown(_LANDING_PT)
            canvas.oval(landing, fill="#ffffff", tag=Tag(f"terminal-{name}", ("terminal",), name))
            style = NAME._replace(align=align)
            canvas.text(end.moved(outward * (_LANDING_PT + 3), 0), name, style)
    return canvas
