"""Rungs between two rails, with line numbers down the side and earth signs at the foot."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import NamedTuple

from wirecheck.drawing.canvas import HEAVY, Align, Layer, Letters, Tag
from wirecheck.drawing.geometry import Point
from wirecheck.drawing.ladder.block import blocks, draw_block
from wirecheck.drawing.ladder.branches import Branch
from wirecheck.drawing.ladder.element import draw_element
from wirecheck.drawing.ladder.layout import INSET, Flag, Layout
from wirecheck.drawing.ladder.work import CELL, ROW, Work
from wirecheck.drawing.lettering import Face, text_width
from wirecheck.drawing.symbols import joints, supply
from wirecheck.drawing.symbols.symbol import Pose, place
from wirecheck.model.diagram import EARTH
from wirecheck.model.kind import LoadSpec, SwitchSpec

STUB = 18.0
"""From a rail to the first cell of a rung."""
NUMBERS_WIDTH = 20.0
"""Room for the line numbers left of the left rail."""
NOTES_WIDTH = 40.0
"""Room right of the right rail, for the lines on which a coil's contacts stand."""
ABOVE_ROW = 36.0
"""From a row's wire to the upper edge of what is drawn on it."""
_EARTH_DROP = 8.0
_FLAG_WIDTH = 50.0
_FLAG_POINT = 7.0
EARTH_HEIGHT = 26.0
"""Room for the earth sign below a rail."""


class Rails(NamedTuple):
    """Where two rails are, and their nets."""

    left_x: float
    right_x: float
    top: float
    left: int
    right: int


def rails_for(layout_width: float, top: float, nets: tuple[int, int]) -> Rails:
    """Return rails for rungs that many cells wide, their left rail right of the line numbers."""
    right_x = NUMBERS_WIDTH + 2 * STUB + layout_width * CELL
    return Rails(NUMBERS_WIDTH, right_x, top, *nets)


def draw_rungs(work: Work, layout: Layout, corner: Point) -> None:
    """Draw a layout whose first row begins at `corner`, and number its lines at the left."""
    for wire in layout.wires:
        begin = corner.moved(wire.left * CELL, wire.top * ROW)
        work.wire(wire.net, [begin, corner.moved(wire.right * CELL, wire.bottom * ROW)])
    held = blocks(layout)
    for block in held:
        draw_block(work, block, layout, corner)
    for cell in layout.cells:
        in_block = any(block.part is cell.leaf.branch.part for block in held)
        left = corner.moved(cell.left * CELL, cell.row * ROW)
        draw_element(work, cell.leaf, left, in_block=in_block)
    for dot in layout.dots:
        at = corner.moved(dot.x * CELL, dot.row * ROW)
        place(work.canvas, joints.CONNECTION, Pose(at), tag=work.wire_tag(dot.net))
    for flag in layout.flags:
        _draw_flag(work, flag, corner, lines_of_rows(work, layout)[flag.other])
    for number in layout.numbers:
        at_rim = any(block.begins_at(number.x, number.row) for block in held)
        x = (number.x - INSET * at_rim) * CELL - 3
        work.write_number(number.net, corner.moved(x, number.row * ROW - 6), Align.RIGHT)


def number_lines(work: Work, layout: Layout, first_row: Point) -> None:
    """Letter the line number of each row left of `first_row` and below."""
    for row, line in lines_of_rows(work, layout).items():
        style, tag = Letters(9.0, Face.BOLD, Align.RIGHT), Tag(f"line-{line}", ("line-number",))
        work.canvas.text(first_row.moved(0, row * ROW), str(line), style, tag=tag)


def lines_of_rows(work: Work, layout: Layout) -> dict[int, int]:
    """Return the line number of each row of a layout."""
    return {cell.row: work.lines[cell.leaf.branch.number] for cell in layout.cells}


def _draw_flag(work: Work, flag: Flag, corner: Point, line: int) -> None:
    """Draw where a rung is cut: a flag that points on, with the line where it goes on."""
    goes_on = flag.other > flag.row
    at = corner.moved(flag.x * CELL, flag.row * ROW)
    left = at if goes_on else at.moved(-_FLAG_WIDTH - _FLAG_POINT, 0)
    right = left.moved(_FLAG_WIDTH, 0)
    tip = right.moved(_FLAG_POINT, 0)
    half = _FLAG_POINT
    outline = [left.moved(0, -half), right.moved(0, -half), tip, right.moved(0, half)]
    work.canvas.line([*outline, left.moved(0, half), outline[0]], layer=Layer.SYMBOL)
    words = f"to line {line}" if goes_on else f"from line {line}"
    centre = left.towards(right, 0.5)
    style = Letters(7.5, align=Align.CENTRE)
    work.canvas.text(centre, words, style, tag=work.wire_tag(flag.net))


def draw_section_rungs(
    work: Work, rails: Rails, layout: Layout, first_y: float
) -> tuple[float, float]:
    """Draw rails with their rungs from `first_y` down, and return where either rail ends."""
    corner = Point(rails.left_x + STUB, first_y)
    draw_rungs(work, layout, corner)
    number_lines(work, layout, Point(rails.left_x - 8, first_y))
    bottoms = []
    for net, x, stub, edge in (
        (rails.left, rails.left_x, STUB, 0.0),
        (rails.right, rails.right_x, -STUB, layout.width),
    ):
        ends = [Point(x, first_y + row * ROW) for row in rows_at(layout, edge)]
        _draw_rail(work, net, [Point(x, rails.top), *ends], stub)
        bottoms.append(ends[-1].y)
    for cell in layout.cells:
        at = Point(rails.right_x + 8, first_y + cell.row * ROW)
        _refer_to_contacts(work, cell.leaf.branch, at)
    return bottoms[0], bottoms[1]


def rows_at(layout: Layout, x: float) -> list[int]:
    """Return the rows on which something begins or ends at a rail."""
    ends = [(cell.row, cell.left, cell.left + 1) for cell in layout.cells]
    ends += [(wire.top, wire.left, wire.right) for wire in layout.wires]
    # Distances that were added up in different orders differ in their last digits.
    return sorted({row for row, *sides in ends if any(abs(side - x) < 1e-6 for side in sides)})


def _draw_rail(work: Work, net: int, points: list[Point], stub: float) -> None:
    """Draw a rail from its top to its last rung, with a stub to each rung."""
    top, *ends = points
    work.wire(net, [top, ends[-1]], HEAVY)
    for end in ends:
        work.wire(net, [end, end.moved(stub, 0)])
    for end in ends[:-1]:
        place(work.canvas, joints.CONNECTION, Pose(end), tag=work.wire_tag(net))


def draw_earth(work: Work, at: Point, net: int) -> None:
    """Draw the earth sign below a place of an earthed net, and remember that earth is there."""
    if not work.is_earthed(net):
        return
    end = at.moved(0, _EARTH_DROP)
    work.wire(net, [at, end])
    work.places.setdefault(EARTH, end)
    place(work.canvas, supply.EARTH, Pose(end), tag=Tag(classes=("earth",), title="earth"))


def _refer_to_contacts(work: Work, branch: Branch, at: Point) -> None:
    """Letter beside a coil the lines on which its contacts stand, break contacts underlined."""
    if not isinstance(branch.spec, LoadSpec) or branch.spec.type != "coil":
        return
    x = at.x
    for line, is_break in sorted(work.contacts.get((branch.part.key, branch.name), ())):
        style = Letters(8.0)
        work.canvas.text(Point(x, at.y), str(line), style)
        width = text_width(str(line), style.size_pt)
        if is_break:
            under = at.y + 5.5
            work.canvas.line([Point(x, under), Point(x + width, under)])
        x += width + 7


def contact_lines(
    lines: Mapping[int, int], branches: Iterable[Branch]
) -> dict[tuple[str, str], set[tuple[int, bool]]]:
    """Return for each coil, by its part and name, the lines of its contacts; true: breaks."""
    found: dict[tuple[str, str], set[tuple[int, bool]]] = {}
    for branch in branches:
        spec = branch.spec
        if isinstance(spec, SwitchSpec) and spec.coil is not None and branch.number in lines:
            of_coil = found.setdefault((branch.part.key, spec.coil), set())
            of_coil.add((lines[branch.number], spec.normal == "closed"))
    return found
