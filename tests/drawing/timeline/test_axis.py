"""Where times stand: what is drawn to scale, and what is broken out."""

from __future__ import annotations

import pytest

from tests.sequence.heater import DAMPERED, HEATER, ran
from wirecheck.drawing.timeline.axis import BREAK_PT, LEAST_PT, TimeAxis
from wirecheck.sequence.script import Script, heat_call

LEFT, WIDTH = 100.0, 700.0


def axis(text: str, script: Script) -> TimeAxis:
    return TimeAxis(ran(text, script).trace, LEFT, WIDTH)


def test_the_first_seconds_are_to_scale_and_long_runs_are_broken_out() -> None:
    found = axis(DAMPERED, heat_call())
    assert [each.words for each in found.breaks] == ["10 s", "581 s", "105 s"]
    places = [found.place(time_s) for time_s in (0, 15, 17, 18, 19)]
    second = (places[1] - places[0]) / 15
    assert places[2] - places[1] == pytest.approx(2 * second)
    assert places[3] - places[2] == pytest.approx(max(second, LEAST_PT))
    assert found.right <= LEFT + WIDTH + 1e-6


def test_what_repeats_is_one_break_and_hides_what_lies_in_it() -> None:
    found = axis(HEATER, heat_call(gas=False, length_s=6000))
    assert "13 x 390 s\nthe same" in [each.words for each in found.breaks]
    assert found.hidden == [(870, 5940)]
    assert found.right <= LEFT + WIDTH + 1e-6


@pytest.mark.parametrize("length_s", [30, 600, 80_000])
@pytest.mark.parametrize("text", [HEATER, DAMPERED])
def test_later_times_stand_further_right(text: str, length_s: float) -> None:
    found = axis(text, heat_call(gas=False, length_s=length_s))
    places = [found.place(time_s) for time_s in found.times]
    assert places == sorted(set(places))
    assert places[0] == LEFT
    assert places[-1] == pytest.approx(found.right)


def test_a_bar_is_cut_where_the_axis_is_broken() -> None:
    found = axis(HEATER, heat_call())
    first = found.breaks[1]
    pieces = found.pieces(first.left - 20, first.right + 20)
    assert len(pieces) == 2
    assert pieces[0][1] < (first.left + first.right) / 2 < pieces[1][0]
    assert found.pieces(first.right + 1, first.right + 2) == [(first.right + 1, first.right + 2)]


def test_a_break_is_wide_enough_for_its_words() -> None:
    assert all(each.right - each.left >= BREAK_PT for each in axis(HEATER, heat_call()).breaks)
