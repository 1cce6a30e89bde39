"""The reader of finished sheets sees what it is there to see."""

import pytest

from tests.drawing.connections.clearances import collisions
from tests.drawing.connections.diagrams import HEATER, read
from wirecheck.drawing.canvas import Canvas, Tag
from wirecheck.drawing.connections import connection_sheet
from wirecheck.drawing.geometry import Box, Point

_LEAD = Tag("connections-lead-99")


@pytest.fixture(scope="module")
def page() -> Canvas:
    return connection_sheet(read(HEATER))


def _spoilt(page: Canvas) -> Canvas:
    copy = Canvas(page.width, page.height)
    copy.place(page, 0, 0)
    assert not collisions(copy)
    return copy


def _room(page: Canvas, name: str) -> Box:
    return next(item.bounds for item in page.in_order() if item.tag.id == name)


@pytest.mark.parametrize("across", [True, False])
def test_a_lead_through_a_part_is_seen(page: Canvas, *, across: bool) -> None:
    spoilt, box = _spoilt(page), _room(page, "connections-part-box")
    at = box.centre
    ends = (at.moved(-200, 0), at) if across else (at, at.moved(0, 200))
    spoilt.line(ends, tag=_LEAD)
    assert any("through connections-part-box" in told for told in collisions(spoilt))


def test_a_lead_upon_another_is_seen(page: Canvas) -> None:
    spoilt, lead = _spoilt(page), _room(page, "connections-lead-0")
    start = Point(lead.left + 1, lead.top + 1)
    spoilt.line([start, start.moved(30, 0)], tag=_LEAD)
    assert any("lead-0 and connections-lead-99 share" in told for told in collisions(spoilt))


def test_an_askew_lead_is_seen(page: Canvas) -> None:
    spoilt = _spoilt(page)
    spoilt.line([Point(1, 1), Point(2, 1), Point(3, 3), Point(4, 3)], tag=_LEAD)
    assert any("askew" in told for told in collisions(spoilt))


def test_lettering_across_something_is_seen(page: Canvas) -> None:
    spoilt, box = _spoilt(page), _room(page, "connections-part-box")
    spoilt.text(Point(box.left - 20, box.top), "across")
    spoilt.text(Point(box.left - 20, box.top), "upon")
    told = " ".join(collisions(spoilt))
    assert "“across” and “upon” overlap" in told
    assert "“across” lies across connections-part-box" in told
