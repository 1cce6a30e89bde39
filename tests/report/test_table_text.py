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
    lines = list(table_text(("name", "what"), rows, Page(40)))
    assert max(map(cells, lines)) <= 40
    assert "a long text a long text" in lines[1]
    assert lines[-1] == f"{'x' * 12}  y"


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
