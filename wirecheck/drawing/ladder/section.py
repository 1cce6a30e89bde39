"""One circuit of the ladder: its heading, its sources on top, its rungs."""

from __future__ import annotations

from wirecheck.drawing.canvas import HEAVY, Align, Letters
from wirecheck.drawing.geometry import Point
from wirecheck.drawing.ladder.layout import Layout
from wirecheck.drawing.ladder.plan import Section
from wirecheck.drawing.ladder.rails import (
    ABOVE_ROW,
    Rails,
    draw_earth,
    draw_section_rungs,
    rails_for,
)
from wirecheck.drawing.ladder.source import draw_source, is_unfed
from wirecheck.drawing.ladder.work import Work
from wirecheck.drawing.lettering import Face

HEADING = Letters(10.5, Face.BOLD)
HEADING_HEIGHT = 16.0
_FIRST_SOURCE = 30.0
"""From the top to the wire of the first source, whose words stand beside the heading."""
_NEXT_SOURCE = 42.0
"""From one source to the next on the same rails."""
_PRIMARY_HEIGHT = 16.0
"""What a transformer that shows both windings needs above its secondary besides."""
_CIRCUITS = {
    "line": "Line voltage",
    "24V": "Control circuit, 24 V",
    "millivolt": "Millivolt circuit",
}


def draw_heading(work: Work, words: str) -> None:
    """Letter the heading of a piece of the sheet at its top."""
    work.canvas.text(Point(0, HEADING_HEIGHT / 2), words, HEADING)


def draw_section(work: Work, section: Section, layout: Layout | None, width: float) -> None:
    """Draw a circuit from the top left of the canvas down.

    Args:
        work: the piece.
        section: the circuit.
        layout: of its rungs, if it has any.
        width: how many cells the rails are apart if it has none.
    """
    draw_heading(work, _heading(work, section))
    unfed = any(is_unfed(work, source) for source in section.sources)
    top = _FIRST_SOURCE + _PRIMARY_HEIGHT * unfed
    rails = rails_for(layout.width if layout else width, top, (section.left, section.right))
    work.write_number(rails.left, Point(rails.left_x + 4, top - 6), Align.LEFT)
    work.write_number(rails.right, Point(rails.right_x - 4, top - 6), Align.RIGHT)
    pitch = _NEXT_SOURCE + _PRIMARY_HEIGHT * unfed
    for number, source in enumerate(section.sources):
        draw_source(work, source, rails, top + number * pitch)
    last = top + (len(section.sources) - 1) * pitch
    if layout is not None:
        bottoms = draw_section_rungs(work, rails, layout, last + ABOVE_ROW + 8)
    else:
        bottoms = (last + 10, last + 10)
        _draw_bare_rails(work, rails, last + 10)
    draw_earth(work, Point(rails.left_x, bottoms[0]), rails.left)
    draw_earth(work, Point(rails.right_x, bottoms[1]), rails.right)


def _draw_bare_rails(work: Work, rails: Rails, bottom: float) -> None:
    for net, x in ((rails.left, rails.left_x), (rails.right, rails.right_x)):
        work.wire(net, [Point(x, rails.top), Point(x, bottom)], HEAVY)
    middle = Point((rails.left_x + rails.right_x) / 2, bottom + 8)
    note = "no complete way between these two"
    work.canvas.text(middle, note, Letters(8.0, align=Align.CENTRE))


def _heading(work: Work, section: Section) -> str:
    spec = work.diagram.spec(section.sources[0].a)
    circuit = _CIRCUITS.get(spec.circuit, "Circuit") if spec else "Circuit"
    names = dict.fromkeys(source.part.name for source in section.sources)
    return f"{circuit}, from {' and '.join(names)}"
