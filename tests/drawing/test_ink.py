"""Lead colours are read as typed, and none is lost on white paper."""

import pytest

from wirecheck.drawing.canvas import Canvas, Path, Tag
from wirecheck.drawing.geometry import Point
from wirecheck.drawing.ink import RIM, UNSTATED, Ink, colour_letters, draw_lead, ink_for, is_pale


@pytest.mark.parametrize(
    ("typed", "same_as"),
    [
        ("RD", "red"),
        ("gy", "grey"),
        ("gray", "grey"),
        ("GNYE", "green-yellow"),
        ("green/yellow", "green-yellow"),
        ("Purple", "violet"),
        ("white with red", "WHRD"),
    ],
)
def test_spellings_of_a_colour(typed: str, same_as: str) -> None:
    assert ink_for(typed) == ink_for(same_as)


def test_a_word_that_names_no_colour_gives_the_unstated_paint() -> None:
    assert ink_for("plaid") == ink_for("") == Ink(UNSTATED)


@pytest.mark.parametrize("colour", ["white", "yellow", "pink", "silver", "GNYE", "white/red"])
def test_pale_leads_have_a_dark_rim(colour: str) -> None:
    canvas = Canvas()
    draw_lead(canvas, [Point(0, 0), Point(50, 0)], ink_for(colour), 2.0, Tag("lead-1"))
    lowest, over = (item for item in canvas.in_order()[:2] if isinstance(item, Path))
    assert lowest.stroke.colour == RIM
    assert lowest.stroke.width_pt > over.stroke.width_pt
    assert lowest.tag.id == "lead-1"


@pytest.mark.parametrize("colour", ["black", "red", "blue", "green", "brown", "violet"])
def test_dark_leads_are_one_line(colour: str) -> None:
    canvas = Canvas()
    draw_lead(canvas, [Point(0, 0), Point(50, 0)], ink_for(colour))
    assert len(canvas.in_order()) == 1
    assert not is_pale(ink_for(colour).base)


@pytest.mark.parametrize(
    ("typed", "letters"),
    [
        ("red", "RD"),
        ("gray", "GY"),
        ("white/red", "WH/RD"),
        ("green/yellow", "GNYE"),
        ("yellow/green", "GNYE"),
        ("tan", "tan"),
        ("plaid", "plaid"),
    ],
)
def test_letters_of_a_colour(typed: str, letters: str) -> None:
    assert colour_letters(typed) == letters


def test_tan_and_grey_are_told_from_paper_and_from_each_other() -> None:
    shades = {ink_for(colour).base for colour in ("tan", "grey", "brown", "white")}
    assert len(shades) == 4
    assert is_pale(ink_for("tan").base)
    assert is_pale(ink_for("grey").base)
