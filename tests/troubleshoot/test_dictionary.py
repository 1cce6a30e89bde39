"""What a fault does, and what is then seen and read."""

from __future__ import annotations

import math

import pytest

from tests.troubleshoot.units import FUSED, dictionary, example, number, value
from wirecheck.troubleshoot.modes import costs, modes

SEEN = ("spark", "pilot", "main", "ending")


def seen(fault: str, text: str | None = None) -> tuple[str, ...]:
    known = dictionary(text) if text else dictionary()
    return tuple(
        reading.choices[int(known.value((number(known, fault),), reading))]
        for reading in known.symptoms
    )


def test_a_good_unit_lights_and_runs() -> None:
    assert seen("as-drawn") == (
        "it sparks, and stops once lit",
        "the pilot lights",
        "the main burner lights and burns on",
        "it runs on",
    )


@pytest.mark.parametrize(
    "fault",
    [
        "ground-open",
        "ground-poor",
        "sense-open",
        "sense-earthed",
        "rod-dirty",
        "sense-poor",
        "flame-not-seen",
    ],
)
def test_a_flame_that_is_not_proved(fault: str) -> None:
    assert seen(fault)[:3] == (
        "it goes on sparking until the trial ends",
        "the pilot lights",
        "the main burner does not light",
    )


@pytest.mark.parametrize("fault", ["gap-wrong", "spark-lead-open", "spark-lead-earthed",
                                   "spark-dead"])  # fmt: skip
def test_a_spark_that_does_not_come(fault: str) -> None:
    assert seen(fault)[:3] == (
        "no spark",
        "the pilot does not light",
        "the main burner does not light",
    )


@pytest.mark.parametrize("fault", ["not-calling", "limit-open", "transformer-dead", "power-off",
                                   "control-dead", "false-flame"])  # fmt: skip
def test_nothing_happens(fault: str) -> None:
    assert seen(fault)[0] == "no spark"
    assert seen(fault)[3] == "nothing happens on a call"


def test_gas_that_is_off_leaves_the_spark_on() -> None:
    assert seen("gas-off")[:2] == (
        "it goes on sparking until the trial ends",
        "the pilot does not light",
    )


def test_a_call_that_never_ends() -> None:
    assert seen("calls-always")[2:] == (
        "the main burner burns with no call",
        "it starts with no call",
    )


def test_a_valve_that_sticks_has_good_volts_and_a_good_coil() -> None:
    known = dictionary()
    stuck = "valve-sticks:valve:main operator"
    assert value(known, stuck, "watch:box:main") == 0
    assert value(known, stuck, "volts:valve.mv:valve.c:run") == pytest.approx(26, abs=2)
    assert value(known, stuck, "ohms:coil:valve:1") == pytest.approx(60)
    assert value(known, "coil-open:valve:main operator", "ohms:coil:valve:1") == math.inf


def test_an_open_lead_has_volts_on_one_end_alone() -> None:
    known = dictionary()
    lead = next(n for n, each in enumerate(known.diagram.leads)
                if known.diagram.lead_name(each) == "limit.2 to stat.R")  # fmt: skip
    fault = f"lead-open:{lead}"
    assert value(known, fault, "volts:limit.2:xfmr.c:idle") == pytest.approx(26, abs=1)
    assert value(known, fault, "volts:stat.r:xfmr.c:idle") == 0
    assert value(known, fault, f"ohms:lead:{lead}") == math.inf
    assert value(known, "as-drawn", f"ohms:lead:{lead}") == 0


def test_rust_at_the_ground_shows_to_the_jumper_and_not_to_the_ohmmeter() -> None:
    known = dictionary()
    fault = known.faults[number(known, "ground-poor")]
    lead = fault.site.removeprefix("lead:")
    assert value(known, fault.key, f"ohms:lead:{lead}") == 0
    assert value(known, fault.key, "trial:ground-jumper:box") == 1
    assert value(known, "sense-open", "trial:ground-jumper:box") == 0
    assert value(known, "rod-dirty", "trial:clean-rod:pilot") == 1
    assert value(known, "ground-open", "trial:clean-rod:pilot") == 0


def test_the_flame_current_tells_rod_lead_and_control_apart() -> None:
    known = dictionary()
    key = "microamps:box"
    assert value(known, "flame-not-seen", key) == pytest.approx(3.6, abs=0.1)
    assert value(known, "rod-dirty", key) == pytest.approx(0.72, abs=0.05)
    assert value(known, "sense-open", key) == 0


def test_a_short_has_blown_the_fuse_before_anybody_looks() -> None:
    known = dictionary(FUSED)
    key = "coil-shorted:valve:main operator"
    assert known.patient((number(known, key),)).unit.took == {"fuse": "fuse"}
    assert seen(key, FUSED)[3] == "nothing happens on a call"
    assert value(known, key, "look:opened:fuse") == 1
    assert value(known, key, "volts:fuse.1:fuse.2:idle") == 0
    assert value(known, key, "ohms:whole:box.mv:xfmr") < 1
    assert value(known, "blown:fuse", "ohms:whole:box.mv:xfmr") == pytest.approx(60, abs=1)


def test_a_lead_on_the_next_terminal_is_seen_by_who_looks() -> None:
    known = dictionary()
    moved = next(fault for fault in known.faults if fault.what.endswith("has landed on box.MV"))
    assert "box.PV to valve.PV" in moved.what
    assert value(known, moved.key, "look:landed:box") == 1
    assert value(known, moved.key, "look:landed:valve") == 0


def test_a_damper_that_sticks_keeps_the_call_back() -> None:
    known = example("boiler-with-vent-damper")
    stuck = number(known, "damper-stuck-shut")
    assert [
        reading.choices[int(known.value((stuck,), reading))]
        for reading in known.symptoms
        if reading.about in ("spark", "blade")
    ] == ["no spark", "vent stays shut"]


def test_a_welded_end_switch_lets_it_start_too_soon() -> None:
    known = example("boiler-with-vent-damper")
    start = known.by_key["watch:box:start vent"]
    welded = known.value((number(known, "end-switch-welded"),), start)
    assert start.choices[int(welded)] == "the ignition starts before vent is open"
    assert start.choices[int(known.value((0,), start))] == "the ignition starts once vent is open"


def test_every_mode_is_used_and_has_its_words() -> None:
    names = ("boiler-with-vent-damper", "two-zone-boiler", "furnace-room-heater")
    used = {fault.mode for name in names for fault in example(name).faults}
    assert used == set(modes())
    for mode in modes().values():
        assert mode.likelihood > 0
        assert mode.what
        assert mode.repair
        assert mode.source
    assert all(minutes > 0 for minutes in costs().values())


def test_ground_and_sense_fail_most() -> None:
    by_likelihood = sorted(modes().values(), key=lambda mode: -mode.likelihood)
    assert [mode.key for mode in by_likelihood[:4]] == [
        "ground-open",
        "ground-poor",
        "rod-dirty",
        "sense-open",
    ]


def test_keys_are_unique_and_the_same_each_time() -> None:
    known = example("greenhouse-range")
    assert len({fault.key for fault in known.faults}) == len(known.faults)
    assert len(known.by_key) == len(known.all_readings)
