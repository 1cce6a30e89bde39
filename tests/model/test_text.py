"""Lines and columns of a place, counted from 1 in code points."""

from __future__ import annotations

import pytest

from wirecheck.model.text import SourceFile, Span, Within

TEXT = "one\n\ttwo\r\né\U0001f525x\n"


@pytest.mark.parametrize(
    ("offset", "position"),
    [
        (0, (1, 1)),
        (3, (1, 4)),
        (4, (2, 1)),
        (5, (2, 2)),
        (10, (3, 1)),
        (12, (3, 3)),
        (len(TEXT), (4, 1)),
    ],
)
def test_positions(offset: int, position: tuple[int, int]) -> None:
    assert SourceFile("x", TEXT).position(offset) == position


def test_a_span_knows_its_text_and_its_ends() -> None:
    span = Span(SourceFile("heater.wiring", TEXT), 5, 11)
    assert span.text == "two\r\né"
    assert (span.line, span.column, span.end_line, span.end_column) == (2, 2, 3, 2)
    assert str(span) == "heater.wiring:2:2"


@pytest.mark.parametrize(("offset", "line"), [(0, "one\n"), (7, "\ttwo\r\n"), (len(TEXT), "")])
def test_the_line_around_a_place(offset: int, line: str) -> None:
    source = SourceFile("x", TEXT)
    start, end = source.line_span(offset)
    assert source.text[start:end] == line


def test_an_empty_text_has_one_line() -> None:
    assert SourceFile("x", "").position(0) == (1, 1)


def test_a_source_does_not_print_its_text() -> None:
    assert repr(SourceFile("x", TEXT)) == "SourceFile('x')"


@pytest.mark.parametrize(
    ("offset", "position"), [(0, (7, 3)), (4, (8, 6)), (5, (8, 7)), (len(TEXT), (10, 1))]
)
def test_a_text_within_another_tells_places_of_that(offset: int, position: tuple[int, int]) -> None:
    assert SourceFile("x", TEXT, Within(7, (2, 5, 0))).position(offset) == position
