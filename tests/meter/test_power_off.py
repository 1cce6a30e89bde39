"""What an ohmmeter finds, and which lead comes off first."""

from __future__ import annotations

import math

import pytest

from tests.meter.units import at, places, sheet
from tests.sequence.heater import DAMPERED, DIRECT, HEATER, ONE_ROD, changed
from wirecheck.meter.reading import MeterSheet, Reading, Stage

GROUND = "end of the lead taken off box.GND / pilot.HOOD"
SENSE = "end of the lead taken off box.SENSE / pilot.ROD"
ROD_TO_METAL = "end of the lead taken off box.SENSE / pilot.HOOD"


def off(unit: MeterSheet, where: str) -> Reading:
    return at(unit, Stage.POWER_OFF, where)


def with_lead(old: str, attributes: str) -> str:
    """The heater with one of its leads found otherwise."""
    return changed(HEATER, (f"{old}\n", f"{old}: {attributes}\n"))


def test_the_power_is_proved_off_before_anything_else() -> None:
    heater = sheet(HEATER)
    assert places(heater, Stage.POWER_OFF)[:2] == ["xfmr.L1 / xfmr.N", "xfmr.R / xfmr.C"]
    assert {each.meter for each in heater.readings[:2]} == {"volts AC"}


def test_a_whole_burner_ground_is_read_with_its_lead_off() -> None:
    ground = off(sheet(HEATER), GROUND)
    assert ground.how == "take the lead off box.GND"
    assert ground.good == "under 1 ohm"


def test_a_loose_burner_ground_shows_its_ohms() -> None:
    ground = off(sheet(with_lead("wire box.GND to pilot.HOOD", "loose 47 ohm")), GROUND)
    assert ground.value == pytest.approx(47, abs=0.2)
    assert ground.good == "47 ohm"


def test_a_broken_burner_ground_is_open_though_the_metal_conducts() -> None:
    """With the lead on, the rusty bond and the earthed secondary would show a whole one."""
    assert off(sheet(with_lead("wire box.GND to pilot.HOOD", "broken")), GROUND).good == "open (OL)"


def test_the_sense_lead_reaches_the_rod_and_no_metal() -> None:
    heater = sheet(HEATER)
    assert off(heater, SENSE).good == "under 1 ohm"
    assert math.isinf(off(heater, ROD_TO_METAL).value)


def test_a_broken_sense_lead_is_open() -> None:
    assert math.isinf(off(sheet(with_lead("wire box.SENSE to pilot.ROD", "broken")), SENSE).value)


def test_a_sense_lead_on_metal_is_told() -> None:
    chafed = sheet(with_lead("wire box.SENSE to pilot.ROD", "touches earth"))
    assert off(chafed, ROD_TO_METAL).good == "under 1 ohm"


def test_one_rod_has_no_meter_at_its_lead() -> None:
    assert not [where for where in places(sheet(ONE_ROD), Stage.POWER_OFF) if "SENSE" in where]


def test_a_limit_in_the_call_needs_no_lead_off() -> None:
    limit = off(sheet(HEATER), "limit.1 / limit.2")
    assert (limit.how, limit.good) == ("", "under 1 ohm")


def test_a_limit_with_a_way_beside_it_is_read_with_its_lead_off() -> None:
    """In the common lead, the burner ground and the earthed secondary lie beside it."""
    in_common = changed(
        HEATER,
        ("xfmr.R to limit to stat", "xfmr.R to stat"),
        ("xfmr.C to box.COM", "xfmr.C to limit to box.COM"),
    )
    assert off(sheet(in_common), "limit.1 / limit.2").how == "take the lead off limit.1"


def test_a_jumper_is_taken_off_with_the_leads_it_shares_a_terminal_with() -> None:
    stuck = changed(HEATER, ("limit is high-limit", "limit is high-limit: stuck open"))
    limit = off(sheet(f"{stuck}jumper limit.1 to limit.2\n"), "limit.1 / limit.2")
    assert limit.how == "take the lead off limit.1"
    assert limit.good == "open (OL)"


def test_operators_show_what_their_current_comes_to() -> None:
    heater = sheet(HEATER)
    assert off(heater, "valve.PV / valve.C").value == pytest.approx(120, rel=1e-3)
    assert off(heater, "valve.MV / valve.C").good.startswith("60 ohm or less")


def test_operators_tied_together_are_read_one_by_one() -> None:
    heater = sheet(DIRECT)
    pilot = off(heater, "valve.PV / valve.C")
    assert pilot.how == "take the lead off valve.PV"
    assert pilot.value == pytest.approx(120, rel=1e-3)


@pytest.mark.parametrize(("found", "good"), [("open", "open (OL)"), ("shorted", "under 1 ohm")])
def test_a_bad_coil_reads_bad(found: str, good: str) -> None:
    bad = changed(HEATER, ("main 60 ohm", f"main 60 ohm, main-coil {found}"))
    assert off(sheet(bad), "valve.MV / valve.C").good == good


def test_an_end_switch_is_open_at_rest() -> None:
    switch = off(sheet(DAMPERED), "vent.CALL / vent.PROVED")
    assert switch.good == "open (OL)"
    assert "stuck closed" in switch.wrong[0].means


def test_a_fuse_is_read_and_a_blown_one_is_open() -> None:
    fused = changed(HEATER, ("xfmr.R to limit", "xfmr.R to f1 to limit"))
    whole, blown = (f"part f1 is fuse: 3 A{more}\n{fused}" for more in ("", ", blown"))
    assert off(sheet(whole), "f1.1 / f1.2").good == "under 1 ohm"
    assert off(sheet(blown), "f1.1 / f1.2").good == "open (OL)"


def test_a_door_switch_is_held_in_as_the_door_is_off() -> None:
    door = changed(HEATER, ("xfmr.R to limit to stat", "xfmr.R to limit to door to stat"))
    reading = off(sheet(f"{door}part door is door-switch\n"), "door.1 / door.2")
    assert (reading.how, reading.good) == ("hold door in", "under 1 ohm")
    assert "though held in" in reading.wrong[0].means
