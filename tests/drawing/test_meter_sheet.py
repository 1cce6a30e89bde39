"""The meter sheet on paper: A4, nothing outside its column, nothing lost."""

from __future__ import annotations

import pytest

from tests.contract.source import ROOT
from tests.drawing.picture import texts
from tests.meter.units import sheet
from tests.sequence.heater import HEATER
from wirecheck import check, draw_meter, load, meter
from wirecheck.drawing.canvas import Canvas, Lettering
from wirecheck.drawing.meter_sheet import COLUMNS, MOST_FINDINGS, meter_pages
from wirecheck.drawing.sheet import MARGIN
from wirecheck.meter.reading import MeterSheet

EXAMPLES = sorted((ROOT / "examples").glob("*.wiring"))
A4_UPRIGHT = (595.3, 841.9)


def lettering(page: Canvas) -> list[Lettering]:
    return [item for item in page.in_order() if isinstance(item, Lettering)]


def words(pages: list[Canvas]) -> str:
    return " ".join(each.text for page in pages for each in lettering(page))


def measured(name: str) -> MeterSheet:
    return meter(check(load(ROOT / "examples" / f"{name}.wiring").diagram))


@pytest.mark.parametrize("file", EXAMPLES, ids=lambda file: file.stem)
def test_every_page_is_upright_a4_and_holds_its_lettering(file: object) -> None:
    pages = meter_pages(meter(check(load(str(file)).diagram)))
    assert pages
    for page in pages:
        assert (page.width, page.height) == A4_UPRIGHT
        for each in lettering(page):
            bounds = each.bounds
            assert bounds.left >= MARGIN
            assert bounds.right <= page.width - MARGIN
            assert bounds.bottom <= page.height - MARGIN


def test_every_reading_stands_once_with_its_value() -> None:
    of = measured("boiler-with-vent-damper")
    pages = meter_pages(of)
    left = (pages[0].width - COLUMNS[-1].right) / 2
    numbers = [
        int(each.text)
        for page in pages
        for each in lettering(page)
        if each.text.isdigit() and each.at.x < left + COLUMNS[0].right
    ]
    assert numbers == [reading.step for reading in of.readings]
    shown = words(pages)
    for reading in of.readings:
        assert reading.red.shown.split()[0] in shown


def beside_their_column(page: Canvas) -> list[str]:
    """What of the table is lettered over the edge of its column."""
    left = (page.width - COLUMNS[-1].right) / 2
    edges = [left + column.right for column in COLUMNS]
    top = next(each.at.y for each in lettering(page) if each.text == COLUMNS[1].heading)
    table = [
        each
        for each in lettering(page)
        if each.at.y > top and each.style.size_pt == 7.5 and each.at.x - left > COLUMNS[1].left
    ]
    assert len(table) > 10
    return [
        each.text
        for each in table
        if each.bounds.right > min(edge for edge in edges if edge > each.at.x)
    ]


def test_lettering_keeps_to_its_column() -> None:
    for page in meter_pages(measured("greenhouse-range")):
        assert not beside_their_column(page)


def test_no_two_lines_overlap() -> None:
    for page in meter_pages(measured("furnace-room-heater")):
        boxes = [each.bounds for each in lettering(page)]
        for place, one in enumerate(boxes):
            assert not [other for other in boxes[place + 1 :] if one.overlaps(other, slack=1.0)]


def test_a_stage_goes_on_over_the_page_under_its_name() -> None:
    pages = meter_pages(measured("boiler-with-vent-damper"))
    assert "(continued)" in words(pages[1:])
    assert "(continued)" not in words(pages[:1])
    titles = [each.text for each in lettering(pages[1]) if each.text.startswith("Meter sheet")]
    assert titles == [f"Meter sheet 2 of {len(pages)}"]


def test_a_wrong_unit_is_said_to_be_so_on_the_first_page() -> None:
    pages = meter_pages(measured("no-burner-ground"))
    first = words(pages[:1])
    assert "As drawn, not as it should be" in first
    assert "no lead runs from box.GND to pilot.HOOD" in first
    assert "no lead runs from box.GND to pilot.HOOD" not in words(pages[1:])


def test_many_findings_leave_room_for_the_readings() -> None:
    of = measured("no-burner-ground")
    checked = of.checked._replace(findings=of.checked.findings * 30)
    pages = meter_pages(of._replace(checked=checked))
    assert (pages[0].width, pages[0].height) == A4_UPRIGHT
    assert f"and {len(checked.findings) - MOST_FINDINGS} more" in words(pages[:1])
    assert "xfmr.L1 / xfmr.N" in words(pages[:1])


def test_line_voltage_is_told_in_words_too() -> None:
    assert "volts AC LINE VOLTAGE" in " ".join(words(meter_pages(sheet(HEATER))).split())


def test_labels_are_lettered_literally() -> None:
    hostile = sheet(f'{HEATER}labels limit: 1 as "<b>&\\N{{x}}"\n')
    pages = meter_pages(hostile)
    assert any("<b>&\\N{x}" in text for page in pages for text in texts(page))


def test_a_label_without_end_stays_in_its_column() -> None:
    for page in meter_pages(sheet(f'{HEATER}labels limit: 1 as "{"W" * 300}"\n')):
        assert not beside_their_column(page)


def test_the_same_sheet_gives_the_same_bytes() -> None:
    assert draw_meter(sheet(HEATER)) == draw_meter(sheet(HEATER))
