"""Whole runs of heaters that are wired right: who does what, to the second."""

from __future__ import annotations

import re

import pytest

from tests.sequence.heater import (
    DAMPERED,
    DIRECT,
    HEATER,
    INDUCED,
    ONE_ROD,
    changed,
    danger_words,
    diagram,
    log,
    outcome,
    phases,
    ran,
)
from wirecheck.sequence.answers import View
from wirecheck.sequence.script import Opening, heat_call

#: From the call to the end of it, for a pilot that is lit at once.
PILOT = """\
0 call: on
0 box: trial
0 valve pilot operator: on
0 spark: on
0 pilot flame: lighting
2 pilot flame: on
2 flame signal: 3.6 uA
2 box: proving
3 box: run
3 valve main operator: on
3 spark: off
3 main flame: lighting
4 main flame: on
600 call: off
600 valve pilot operator: off
600 valve main operator: off
600 pilot flame: off
600 main flame: off
600 flame signal: 0 uA
600 box: idle
"""


@pytest.mark.parametrize("view", View)
@pytest.mark.parametrize("text", [HEATER, ONE_ROD], ids=["two-rod", "one-rod"])
def test_a_pilot_system_lights_proves_runs_and_goes_back_to_standby(text: str, view: View) -> None:
    run = ran(text, view=view)
    assert log(run) == PILOT
    assert outcome(run) == "runs"
    assert not run.dangers


def test_a_damper_passes_the_call_on_once_it_is_fully_open() -> None:
    assert log(ran(DAMPERED, heat_call(length_s=60))) == (
        """\
0 call: on
0 vent: opening
0 vent motor: on
0 box: damper-opening
15 vent: open
15 box: trial
15 valve pilot operator: on
15 spark: on
15 pilot flame: lighting
17 pilot flame: on
17 flame signal: 3.6 uA
17 box: proving
18 box: run
18 valve main operator: on
18 spark: off
18 main flame: lighting
19 main flame: on
60 call: off
60 vent: closing
60 valve pilot operator: off
60 valve main operator: off
60 vent motor: off
60 pilot flame: off
60 main flame: off
60 flame signal: 0 uA
60 box: idle
75 vent: shut
"""
    )


def test_direct_ignition_lights_the_main_burner_with_both_operators() -> None:
    assert log(ran(DIRECT, heat_call(length_s=60))) == (
        """\
0 call: on
0 box: trial
0 valve pilot operator: on
0 valve main operator: on
0 spark: on
0 main flame: lighting
2 main flame: on
2 flame signal: 3.6 uA
2 box: proving
3 box: run
3 spark: off
60 call: off
60 valve pilot operator: off
60 valve main operator: off
60 main flame: off
60 flame signal: 0 uA
60 box: idle
"""
    )


def test_the_air_is_proved_before_the_control_gets_its_call() -> None:
    run = ran(INDUCED, heat_call(length_s=60))
    assert log(run).startswith(
        """\
0 call: on
0 combustion air: starting
0 k1 coil: on
0 inducer motor: on
0 box: idle
3 combustion air: moving
3 air: closed
3 box: trial
"""
    )
    assert phases(run)[1:] == [(3, "trial"), (5, "proving"), (6, "run"), (60, "idle")]
    assert not run.dangers


# ---- retries -------------------------------------------------------------------------------


def test_with_the_gas_off_it_tries_90_s_and_waits_5_min_for_ever() -> None:
    hours = 3 * 3600
    run = ran(HEATER, heat_call(gas=False, length_s=hours))
    expected = []
    start = 0
    while start < hours:
        expected += [(start, "trial"), (start + 90, "wait")]
        start += 390
    in_call = [each for each in phases(run) if 0 <= each[0] < hours]
    assert in_call == [each for each in expected if each[0] < hours]
    assert phases(run)[-1] == (hours, "idle")
    assert not run.trace.ever("pilot flame", "on")


def test_trial_and_wait_are_as_long_as_the_control_says() -> None:
    text = changed(HEATER, ("control: two-rod", "control: two-rod, trial 15 s, wait 60 s"))
    run = ran(text, heat_call(gas=False, length_s=100))
    assert phases(run)[1:] == [
        (0, "trial"), (15, "wait"), (75, "trial"), (90, "wait"), (100, "idle"),
    ]  # fmt: skip


def test_a_control_with_lockout_tries_once_and_forgets_it_5_s_after_the_call() -> None:
    text = changed(HEATER, ("control: two-rod", "control: two-rod, retry lockout"))
    run = ran(text, heat_call(gas=False))
    assert phases(run)[1:] == [(0, "trial"), (90, "lockout"), (605, "idle")]


def test_the_old_pattern_sparks_without_end_which_is_a_danger() -> None:
    text = changed(HEATER, ("control: two-rod", "control: two-rod, retry none"))
    run = ran(text, heat_call(gas=False))
    assert phases(run)[1:] == [(0, "trial"), (600, "idle")]
    assert danger_words(run) == {"endless-spark"}


def test_direct_ignition_purges_between_its_tries_then_locks_out() -> None:
    run = ran(DIRECT, heat_call(gas=False))
    assert phases(run)[1:] == [
        (0, "trial"), (7, "wait"), (37, "trial"), (44, "wait"), (74, "trial"),
        (81, "lockout"), (605, "idle"),
    ]  # fmt: skip


def test_direct_ignition_with_one_try_locks_out_at_once() -> None:
    run = ran(changed(DIRECT, ("tries 3", "tries 1")), heat_call(gas=False, length_s=60))
    assert phases(run)[1:] == [(0, "trial"), (7, "lockout"), (65, "idle")]


# ---- what happens in run -------------------------------------------------------------------


def test_a_lost_flame_shuts_the_main_gas_within_a_second_and_is_lit_again() -> None:
    run = ran(HEATER, heat_call(flame_lost_s=100, length_s=200))
    assert phases(run)[3:] == [
        (3, "run"), (101, "trial"), (103, "proving"), (104, "run"), (200, "idle"),
    ]  # fmt: skip
    assert run.trace.at("main flame", 100.5) == "unlit gas"
    assert run.trace.at("valve main operator", 101) == "off"
    assert run.trace.at("spark", 101) == "on"
    assert run.trace.at("main flame", 105) == "on"
    assert not run.dangers


def test_direct_ignition_purges_before_it_lights_a_lost_flame_again() -> None:
    run = ran(DIRECT, heat_call(flame_lost_s=100, length_s=200))
    assert phases(run)[3:] == [
        (3, "run"), (101, "wait"), (131, "trial"), (133, "proving"), (134, "run"), (200, "idle"),
    ]  # fmt: skip
    assert run.trace.at("valve main operator", 101) == "off"


def test_when_the_gas_does_not_come_back_it_locks_out() -> None:
    text = changed(HEATER, ("control: two-rod", "control: two-rod, retry lockout, trial 20 s"))
    text = changed(text, ("pilot-burner: two-rod", "pilot-burner: two-rod, rod dirty"))
    run = ran(text, heat_call(length_s=60))
    assert phases(run)[1:] == [(0, "trial"), (20, "lockout"), (65, "idle")]


def test_power_lost_and_back_gives_a_new_trial_and_is_not_called_the_end_of_the_call() -> None:
    run = ran(HEATER, heat_call(power_lost_s=100, power_back_s=160, length_s=300))
    assert phases(run)[3:] == [
        (3, "run"), (100, "idle"), (160, "trial"), (162, "proving"), (163, "run"), (300, "idle"),
    ]  # fmt: skip
    (lost,) = [change for change in run.trace.of("box") if change.time_s == 100]
    assert lost.reason == "the power is off"


def test_a_limit_that_opens_in_run_shuts_everything_and_is_named() -> None:
    run = ran(HEATER, heat_call(opened=(Opening("limit", after_s=50),), length_s=100))
    assert phases(run)[-1] == (50, "idle")
    assert run.trace.at("valve pilot operator", 50) == "off"
    assert outcome(run) == "stops"
    assert not run.dangers


def test_a_flame_signal_before_the_trial_blocks_the_start() -> None:
    run = ran(HEATER, heat_call(false_flame=True))
    assert phases(run)[1:] == [(0, "held"), (600, "idle")]
    assert not run.trace.ever("valve pilot operator", "on")
    assert not run.trace.ever("spark", "on")


def test_two_heaters_in_one_file_run_each_by_itself() -> None:
    """The second's limit stands open; the first does not mind, and is not blamed for it."""
    names = "|".join(part.name for part in diagram(HEATER).parts.values())
    parts, leads = HEATER.split("wire xfmr.R", 1)
    second = re.sub(rf"part ({names}) is", r"part \1-2 is", parts)
    second += re.sub(rf"\b({names})\b", r"\1-2", f"wire xfmr.R{leads}")
    run = ran(HEATER + second, heat_call(opened=(Opening("limit-2"),), length_s=60))
    words = {told.control: told.outcome.word for told in run.told}
    assert words == {"box": "runs", "box-2": "no-start"}
    assert not run.dangers
    assert run.trace.ever("main flame of box", "on")
    assert not run.trace.ever("main flame of box-2", "on")
