"""What a terminal gets: nothing that acts, and lines that fit."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wirecheck.report.visible import cells, folded, visible


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("box.GND to pilot.HOOD", "box.GND to pilot.HOOD"),
        ("Kessel für Öl, ß, 炉", "Kessel für Öl, ß, 炉"),
        ("\x1b[2J", "\\x1b[2J"),
        ("one\ntwo\r", "one\\ntwo\\r"),
        ("a\tb", "a b"),
        ("\u202egnp.exe", "\\u202egnp.exe"),
        ("\ud800", "\\ud800"),
        ("\x9b1A", "\\x9b1A"),
    ],
)
def test_only_what_prints_is_left_as_it_is(text: str, shown: str) -> None:
    assert visible(text) == shown


@given(st.text())
def test_no_text_acts_on_a_terminal(text: str) -> None:
    assert not re.search(
        "[\x00-\x1f\x7f-\x9f\u200e\u200f\u2028-\u202e\u2066-\u2069]", visible(text)
    )


@pytest.mark.parametrize(("text", "count"), [("abc", 3), ("炉", 2), ("e\u0301", 1), ("ö", 1)])
def test_cells_are_those_of_a_terminal(text: str, count: int) -> None:
    assert cells(text) == count


@given(st.text(alphabet="abc 炉é", max_size=200), st.integers(min_value=10, max_value=60))
def test_folding_keeps_every_word_and_the_width(text: str, width: int) -> None:
    lines = folded(text, width, "* ", "    ")
    assert " ".join(lines).replace("* ", "", 1).split() == text.split()
    assert all(cells(line) <= width or len(line.split()) <= 2 for line in lines)


def test_what_runs_on_is_indented() -> None:
    assert folded("one two three", 9, "- ", "  ") == ["- one two", "  three"]
