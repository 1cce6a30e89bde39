"""The lists on paper: A4, nothing outside its column, nothing lost, headings on every page."""

from __future__ import annotations

from functools import cache

import pytest

from tests.contract.source import ROOT
from tests.sequence.heater import HEATER
from wirecheck import check, draw_lists, lists, load, load_text
from wirecheck.drawing.canvas import Canvas, Lettering
from wirecheck.drawing.lists_sheet import lists_pages
from wirecheck.drawing.sheet import MARGIN
from wirecheck.drawing.table import WIDTH
from wirecheck.lists.lists import Lists
from wirecheck.lists.tables import WHAT

NAMES = ("greenhouse-range", "laundry-heater-own-labels", "no-burner-ground")


@cache
def of(name: str) -> Lists:
    return lists(check(load(ROOT / "examples" / f"{name}.wiring").diagram))


def lettering(page: Canvas) -> list[Lettering]:
    return [item for item in page.in_order() if isinstance(item, Lettering)]


def words(pages: list[Canvas]) -> str:
    return " ".join(each.text for page in pages for each in lettering(page))


@pytest.mark.parametrize("name", NAMES)
def test_every_page_is_upright_a4_and_no_two_lines_overlap(name: str) -> None:
    for page in lists_pages(of(name), WHAT):
        assert (page.width, page.height) == (595.3, 841.9)
        boxes = [each.bounds for each in lettering(page)]
        for place, one in enumerate(boxes):
            assert one.left >= MARGIN
            assert one.right <= page.width - MARGIN
            assert one.bottom <= page.height - MARGIN
            assert not [other for other in boxes[place + 1 :] if one.overlaps(other, slack=1.0)]


def test_every_lead_stands_on_the_pages() -> None:
    of_range = of("greenhouse-range")
    shown = words(lists_pages(of_range, ("wires",)))
    left = (595.3 - WIDTH) / 2
    first = [
        each.text
        for page in lists_pages(of_range, ("wires",))
        for each in lettering(page)
        if each.text.isdigit() and each.at.x < left + 10
    ]
    assert first == [str(wire.place) for wire in of_range.wires]
    assert "40 ft for 29-30" in shown


def test_a_list_goes_on_under_its_name_and_its_headings() -> None:
    pages = lists_pages(of("greenhouse-range"), ("wires",))
    assert len(pages) > 1
    for page in pages[1:]:
        top = [each.text for each in lettering(page) if each.at.y < 115]
        assert "Wire list (continued)" in top
        assert {"from", "to", "colour"} <= set(top)
    assert "(continued)" not in words(pages[:1])


def test_no_name_or_heading_is_the_last_of_a_page() -> None:
    for name in NAMES:
        for page in lists_pages(of(name), WHAT):
            table = [each for each in lettering(page) if each.style.size_pt in (7.5, 9.0)]
            last = max((each for each in table if each.at.y < 780), key=lambda each: each.at.y)
            assert last.style.face.name == "PLAIN"


def test_mistakes_found_are_counted_in_the_title_block() -> None:
    assert "1 finding: 1 operation" in words(lists_pages(of("no-burner-ground"), ("parts",)))


def test_labels_are_lettered_literally_and_stay_in_their_column() -> None:
    text = f'{HEATER}labels limit: 1 as "<b>&\\N{{x}} {"W" * 300}"\n'
    pages = lists_pages(lists(check(load_text(text).diagram)), WHAT)
    assert "<b>&\\N{x}" in words(pages)
    for page in pages:
        for each in lettering(page):
            assert each.bounds.right <= page.width - MARGIN


def test_the_same_lists_give_the_same_bytes() -> None:
    assert draw_lists(of("no-burner-ground")) == draw_lists(of("no-burner-ground"))
