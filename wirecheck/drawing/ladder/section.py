"""One circuit of the ladder: its heading, its sources on top, its rungs."""

from __future__ import annotations

from wirecheck.drawing.canvas import HEAVY, LINE, Align, Letters, Tag
from wirecheck.drawing.geometry import Box, Point
from wirecheck.drawing.ladder.branches import Branch
from wirecheck.drawing.ladder.layout import Layout
from wirecheck.drawing.ladder.plan import Section
from wirecheck.drawing.ladder.rails import (
    ABOVE_ROW,
    Rails,
    draw_earth,
    draw_section_rungs,
    rails_for,
)
from wirecheck.drawing.ladder.work import SMALL_PT, Work
from wirecheck.drawing.lettering import Face, text_width
from wirecheck.drawing.symbols import supply
from wirecheck.drawing.symbols.symbol import Pose, place
from wirecheck.model.kind import SourceSpec
from wirecheck.model.quantity import Quantity

HEADING = Letters(10.5, Face.BOLD)
HEADING_HEIGHT = 16.0
_FIRST_SOURCE = 30.0
"""From the top to the wire of the first source, whose words stand beside the heading."""
_NEXT_SOURCE = 42.0
"""From one source to the next on the same rails."""
_CIRCUITS = {
    "line": "Line voltage",
    "24V": "Control circuit, 24 V",
    "millivolt": "Millivolt circuit",
}


def draw_heading(work: Work, words: str) -> None:
    """Letter the heading of a piece of the sheet at its top."""
    work.canvas.text(Point(0, HEADING_HEIGHT / 2), words, HEADING)


def draw_section(work: Work, section: Section, layout: Layout | None, width: float) -> None:
    """Draw a circuit from the top left of the canvas down, its rails `width` cells apart."""
    heading = _heading(work, section)
    draw_heading(work, heading)
    top = _FIRST_SOURCE
    rails = rails_for(layout.width if layout else width, top, (section.left, section.right))
    for number, source in enumerate(section.sources):
        _draw_source(work, source, rails, top + number * _NEXT_SOURCE)
    y = top + (len(section.sources) - 1) * _NEXT_SOURCE
    for net, x, align in ((rails.left, rails.left_x + 4, Align.LEFT),
                          (rails.right, rails.right_x - 4, Align.RIGHT)):  # fmt: skip
        work.write_number(net, Point(x, top - 6), align)
    bottom = y + 10
    if layout is not None:
        bottom = draw_section_rungs(work, rails, layout, y + ABOVE_ROW + 8)
    else:
        for net, x in ((rails.left, rails.left_x), (rails.right, rails.right_x)):
            work.wire(net, [Point(x, top), Point(x, bottom)], HEAVY)
        note = "nothing is wired between these two"
        middle = Point((rails.left_x + rails.right_x) / 2, bottom + 8)
        work.canvas.text(middle, note, Letters(8.0, align=Align.CENTRE))
    draw_earth(work, Point(rails.left_x, bottom), rails.left)
    draw_earth(work, Point(rails.right_x, bottom), rails.right)


def _heading(work: Work, section: Section) -> str:
    spec = work.diagram.spec(section.sources[0].a)
    circuit = _CIRCUITS.get(spec.circuit, "Circuit") if spec else "Circuit"
    names = dict.fromkeys(source.part.name for source in section.sources)
    return f"{circuit}, from {' and '.join(names)}"


def _draw_source(work: Work, source: Branch, rails: Rails, y: float) -> None:
    """Draw a source between the rails, its words above, its terminals at its ports.

    A transformer whose primary stands on a rung shows its secondary alone; one with nothing on its
    primary shows both windings.
    """
    spec, part = source.spec, source.part
    is_fed = isinstance(spec, SourceSpec) and bool(spec.fed_by)
    primary = work.primary_lines(part)
    middle = Point((rails.left_x + rails.right_x) / 2, y)
    symbol = supply.SECONDARY_WINDING if is_fed else supply.SOURCE
    tag = Tag(f"source-{part.key}", ("part", f"part-{part.key}"), f"{part.name}: {part.kind.title}")
    placed = place(work.canvas, symbol, Pose(middle), tag=tag)
    left, right = placed.ports
    work.wire(rails.left, [Point(rails.left_x, y), left], LINE)
    work.wire(rails.right, [right, Point(rails.right_x, y)], LINE)
    turned = source.net_a != rails.left
    terminals = (source.b, source.a) if turned else (source.a, source.b)
    for terminal, port, align in zip(
        terminals, (left, right), (Align.RIGHT, Align.LEFT), strict=True
    ):
        name = work.put_terminal(part, terminal, port)
        aside = 3.0 if align is Align.RIGHT else -3.0
        work.canvas.text(port.moved(aside, 8), name, Letters(SMALL_PT, align=align))
    _letter_words(work, _words(source, primary, is_fed=is_fed), middle.moved(0, -22), rails)


def _letter_words(work: Work, words: str, at: Point, rails: Rails) -> None:
    """Letter the words over a source, right of what already stands on the left at that height."""
    width = text_width(words, _WORDS.size_pt)
    left = max(rails.left_x, at.x - width / 2)
    line = Box(left, at.y - 4, left + width, at.y + 4)
    blocked = [item.bounds.right for item in work.canvas.in_order() if item.bounds.overlaps(line)]
    work.canvas.text(Point(max([left, *(right + 10 for right in blocked)]), at.y), words, _WORDS)


_WORDS = Letters(8.0)


def _words(source: Branch, primary: list[int], *, is_fed: bool) -> str:
    """Return the name of a source, what it gives, and where its primary is."""
    words = [f"{source.part.name}: {source.part.kind.title}"]
    spec = source.spec
    if isinstance(spec, SourceSpec):
        words += [_volts(source, spec)]
        rating = source.part.values.get(spec.rating or "")
        words += [str(rating)] if isinstance(rating, Quantity) else []
    if primary:
        words.append("primary on line " + " and ".join(map(str, primary)))
    elif is_fed:
        words.append("nothing on its primary: taken as powered")
    return ", ".join(word for word in words if word)


def _volts(source: Branch, spec: SourceSpec) -> str:
    if not isinstance(spec.volts, str):
        return f"{spec.volts * spec.share:g} V"
    value = source.part.values.get(spec.volts)
    if isinstance(value, tuple) and not isinstance(value, Quantity) and value:
        value = max(value, key=lambda quantity: quantity.high_base)
    if not isinstance(value, Quantity):
        return ""
    if spec.share == 1.0:
        return str(value)
    return f"{value.high * spec.share:.0f} {value.unit}"
