"""Every symbol has its standard, keeps to its room, and can be wired at its ports."""

from itertools import combinations

import pytest

from tests.drawing.symbol_sheet import symbol_sheet
from wirecheck.drawing.canvas import Canvas, Lettering, Path, Tag
from wirecheck.drawing.geometry import Point, box_about
from wirecheck.drawing.symbols.catalogue import SYMBOLS
from wirecheck.drawing.symbols.symbol import Pose, Symbol, Turn, place

# Numbers as listed for the ladder (from memory), and the symbols they belong to.
LISTED = {
    "make-contact": ("4.3", "07-02-01", "S00227"),
    "break-contact": ("4.3", "07-02-03", "S00229"),
    "coil": ("4.5", "07-15-01", "S00305"),
    "position-make": ("4.14", "07-08-01", ""),
    "position-break": ("4.14", "07-08-02", ""),
    "temperature-make": ("4.20", "07-09-01", ""),
    "temperature-break": ("4.20", "07-09-02", ""),
    "thermostat": ("4.21", "", ""),
    "pressure-make": ("4.19", "", ""),
    "flow-make": ("4.17", "", ""),
    "level-make": ("4.18", "", ""),
    "transformer": ("6.4", "06-09-01", ""),
    "fuse": ("9.1", "07-21-01", "S00362"),
    "earth": ("3.9.1", "02-15-01", "S00200"),
    "frame": ("3.9.2", "02-15-04", ""),
    "spark-gap": ("9.3", "07-22-01", ""),
}

every_symbol = pytest.mark.parametrize("symbol", SYMBOLS.values(), ids=SYMBOLS.keys())


@every_symbol
def test_a_symbol_names_its_standard_or_says_why_it_has_none(symbol: Symbol) -> None:
    assert str(symbol.standard)


@pytest.mark.parametrize(("name", "numbers"), LISTED.items(), ids=LISTED.keys())
def test_a_listed_symbol_carries_its_numbers(name: str, numbers: tuple[str, str, str]) -> None:
    assert SYMBOLS[name].standard[:3] == numbers


@pytest.mark.parametrize("turn", list(Turn))
@every_symbol
def test_a_symbol_keeps_to_its_room(symbol: Symbol, turn: Turn) -> None:
    """Arcs are bounded by their handles, which reach a little further than the ink."""
    canvas = Canvas(200, 200)
    placed = place(canvas, symbol, Pose(Point(100, 100), turn), inside="K1")
    assert placed.box.grown(2.5).holds(canvas.bounds())


@pytest.mark.parametrize("turn", list(Turn))
@every_symbol
def test_a_stroke_reaches_every_port(symbol: Symbol, turn: Turn) -> None:
    canvas = Canvas(200, 200)
    placed = place(canvas, symbol, Pose(Point(100, 100), turn))
    ends = [box_about(point, 0.1) for i in canvas.in_order() if isinstance(i, Path)
            for point in (i.controls[0], i.controls[-1])]  # fmt: skip
    solid = [item.bounds for item in canvas.in_order() if not isinstance(item, Path)]
    for port in placed.ports:
        assert any(room.holds(box_about(port, 0)) for room in (*ends, *solid))


def test_the_symbol_sheet_has_no_overlaps() -> None:
    """No lettering touches other lettering, and none but a symbol's own runs into a symbol."""
    canvas = symbol_sheet()
    items = canvas.in_order()
    letterings = [i.bounds for i in items if isinstance(i, Lettering) and not i.tag.title]
    rooms = [i.bounds for i in items if i.tag.id]
    assert len(rooms) == len(SYMBOLS)
    assert len(letterings) >= 2 * len(SYMBOLS)
    for one, other in combinations([*letterings, *rooms], 2):
        assert not one.overlaps(other, slack=0.2)


def test_a_page_finds_a_symbol_by_its_id() -> None:
    canvas = Canvas(100, 100)
    place(canvas, SYMBOLS["fuse"], Pose(Point(50, 50)), tag=Tag("part-f1", ("part",), "f1, fuse"))
    tags = [item.tag for item in canvas.in_order()]
    assert [tag.id for tag in tags if tag.id] == ["part-f1"]
    assert all(tag.classes == ("part", "symbol", "symbol-fuse") for tag in tags)
    assert all(tag.title == "f1, fuse" for tag in tags)
