"""Tables of text, and cells for a spreadsheet."""

import pytest

from wirecheck.report.page import Page
from wirecheck.report.spreadsheet import csv_table, plain_cell
from wirecheck.report.table_text import table_text
from wirecheck.report.visible import cells


def test_columns_are_lined_up() -> None:
    lines = list(table_text(("a", "bb"), (("one", "1"), ("two", "22")), Page(80)))
    assert lines == ["a    bb", "one  1", "two  22"]


def test_long_cells_are_folded_within_the_page() -> None:
    rows = (("part", "a long text " * 10), ("x" * 12, "y"))
    lines = list(table_text(("name", "what"), rows, Page(40, to_pipe=False)))
    assert max(map(cells, lines)) <= 40
    assert "a long text a long text" in lines[1]
    assert lines[-1] == f"{'x' * 12}  y"


def test_no_name_is_broken_and_no_row_is_shifted() -> None:
    rows = (
        ("1", "plenum.FAN-1", "blower.LO", "red", "some remark that can be folded"),
        ("2", "x.A", "a-very-long-name.TERMINAL", "yellow/green", ""),
    )
    lines = list(
        table_text(("lead", "from", "to", "colour", "remarks"), rows, Page(60, to_pipe=False))
    )
    column = lines[0].index("to  "), lines[0].index("colour")
    assert [line[column[0] :][:9] for line in lines if "plenum" in line] == ["blower.LO"]
    assert [line[column[1] :][:12] for line in lines if "x.A" in line] == ["yellow/green"]
    assert len(lines) > 3


def test_a_file_has_room_for_what_is_comfortable_to_read() -> None:
    lines = list(table_text(("a", "b"), (("one", "word " * 17),), Page()))
    assert len(lines) == 2


def test_nothing_in_a_cell_acts_on_a_terminal() -> None:
    (line,) = list(table_text(("a",), (("\x1b[2J",),), Page(80)))[1:]
    assert line == r"\x1b[2J"


@pytest.mark.parametrize("sign", "=+-@\uff1d\uff0b\uff0d\uff20")
@pytest.mark.parametrize("before", ["", " ", "\t", "\u00a0"])
def test_no_cell_begins_a_formula(sign: str, before: str) -> None:
    assert plain_cell(f"{before}{sign}1").startswith("'")


def test_other_cells_stay_as_they_are() -> None:
    assert plain_cell("box.V+") == "box.V+"
    assert csv_table(("a", "b"), [{"a": 'x "y", z'}]) == 'a,b\r\n"x ""y"", z",\r\n'
