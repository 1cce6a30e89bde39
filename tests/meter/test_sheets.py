"""What a sheet says besides its readings: what is wrong, where it stops, what it leaves alone."""

from __future__ import annotations

import pytest

from tests.contract.source import ROOT
from tests.contract.test_examples import RIGHT, WRONG
from tests.meter.units import notes, places, readings, section, sheet
from tests.sequence.heater import DAMPERED, HEATER, ONE_ROD, changed, without
from wirecheck import check, load, meter
from wirecheck.meter.reading import MeterSheet, Stage


def example(name: str) -> MeterSheet:
    return meter(check(load(ROOT / "examples" / f"{name}.wiring").diagram))


@pytest.mark.parametrize("name", [*RIGHT, *WRONG])
def test_every_example_has_a_sheet(name: str) -> None:
    of = example(name)
    assert [each.step for each in of.readings] == list(range(1, len(of.readings) + 1))
    assert len(of.readings) > 10
    stages = [each.stage for each in of.sections]
    assert stages == sorted(stages, key=list(Stage).index)
    assert stages[0] is Stage.POWER_OFF
    assert all(each.good and each.wrong for each in of.readings)
    assert of == example(name)._replace(checked=of.checked)


@pytest.mark.parametrize("name", RIGHT)
def test_a_right_unit_is_measured_in_every_stage(name: str) -> None:
    of = example(name)
    assert of.is_good
    stages = set(Stage)
    if not any(part.family == "vent-damper" for part in of.checked.diagram.parts.values()):
        stages.discard(Stage.DAMPER_OPENING)
    assert {each.stage for each in of.sections if readings(of, each.stage)} == stages


@pytest.mark.parametrize("name", WRONG)
def test_a_wrong_unit_is_said_to_be_so(name: str) -> None:
    of = example(name)
    assert not of.is_good
    assert [finding.rule for finding in of.mistakes] == [WRONG[name][0]]


def test_a_short_gets_no_power() -> None:
    shorted = sheet(f"{HEATER}wire xfmr.R to xfmr.C\n")
    assert not [each for stage in list(Stage)[1:] for each in readings(shorted, stage)]
    assert "The power stays off: xfmr burns out" in notes(shorted, Stage.IDLE)
    assert readings(shorted, Stage.POWER_OFF)


def test_a_short_on_the_call_gets_no_call() -> None:
    shorted = example("common-exchanged")
    assert readings(shorted, Stage.IDLE)
    assert not readings(shorted, Stage.CALL)
    called = section(shorted, Stage.CALL)
    assert called is not None
    assert called.set_up == ()
    assert "xfmr burns out" in notes(shorted, Stage.CALL)


def test_line_voltage_in_the_control_circuit_gets_no_power() -> None:
    wrong = f"""part line is mains: 120 V
{HEATER}wire line.L1 to xfmr.L1
wire line.N to xfmr.N
wire line.L1 to box.TH
"""
    of = sheet(wrong)
    assert not readings(of, Stage.IDLE)
    assert "would be at line voltage" in notes(of, Stage.IDLE)
    assert all(each.line_voltage for each in of.readings if each.red.shown == "limit.1")


def test_no_gas_with_a_safety_finding() -> None:
    bypassed = sheet(f"{HEATER}jumper limit.1 to limit.2\n")
    assert readings(bypassed, Stage.TRIAL)
    assert not readings(bypassed, Stage.RUN)
    assert "The gas stays shut" in notes(bypassed, Stage.RUN)


def test_no_gas_with_a_danger_that_the_run_shows() -> None:
    tied = sheet(f"{HEATER}wire valve.PV to valve.MV\n")
    assert not readings(tied, Stage.RUN)


def test_the_spark_on_the_control_circuit_gets_no_power() -> None:
    astray = sheet(changed(HEATER, ("box.SPARK to pilot.SPARK", "box.SPARK to stat.W")))
    assert "The power stays off: box.SPARK" in notes(astray, Stage.IDLE)
    assert not [each for stage in list(Stage)[1:] for each in readings(astray, stage)]


def test_a_unit_that_never_runs_says_why() -> None:
    without_ground = sheet(without(HEATER, "wire box.GND to pilot.HOOD"))
    assert "no path back for the flame signal" in notes(without_ground, Stage.RUN)
    (signal,) = readings(without_ground, Stage.RUN)
    assert signal.good.startswith("0 uA: no path back")


def test_a_damper_that_is_not_waited_for_is_told() -> None:
    at_once = changed(DAMPERED, ("two-rod\n", "two-rod, damper-plug fitted\n"))
    text = at_once.replace("pilot-burner: two-rod, damper-plug fitted", "pilot-burner: two-rod")
    assert "does not wait for vent" in notes(sheet(text), Stage.DAMPER_OPENING)


def test_one_rod_is_told_how_its_flame_is_read() -> None:
    noted = notes(sheet(ONE_ROD), Stage.RUN)
    assert "no meter goes into that lead" in noted
    assert "3.6 uA" in noted


@pytest.mark.parametrize(
    ("retry", "noted"),
    [
        ("continuous", "box waits 300 s"),
        ("lockout", "box is locked out"),
        ("none", "box never ends its trial"),
    ],
)
def test_what_follows_a_trial(retry: str, noted: str) -> None:
    text = changed(HEATER, ("ignition-control: two-rod", f"ignition-control: two-rod, {retry}"))
    assert noted in notes(sheet(text), Stage.STOPPED)


def test_several_controls_have_groups_of_their_own() -> None:
    of = example("greenhouse-range")
    trial = section(of, Stage.TRIAL)
    assert trial is not None
    assert [group.name for group in trial.groups] == ["box", "heater"]
    damper = section(of, Stage.DAMPER_OPENING)
    assert damper is not None
    assert [group.name for group in damper.groups] == ["box"]


def test_printed_labels_are_shown() -> None:
    of = example("laundry-heater-own-labels")
    assert "dryer.W / dryer.24 C" in places(of, Stage.CALL)
    assert "valve.PILOT / valve.COMMON" in places(of, Stage.TRIAL)


def test_a_sketch_without_a_supply_has_its_ohms() -> None:
    of = sheet("""part box is pilot-ignition-control
part pilot is pilot-burner: two-rod
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD
""")
    assert places(of, Stage.POWER_OFF) == [
        "end of the lead taken off box.GND / pilot.HOOD",
        "end of the lead taken off box.SENSE / pilot.ROD",
        "end of the lead taken off box.SENSE / pilot.HOOD",
    ]
    assert any("No supply that the line feeds" in remark for remark in of.remarks)


def test_a_sketch_without_a_control_has_its_loads() -> None:
    of = sheet("""part xfmr is transformer
part stat is thermostat
part zone is zone-valve
wire xfmr.R to stat to zone to xfmr.C
""")
    assert "zone.M1 / zone.M2" in places(of, Stage.CALL)
    assert any("never against the metal" in remark for remark in of.remarks)


def test_an_empty_diagram_has_an_empty_sheet() -> None:
    of = sheet("")
    assert of.readings == ()
    assert of.cautions


def test_the_line_is_marked_wherever_a_probe_is_on_it() -> None:
    of = example("greenhouse-range")
    marked = {each.red.shown for each in of.readings if each.line_voltage}
    assert marked == {
        "xfmr.L1", "zones.L1", "night.L1", "stop.1", "pump-1.L", "pump-2.L", "inducer.L",
    }  # fmt: skip


def test_call_terminals_of_another_unit_show_its_own_volts_until_they_are_joined() -> None:
    of = sheet("""part zones is transformer
part stat is thermostat
part zone is zone-valve
part boiler is boiler-call
wire zones.R to stat to zone.M1
wire zone.M2 to zones.C
wire boiler.1 to zone.E1..E2 to boiler.2
""")
    shown = {
        stage: [each.value for each in readings(of, stage) if each.red.shown == "boiler.1"]
        for stage in (Stage.POWER_OFF, Stage.IDLE, Stage.CALL)
    }
    assert shown[Stage.POWER_OFF] == pytest.approx([0])
    assert shown[Stage.IDLE] == pytest.approx([26], abs=3)
    assert shown[Stage.CALL] == pytest.approx([0], abs=0.1)


def test_what_a_pilot_flame_feeds_is_left_to_its_maker() -> None:
    of = sheet("""part pile is thermopile
part stat is thermostat: volts 750 mV
part valve is millivolt-gas-valve
wire pile.PLUS to valve.GEN
wire valve.GEN to stat to valve.CALL
wire pile.MINUS to valve.C
""")
    assert any("only while the pilot burns" in remark for remark in of.remarks)
    assert {each.meter for each in of.readings} == {"ohms"}
