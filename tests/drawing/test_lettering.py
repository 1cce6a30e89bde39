"""Widths are those that the engine letters with; cutting and wrapping keep to the room."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from tests.drawing.picture import pixels
from wirecheck.drawing import engine
from wirecheck.drawing.canvas import Canvas, Letters
from wirecheck.drawing.geometry import Point
from wirecheck.drawing.lettering import Face, fitted, printable, text_width, wrapped


@pytest.mark.parametrize("face", list(Face))
@pytest.mark.parametrize(
    "text",
    [
        "H" * 30 + "|",
        "high limit, box.GND to pilot.HOOD|",
        "0.75 A  24 V (18 AWG) #12|",
        "iiiiWWWW|",
    ],
)
def test_the_engine_letters_as_wide_as_we_say(text: str, face: Face) -> None:
    """The last bar is the rightmost ink, where the widths put it, or a little before by kerning."""
    canvas = Canvas(700, 40)
    canvas.text(Point(10, 20), text, Letters(20.0, face))
    picture = pixels(engine.render(canvas, "png", dpi=72))
    inked = [x for x in range(picture.width) if any(picture.is_dark(x, y) for y in range(5, 35))]
    bar = text_width("|", 20, face)
    expected = 10 + text_width(text, 20, face) - bar / 2
    assert 0.97 * expected - 2 <= inked[-1] <= expected + 2


def test_a_long_text_is_cut_to_its_room() -> None:
    assert fitted("short", 100, 9) == "short"
    cut = fitted("a very long label indeed", 60, 9)
    assert cut.endswith("...")
    assert text_width(cut, 9) <= 60


@given(st.text(max_size=60), st.floats(min_value=30, max_value=200))
def test_wrapping_keeps_every_word_and_the_room(text: str, room: float) -> None:
    lines = wrapped(text, room, 9)
    assert "".join("".join(lines).split()) == "".join(printable(text).split())
    assert all(text_width(line, 9) <= room for line in lines)


def test_controls_and_bidirectional_overrides_become_blanks() -> None:
    assert printable("a\nb\x1b[31mc\u202ed\ud800e\ufffe") == "a b [31mc d e "


def test_a_long_word_breaks_behind_a_sign_if_it_has_one() -> None:
    name = "right-09-direct-ignition.wiring"
    room = text_width("right-09-direct-ign", 9)
    assert wrapped(name, room, 9) == ["right-09-direct-", "ignition.wiring"]
