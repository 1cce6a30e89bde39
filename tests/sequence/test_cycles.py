"""What repeats is told twice and then counted."""

from __future__ import annotations

from tests.sequence.heater import HEATER, ran
from wirecheck.sequence.cycles import Event, Repeated, events, settled
from wirecheck.sequence.script import heat_call
from wirecheck.sequence.trace import Trace


def test_trials_and_waits_without_end_are_told_twice() -> None:
    """16 trials begin in 100 minutes, every 390 s."""
    told = events(ran(HEATER, heat_call(gas=False, length_s=6000)).trace)
    assert [each for each in told if isinstance(each, Repeated)] == [
        Repeated(start_s=870, end_s=5940, cycles=13, period_s=390)
    ]
    times = [each.time_s for each in told if isinstance(each, Event)]
    assert times == [-10, 0, 90, 390, 480, 780, 5940, 6000]


def test_two_cycles_are_not_worth_counting() -> None:
    told = events(ran(HEATER, heat_call(gas=False, length_s=800)).trace)
    assert all(isinstance(each, Event) for each in told)


def test_unequal_intervals_are_no_cycle() -> None:
    trace = Trace(0, 100)
    for time_s in (1, 2, 4, 8, 16, 32):
        trace.record(time_s, "spark", "on" if time_s in (1, 4, 16) else "off")
    assert len(events(trace)) == 6


def test_a_state_that_lasts_no_time_is_not_told() -> None:
    trace = Trace(0, 100)
    trace.record(5, "k1 coil", "on")
    trace.record(5, "k1 coil", "off")
    assert [change.state for change in settled(trace)] == ["off"]
