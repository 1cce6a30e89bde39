"""The meter sheet as text: on a phone as on a desk, whatever is in the labels."""

import pytest

from tests.contract.source import ROOT
from tests.meter.units import sheet
from tests.sequence.heater import HEATER
from wirecheck import check, load_text, meter
from wirecheck.report.meter_files import MeterFile
from wirecheck.report.meter_text import meters_text
from wirecheck.report.page import Page
from wirecheck.report.visible import cells

EXAMPLES = ("boiler-with-vent-damper", "no-burner-ground", "greenhouse-range")


@pytest.mark.parametrize("width", [40, 60, 80])
@pytest.mark.parametrize("name", EXAMPLES)
def test_no_line_is_wider_than_the_page(name: str, width: int) -> None:
    text = (ROOT / "examples" / f"{name}.wiring").read_text(encoding="utf-8")
    file = MeterFile("a.wiring", (), meter(check(load_text(text, "a.wiring").diagram)))
    lines = list(meters_text([file], Page(width, to_pipe=False)))
    assert not [line for line in lines if cells(line) > width]


@pytest.mark.parametrize("width", [40, 80])
def test_every_reading_is_there_whatever_the_width(width: int) -> None:
    of = sheet(HEATER)
    text = " ".join(" ".join(meters_text([MeterFile("a", (), of)], Page(width))).split())
    for reading in of.readings:
        assert reading.good in text
        for wrong in reading.wrong:
            assert f"if {wrong.reading}: {wrong.means}" in text


def test_values_stand_in_a_column_where_there_is_room() -> None:
    lines = list(meters_text([MeterFile("a", (), sheet(HEATER))], Page(80)))
    valued = [line for line in lines if " ..." in line]
    assert len(valued) > 20
    assert {len(line) for line in valued} == {80}


def test_what_a_label_holds_does_nothing_to_a_terminal() -> None:
    built = load_text(f'{HEATER}labels limit: 1 as "\x1b[2Jw\u202eipe"\n', "a.wiring")
    file = MeterFile("a.wiring", built.problems, meter(check(built.diagram)))
    text = "\n".join(meters_text([file], Page(80)))
    assert not {"\x1b", "\u202e"} & set(text)
    assert "ipe to limit.2" in text


def test_colour_is_for_terminals_that_have_it() -> None:
    file = MeterFile("a", (), sheet(HEATER))
    assert "\x1b[" not in "".join(meters_text([file], Page(80)))
    assert "\x1b[" in "".join(meters_text([file], Page(80, colour=True)))
