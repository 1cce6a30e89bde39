"""A control or a burner as a block round what is inside it, with its terminals on the rim."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from typing import NamedTuple

from wirecheck.drawing.canvas import Align, Canvas, Dash, Layer, Letters, Stroke, Tag
from wirecheck.drawing.geometry import Box, Point
from wirecheck.drawing.ladder.layout import INSET, Cell, Layout
from wirecheck.drawing.ladder.work import CELL, ROW, SMALL_PT, TERMINAL_SIZES_PT, Work
from wirecheck.drawing.lettering import Face, fitted, fitting_size, text_width
from wirecheck.model.diagram import Part, Terminal

_GROUND = "#f0f0f0"
_ABOVE = 31.0
_BELOW = 18.0
_LABEL_ROOM = 33.0


class Block(NamedTuple):
    """The cells of one part in a layout, from `left` to `right` across and a row to a row."""

    part: Part
    left: float
    right: float
    first: int
    last: int

    def begins_at(self, x: float, row: int) -> bool:
        """Say whether its first cell on a row begins there, so that its rim is just before."""
        return abs(x - self.left) < INSET / 2 and self.first <= row <= self.last

    def holds(self, cell: Cell) -> bool:
        """Say whether any of a cell is inside."""
        across = cell.left < self.right and cell.left + 1 > self.left
        return across and self.first <= cell.row <= self.last


def blocks(layout: Layout) -> list[Block]:
    """Return a block for each control and burner whose cells have no other part among them."""
    found: dict[str, list[Cell]] = {}
    for cell in layout.cells:
        if cell.leaf.branch.in_block:
            found.setdefault(cell.leaf.branch.part.key, []).append(cell)
    whole = (_block(cells) for cells in found.values())
    return [block for block in whole if not _has_strangers(block, layout.cells)]


def _block(cells: list[Cell]) -> Block:
    rows = [cell.row for cell in cells]
    lefts = [cell.left for cell in cells]
    return Block(cells[0].leaf.branch.part, min(lefts), max(lefts) + 1, min(rows), max(rows))


def _has_strangers(block: Block, cells: Iterable[Cell]) -> bool:
    return any(block.holds(cell) and cell.leaf.branch.part is not block.part for cell in cells)


def draw_block(work: Work, block: Block, layout: Layout, corner: Point) -> None:
    """Draw the block, its name, and a terminal wherever a wire of its net crosses the rim.

    `corner` is the left end of the layout's first row.
    """
    part, canvas = block.part, work.canvas
    rim = Box(
        corner.x + (block.left - INSET) * CELL,
        corner.y + block.first * ROW - _ABOVE,
        corner.x + block.right * CELL,
        corner.y + block.last * ROW + _BELOW,
    )
    tag = Tag(f"block-{part.key}", ("part", f"part-{part.key}"), f"{part.name}: {part.kind.title}")
    dashed = Stroke(width_pt=1.0, dash=Dash.DASHED)
    canvas.box(rim, fill=_GROUND, stroke=dashed, layer=Layer.GROUND, tag=tag)
    _letter_heading(canvas, part, Point(rim.left + 5, rim.top + 7), rim.width - 10)
    for terminal, row, at_left in _crossings(block, layout):
        at = Point(rim.left if at_left else rim.right, corner.y + row * ROW)
        label = work.put_terminal(part, terminal, at)
        # A bus may go down just inside the left rim: the label there stands above the wire.
        nudge, align = ((4, -7), Align.LEFT) if at_left else ((-5, 11), Align.RIGHT)
        size_pt = fitting_size(label, _LABEL_ROOM, TERMINAL_SIZES_PT, Face.BOLD)
        style = Letters(size_pt, Face.BOLD, align)
        canvas.text(at.moved(*nudge), fitted(label, _LABEL_ROOM, size_pt, Face.BOLD), style)


def _letter_heading(canvas: Canvas, part: Part, at: Point, room: float) -> None:
    """Letter the part's name, and what it is if there is room."""
    name = fitted(part.name, room, _NAME.size_pt, _NAME.face)
    canvas.text(at, name, _NAME)
    used = text_width(name, _NAME.size_pt, _NAME.face) + 5
    if used + text_width(part.kind.title, SMALL_PT) <= room:
        canvas.text(at.moved(used, 0), part.kind.title, Letters(SMALL_PT))


_NAME = Letters(9.0, Face.BOLD)


def _crossings(block: Block, layout: Layout) -> Iterator[tuple[Terminal, int, bool]]:
    """Yield each terminal on the rim with its row, and whether it is on the left.

    Where a bus inside the rim joins the rows, only the first of them is fed from outside.
    """
    rim = block.left - INSET
    is_bus = any(w.top != w.bottom and rim < w.left <= block.left for w in layout.wires)
    for row in range(block.first, block.last + 1):
        in_row = [cell for cell in layout.cells if cell.row == row and block.holds(cell)]
        if not in_row:
            continue
        first, last = (pick(in_row, key=lambda cell: cell.left) for pick in (min, max))
        if row == block.first or (first.left == block.left and not is_bus):
            yield _start(first), row, True
        yield _end(last), row, False


def _start(cell: Cell) -> Terminal:
    branch = cell.leaf.branch
    return branch.b if cell.leaf.flipped else branch.a


def _end(cell: Cell) -> Terminal:
    branch = cell.leaf.branch
    return branch.a if cell.leaf.flipped else branch.b
