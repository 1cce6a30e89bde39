"""Marks tell apart what they mean without colour."""

import pytest

from wirecheck.drawing.canvas import Canvas, Dash, Item, Lettering, Path, Shape, Tag
from wirecheck.drawing.geometry import Point
from wirecheck.drawing.marks import (
    NumberedFinding,
    along,
    finding_mark,
    lead_to_add,
    lead_to_take_away,
    point_out,
)
from wirecheck.model.finding import Breaks

RUN = [Point(0, 0), Point(100, 0), Point(100, 110)]


def _drawn(canvas: Canvas, kind: type[Item]) -> list[Item]:
    return [item for item in canvas.in_order() if isinstance(item, kind)]


def test_what_a_finding_breaks_shows_in_the_shape_of_its_ring() -> None:
    """Each class differs from the others in the number of rings, their width or their filling."""
    looks = set()
    for breaks in Breaks:
        canvas = Canvas()
        finding_mark(canvas, Point(0, 0), NumberedFinding(7, breaks, "words"))
        rings = [i for i in canvas.in_order() if isinstance(i, Shape)]
        filled = rings[0].fill == rings[0].stroke.colour
        looks.add((len(rings), rings[0].stroke.width_pt > 1.5, filled))
    assert len(looks) == len(Breaks)


@pytest.mark.parametrize("number", [1, 42, 117])
def test_the_number_fits_its_ring(number: int) -> None:
    canvas = Canvas()
    room = finding_mark(canvas, Point(50, 50), NumberedFinding(number, Breaks.SAFETY, "words"))
    (letters,) = _drawn(canvas, Lettering)
    assert room.grown(-2).holds(letters.bounds)


def test_a_mark_points_to_its_place_and_can_be_found() -> None:
    canvas = Canvas(id_prefix="ladder-")
    finding = NumberedFinding(3, Breaks.OPERATION, "no burner ground")
    point_out(canvas, Point(70, 80), Point(50, 50))
    finding_mark(canvas, Point(50, 50), finding)
    (leader,) = _drawn(canvas, Path)
    assert isinstance(leader, Path)
    assert leader.controls[0] == Point(70, 80)
    tags = [item.tag for item in canvas.in_order()]
    assert Tag("ladder-mark-3", ("finding", "finding-3"), "no burner ground") in tags


def test_a_lead_to_take_away_is_dashed_and_crossed_out() -> None:
    canvas = Canvas()
    lead_to_take_away(canvas, RUN, Tag("lead-1"))
    paths = [item for item in canvas.in_order() if isinstance(item, Path)]
    assert any(path.tag.id == "lead-1" and path.stroke.dash is Dash.DASHED for path in paths)
    assert len(paths) == 2 + 2 * len(list(along(RUN, 42)))


def test_a_lead_to_add_is_hollow_with_plus_signs() -> None:
    canvas = Canvas()
    lead_to_add(canvas, RUN, Tag("lead-1"))
    paths = [item for item in canvas.in_order() if isinstance(item, Path)]
    outer, inner = paths[:2]
    assert outer.stroke.width_pt > inner.stroke.width_pt
    assert inner.stroke.colour == "#ffffff"
    assert len(_drawn(canvas, Shape)) == len(list(along(RUN, 42)))


def test_signs_are_spread_evenly_and_never_on_an_end() -> None:
    assert list(along([Point(0, 0), Point(100, 0)], 50)) == [Point(25, 0), Point(75, 0)]
    assert list(along([Point(0, 0), Point(6, 0)], 50)) == [Point(3, 0)]
    assert list(along([Point(5, 5), Point(5, 5)], 50)) == [Point(5, 5)]
