"""The values of a sheet, against what can be worked out on paper.

The transformer of the heaters has 24 V and 40 VA, and rises by 10 % unloaded: 26.4 V behind
1.44 ohm.  Its loads are the control (24 V at 0.15 A, 160 ohm) and the operators, 120 and 60 ohm.
The leads take a little of it.
"""

from __future__ import annotations

import math

import pytest

from tests.meter.units import at, means, places, readings, sheet
from tests.sequence.heater import DAMPERED, DIRECT, HEATER, INDUCED, ONE_ROD, changed
from wirecheck.meter.reading import Stage

UNLOADED_V, BEHIND_OHM = 26.4, 1.44
CONTROL_OHM, PILOT_OHM, MAIN_OHM = 160.0, 120.0, 60.0
#: What leads of a few feet and the exciting current take of it.
NEAR_V = 0.15


def loaded_v(*ohms: float) -> float:
    """Volts of the transformer with resistances across it."""
    together = 1 / sum(1 / each for each in ohms)
    return UNLOADED_V * together / (together + BEHIND_OHM)


@pytest.mark.parametrize(
    ("stage", "where", "volts"),
    [
        (Stage.POWER_OFF, "xfmr.L1 / xfmr.N", 0.0),
        (Stage.POWER_OFF, "xfmr.R / xfmr.C", 0.0),
        (Stage.IDLE, "xfmr.L1 / xfmr.N", 120.0),
        (Stage.IDLE, "xfmr.R / xfmr.C", UNLOADED_V),
        (Stage.IDLE, "xfmr.R / bare metal of the unit", UNLOADED_V),
        (Stage.IDLE, "stat.R / box.COM", UNLOADED_V),
        (Stage.IDLE, "stat.R / stat.W", UNLOADED_V),
        (Stage.IDLE, "box.TH / box.COM", 0.0),
        (Stage.IDLE, "valve.PV / valve.C", 0.0),
        (Stage.IDLE, "valve.MV / valve.C", 0.0),
        (Stage.CALL, "box.TH / box.COM", loaded_v(CONTROL_OHM, PILOT_OHM)),
        (Stage.CALL, "limit.1 / limit.2", 0.0),
        (Stage.CALL, "stat.R / stat.W", 0.0),
        (Stage.TRIAL, "valve.PV / valve.C", loaded_v(CONTROL_OHM, PILOT_OHM)),
        (Stage.TRIAL, "valve.MV / valve.C", 0.0),
        (Stage.STOPPED, "box.TH / box.COM", loaded_v(CONTROL_OHM)),
        (Stage.STOPPED, "valve.PV / valve.C", 0.0),
        (Stage.STOPPED, "valve.MV / valve.C", 0.0),
        (Stage.RUN, "valve.PV / valve.C", loaded_v(CONTROL_OHM, PILOT_OHM, MAIN_OHM)),
        (Stage.RUN, "valve.MV / valve.C", loaded_v(CONTROL_OHM, PILOT_OHM, MAIN_OHM)),
        (Stage.RUN, "xfmr.R / xfmr.C", loaded_v(CONTROL_OHM, PILOT_OHM, MAIN_OHM)),
    ],
)
def test_volts_of_a_pilot_heater(stage: Stage, where: str, volts: float) -> None:
    reading = at(sheet(HEATER), stage, where)
    assert reading.meter == "volts AC"
    assert reading.value == pytest.approx(volts, abs=NEAR_V)
    if not volts:
        assert reading.good == "0 V"


def test_the_stages_have_these_readings_and_no_others() -> None:
    heater = sheet(HEATER)
    assert places(heater, Stage.CALL) == [
        "box.TH / box.COM",
        "limit.1 / limit.2",
        "stat.R / stat.W",
    ]
    assert places(heater, Stage.TRIAL) == ["valve.PV / valve.C", "valve.MV / valve.C"]
    assert not readings(heater, Stage.DAMPER_OPENING)


def test_an_open_safety_shows_the_whole_secondary() -> None:
    limit = at(sheet(HEATER), Stage.CALL, "limit.1 / limit.2")
    (wrong,) = limit.wrong
    assert float(wrong.reading.removesuffix(" V")) == pytest.approx(UNLOADED_V, abs=NEAR_V)
    assert wrong.means.startswith("limit is open")


def test_a_safety_with_a_way_past_it_never_shows_volts() -> None:
    bypassed = f"part sw is service-switch\n{HEATER}wire limit.1 to sw to limit.2\n"
    limit = at(sheet(bypassed), Stage.CALL, "limit.1 / limit.2")
    assert "past limit" in means(limit, "0 V, open or closed")


def test_amps_through_the_thermostat_stand_beside_its_anticipator() -> None:
    amps = loaded_v(CONTROL_OHM, PILOT_OHM, MAIN_OHM) * (
        1 / CONTROL_OHM + 1 / PILOT_OHM + 1 / MAIN_OHM
    )
    set_at = changed(HEATER, ("stat is thermostat", "stat is thermostat: anticipator 0.4 A"))
    reading = at(sheet(set_at), Stage.RUN, "stat.W / end of the lead taken off stat.W")
    assert reading.meter == "amps AC"
    assert reading.in_series
    assert reading.value == pytest.approx(amps, abs=0.01)
    assert reading.good == f"{reading.value:.2f} A; anticipator set at 0.4 A"
    assert "power off" in reading.how


def test_amps_of_the_transformer_stand_beside_its_rating() -> None:
    (clamp,) = [each for each in readings(sheet(HEATER), Stage.RUN) if each.black is None]
    assert clamp.value == pytest.approx(0.79, abs=0.01)
    assert clamp.good == "0.79 A of 1.67 A (40 VA)"


def test_the_flame_signal_is_that_of_the_formula() -> None:
    reading = at(sheet(HEATER), Stage.RUN, "box.SENSE / end of the lead taken off box.SENSE")
    assert reading.meter == "microamps DC"
    assert reading.in_series
    assert reading.value == pytest.approx(math.sqrt(2) * 80 / math.pi / 10e6 * 1e6, rel=1e-3)
    assert reading.good.startswith("3.6 uA, steady")


def test_a_dirty_rod_is_told_as_drawn() -> None:
    dirty = sheet(changed(HEATER, ("pilot-burner: two-rod", "pilot-burner: two-rod, rod dirty")))
    reading = at(dirty, Stage.RUN, "box.SENSE / end of the lead taken off box.SENSE")
    assert reading.value == pytest.approx(0.72, abs=0.01)
    assert "the rod is dirty" in reading.good
    assert "while the flame burns" in reading.how


def test_the_damper_passes_the_call_on_only_once_it_is_open() -> None:
    boiler = sheet(DAMPERED)
    assert at(boiler, Stage.DAMPER_OPENING, "vent.CALL / vent.COM").value > 25
    assert at(boiler, Stage.DAMPER_OPENING, "vent.PROVED / vent.COM").good == "0 V"
    assert at(boiler, Stage.TRIAL, "vent.PROVED / vent.COM").value > 25
    assert at(boiler, Stage.IDLE, "box.24V / box.COM").value == pytest.approx(26.3, abs=0.2)


def test_direct_ignition_drives_both_operators_in_its_trial() -> None:
    heater = sheet(DIRECT)
    for operator in ("valve.PV / valve.C", "valve.MV / valve.C"):
        assert at(heater, Stage.TRIAL, operator).value > 24
        assert at(heater, Stage.STOPPED, operator).good == "0 V"


def test_one_rod_has_no_meter_in_its_lead() -> None:
    assert {each.meter for each in sheet(ONE_ROD).readings} == {"volts AC", "ohms", "amps AC"}


def test_what_starts_the_air_is_read_too() -> None:
    heater = sheet(INDUCED)
    assert at(heater, Stage.RUN, "k1.A / k1.B").value > 24
    inducer = at(heater, Stage.RUN, "inducer.L / inducer.N")
    assert inducer.value == pytest.approx(120, abs=2)
    assert inducer.line_voltage
    air = at(heater, Stage.CALL, "air.1 / air.2")
    assert air.good == "0 V"
    assert "prove the air" in air.wrong[0].means


def test_coils_of_relays_in_the_call_are_read_with_it() -> None:
    relayed = changed(
        f"{HEATER}part k is relay\nwire limit.2 to k.COM\nwire k.NO to box.TH\n"
        "wire xfmr.R to stat.R\nwire stat.W to k to xfmr.C\n",
        ("wire xfmr.R to limit to stat to box.TH\n", "wire xfmr.R to limit.1\n"),
    )
    assert places(sheet(relayed), Stage.CALL) == [
        "box.TH / box.COM",
        "limit.1 / limit.2",
        "k.COM / k.NO",
        "k.A / k.B",
        "stat.R / stat.W",
    ]


def test_the_tap_in_use_is_read() -> None:
    tapped = f"""part line is mains: 208 V
{changed(HEATER, ("xfmr is transformer", "xfmr is transformer: primary 120/208/240 V"))}
wire line.L1 to xfmr.208V
wire line.L2 to xfmr.N
wire line.G to earth
"""
    assert at(sheet(tapped), Stage.IDLE, "xfmr.208V / xfmr.N").value == pytest.approx(208, abs=1)
