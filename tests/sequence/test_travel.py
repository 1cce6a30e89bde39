"""Blades and valves on their way, turned round and held."""

from __future__ import annotations

import pytest

from wirecheck.sequence.travel import Travel


def moving() -> Travel:
    travel = Travel(20.0)
    travel.aim(100.0, wanted_open=True)
    return travel


@pytest.mark.parametrize(
    ("at_s", "place", "state"),
    [(100, 0, "opening"), (105, 0.25, "opening"), (120, 1, "open"), (500, 1, "open")],
)
def test_it_opens_in_its_time(at_s: float, place: float, state: str) -> None:
    travel = moving()
    assert travel.arrives_s == 120
    assert travel.place_at(at_s) == pytest.approx(place)
    assert travel.state(at_s) == state
    assert travel.is_open(at_s) == (state == "open")


def test_turned_round_half_way_it_goes_back_from_there() -> None:
    travel = moving()
    travel.aim(110.0, wanted_open=False)
    assert travel.arrives_s == 120
    assert travel.state(115) == "closing"
    assert travel.place_at(115) == pytest.approx(0.25)
    assert travel.is_shut(120)


def test_the_end_switch_breaks_the_moment_it_leaves_the_end() -> None:
    travel = moving()
    assert travel.is_open(120)
    travel.aim(130.0, wanted_open=False)
    assert not travel.is_open(130)
    assert not travel.is_shut(130)


def test_asked_for_what_it_does_already_it_goes_on() -> None:
    travel = moving()
    travel.aim(110.0, wanted_open=True)
    assert travel.arrives_s == 120


def test_what_shuts_at_once() -> None:
    travel = Travel(3.0, 0.0)
    travel.aim(0.0, wanted_open=True)
    travel.aim(10.0, wanted_open=False)
    assert travel.is_shut(10)


def test_put_somewhere_it_rests_there() -> None:
    travel = Travel(20.0)
    travel.put(1.0)
    assert travel.is_open(0)
    assert travel.arrives_s is None
