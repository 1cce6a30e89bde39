"""A source on top of its rails: a supply, a winding of a transformer, a pilot generator."""

from __future__ import annotations

from wirecheck.drawing.canvas import Align, Letters, Tag
from wirecheck.drawing.geometry import Box, Point
from wirecheck.drawing.ladder.branches import Branch
from wirecheck.drawing.ladder.choice import source_symbol
from wirecheck.drawing.ladder.rails import Rails
from wirecheck.drawing.ladder.work import SMALL_PT, Work
from wirecheck.drawing.lettering import text_width
from wirecheck.drawing.symbols import supply
from wirecheck.drawing.symbols.symbol import Placed, Pose, place
from wirecheck.model.diagram import Part, Terminal
from wirecheck.model.kind import SourceSpec
from wirecheck.model.quantity import Quantity

_WORDS = Letters(8.0)
_WORDS_RISE = 22.0


def draw_source(work: Work, source: Branch, rails: Rails, y: float) -> None:
    """Draw a source between the rails, its words above, its terminals at its ports.

    A transformer shows its secondary, and the words say on which line its primary stands as a load
    of the circuit that feeds it. One with nothing on its primary shows both windings.
    """
    part, middle = source.part, Point((rails.left_x + rails.right_x) / 2, y)
    tag = Tag(f"source-{part.key}", ("part", f"part-{part.key}"), f"{part.name}: {part.kind.title}")
    if is_unfed(work, source):
        at = middle.moved(0, -supply.TRANSFORMER.ports[-1].y)
        placed = place(work.canvas, supply.TRANSFORMER, Pose(at), tag=tag)
        _draw_unfed_primary(work, source, placed)
        words_from = placed.box.right + 20
    else:
        placed = place(work.canvas, source_symbol(source), Pose(middle), tag=tag)
        words_from = rails.left_x
    left, right = placed.ports[-2:]
    work.wire(rails.left, [Point(rails.left_x, y), left])
    work.wire(rails.right, [right, Point(rails.right_x, y)])
    is_turned = source.net_a != rails.left
    ends = (source.b, source.a) if is_turned else (source.a, source.b)
    _letter_ports(work, part, ends, (left, right), 8.0)
    at = middle.moved(0, -_WORDS_RISE)
    _letter_words(work, _words(source, work.primary_lines(part)), at, words_from)


def is_unfed(work: Work, source: Branch) -> bool:
    """Say whether a source needs a primary winding and none of its own is on any line."""
    needs_feed = isinstance(source.spec, SourceSpec) and bool(source.spec.fed_by)
    return needs_feed and not work.primary_lines(source.part)


def _draw_unfed_primary(work: Work, source: Branch, placed: Placed) -> None:
    if isinstance(source.spec, SourceSpec):
        first, second = source.spec.fed_by[0]
        ends = (source.part.terminal(first), source.part.terminal(second))
        _letter_ports(work, source.part, ends, (placed.ports[0], placed.ports[1]), 0.0)


def _letter_ports(
    work: Work, part: Part, ends: tuple[Terminal, Terminal], ports: tuple[Point, Point], drop: float
) -> None:
    """Draw the terminals at two ports, their labels that far below the wire and outward."""
    aside = 3.0 if drop else -5.0
    for terminal, port, align, side in zip(
        ends, ports, (Align.RIGHT, Align.LEFT), (aside, -aside), strict=True
    ):
        name = work.put_terminal(part, terminal, port)
        work.canvas.text(port.moved(side, drop), name, Letters(SMALL_PT, align=align))


def _letter_words(work: Work, words: str, at: Point, least_x: float) -> None:
    """Letter the words over a source, right of what already stands on the left at that height."""
    width = text_width(words, _WORDS.size_pt)
    left = max(least_x, at.x - width / 2)
    line = Box(left, at.y - 4, left + width, at.y + 4)
    blocked = [item.bounds.right for item in work.canvas.in_order() if item.bounds.overlaps(line)]
    work.canvas.text(Point(max([left, *(right + 10 for right in blocked)]), at.y), words, _WORDS)


def _words(source: Branch, primary: list[int]) -> str:
    """Return the name of a source, what it gives, and where its primary is."""
    part, spec = source.part, source.spec
    words = [f"{part.name}: {part.kind.title}"]
    if isinstance(spec, SourceSpec):
        words.append(_volts(source, spec))
        rating = part.values.get(spec.rating or "")
        words += [str(rating)] if isinstance(rating, Quantity) else []
        if spec.fed_by:
            on_lines = " and ".join(map(str, primary))
            words.append(f"primary on line {on_lines}" if primary else "no lead on its primary")
    return ", ".join(word for word in words if word)


def _volts(source: Branch, spec: SourceSpec) -> str:
    """Return the volts between the terminals of a source; of several ratings the highest."""
    if not isinstance(spec.volts, str):
        return f"{spec.volts * spec.share:g} V"
    value = source.part.values.get(spec.volts)
    if isinstance(value, tuple) and not isinstance(value, Quantity) and value:
        value = max(value, key=lambda quantity: quantity.high_base)
    if not isinstance(value, Quantity):
        return ""
    return str(value) if spec.share == 1.0 else f"{value.high * spec.share:.0f} {value.unit}"
