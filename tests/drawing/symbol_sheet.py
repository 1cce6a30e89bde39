"""A sheet of every symbol with its name and its numbers, to be looked at and to be tested.

`python -m tests.drawing.symbol_sheet FILE.png` draws it.
"""

import sys
from pathlib import Path

from wirecheck.drawing import engine
from wirecheck.drawing.canvas import Align, Canvas, Letters, Tag
from wirecheck.drawing.geometry import Point
from wirecheck.drawing.lettering import Face, wrapped
from wirecheck.drawing.sheet import TitleBlock, framed
from wirecheck.drawing.symbols.catalogue import SYMBOLS
from wirecheck.drawing.symbols.symbol import Pose, Symbol, place

_COLUMNS = 6
_CELL_WIDTH = 130.0
_CELL_HEIGHT = 84.0


def symbol_sheet() -> Canvas:
    """Return a drawing of every symbol with its name and its numbers in the standards."""
    canvas = Canvas(title="Ladder symbols", id_prefix="symbols-")
    for number, symbol in enumerate(SYMBOLS.values()):
        corner = Point(number % _COLUMNS * _CELL_WIDTH, number // _COLUMNS * _CELL_HEIGHT)
        _show(canvas, symbol, corner)
    return canvas


def _show(canvas: Canvas, symbol: Symbol, corner: Point) -> None:
    middle = corner.x + _CELL_WIDTH / 2
    at = Point(middle - symbol.room.centre.x, corner.y + 22 - symbol.room.centre.y)
    place(canvas, symbol, Pose(at), inside="K1", tag=Tag(symbol.name, title=symbol.title))
    room = _CELL_WIDTH - 8
    name, standard = Letters(7.5, Face.BOLD, Align.CENTRE), Letters(6.5, align=Align.CENTRE)
    lines = [(line, name) for line in wrapped(symbol.title, room, name.size_pt, name.face)]
    lines += [(line, standard) for line in wrapped(str(symbol.standard), room, standard.size_pt)]
    for row, (line, style) in enumerate(lines):
        canvas.text(Point(middle, corner.y + 47 + row * 8.5), line, style)


if __name__ == "__main__":
    page = framed(symbol_sheet(), TitleBlock("Ladder symbols", "Symbols"))
    Path(sys.argv[1]).write_bytes(engine.render(page, "png"))
