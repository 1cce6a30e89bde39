"""The line of a place with its underline."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from wirecheck.model.text import SourceFile, Span
from wirecheck.report.excerpt import excerpt
from wirecheck.report.visible import cells


def shown(text: str, start: int, end: int, width: int = 80) -> tuple[str, str] | None:
    found = excerpt(Span(SourceFile("a.wiring", text), start, end), width)
    return (found.shown(), found.underline()) if found else None


def test_the_place_is_underlined() -> None:
    assert shown("part a is b\nwire x to y\n", 17, 18) == (
        "   2 | wire x to y",
        "     |      ^",
    )


def test_a_place_without_extent_gets_one_mark() -> None:
    assert shown("wire", 4, 4) == ("   1 | wire", "     |     ^")


def test_a_place_of_several_lines_is_underlined_to_the_end_of_its_first() -> None:
    text = "wire a.1 to\n  b.2\n"
    assert shown(text, 5, 17) == ("   1 | wire a.1 to", "     |      ^^^^^^")


def test_wide_characters_and_tabs_keep_the_marks_in_place() -> None:
    assert shown("\t炉 x", 3, 4) == ("   1 |  炉 x", "     |     ^")


def test_a_blank_line_shows_nothing() -> None:
    assert shown("\n\n", 1, 1) is None


@pytest.mark.parametrize("start", [0, 500, 985])
def test_of_a_long_line_the_part_round_the_place_is_shown(start: int) -> None:
    text = f"{'a' * start}HERE{'b' * (1000 - start)}"
    line, underline = shown(text, start, start + 4, width=60) or ("", "")
    assert len(line) <= 60
    assert line[underline.index("^") : underline.rindex("^") + 1] == "HERE"


@given(
    st.text(min_size=1, max_size=150),
    st.integers(min_value=0, max_value=150),
    st.integers(min_value=0, max_value=150),
    st.integers(min_value=30, max_value=100),
)
def test_no_text_makes_it_wider_than_the_page(text: str, one: int, other: int, width: int) -> None:
    start, end = sorted((min(one, len(text)), min(other, len(text))))
    found = shown(text, start, end, width)
    if found:
        line, underline = found
        assert cells(line) <= width
        assert cells(underline) <= width + 1
