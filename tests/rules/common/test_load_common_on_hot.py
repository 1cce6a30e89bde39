"""Loads on R, switched in their common."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FAN, changed
from tests.rules.raised import findings, only
from tests.rules.units import two_rod
from wirecheck.model.finding import Breaks

NAME = "load-common-on-hot"
WRONG = changed(
    FAN,
    ("xfmr.R to stat.R", "xfmr.R to fan.A"),
    ("stat.W to fan.A", "fan.B to stat.R"),
    ("fan.B to xfmr.C", "stat.W to xfmr.C"),
)


def test_a_coil_on_r_is_told_in_full() -> None:
    found = only(WRONG)
    assert (found.rule, found.fault, found.breaks) == (NAME, "switched-common", Breaks.WORKMANSHIP)
    assert found.span.text == "fan.A"
    assert found.message == (
        "fan is on the hot side at fan.A, and stat switches its common: put stat between xfmr.R "
        "and fan, and run fan.B straight to xfmr.C"
    )


def test_a_safety_there_is_a_safety_matter() -> None:
    unit = (
        changed(WRONG, ("fan.B to stat.R", "fan.B to limit to stat.R"))
        + "part limit is high-limit\n"
    )
    assert (only(unit).fault, only(unit).breaks) == ("safety-in-common", Breaks.SAFETY)


def test_the_common_of_a_thermostat_on_r() -> None:
    unit = (
        changed(FAN, ("is thermostat", "is thermostat: power common")) + "wire xfmr.R to stat.C\n"
    )
    found = only(unit)
    assert (found.fault, found.breaks) == ("common-on-hot", Breaks.OPERATION)
    assert found.message == "the common stat.C of stat is on the hot side: move it to xfmr.C"


@pytest.mark.parametrize("end", ["fan.A", "stat.W"])
def test_the_common_of_a_thermostat_on_a_switched_lead(end: str) -> None:
    unit = (
        changed(FAN, ("is thermostat", "is thermostat: power common")) + f"wire {end} to stat.C\n"
    )
    found = only(unit)
    assert (found.fault, found.breaks) == ("common-on-switched", Breaks.OPERATION)
    assert found.message == (
        "the common stat.C of stat is on what stat makes hot: move it to xfmr.C"
    )


THREE_WIRE = """\
part xfmr is transformer
part stat is thermostat
part zone is zone-valve-3-wire
part aid is relay
wire xfmr.R to stat to zone.M
wire zone.ME to xfmr.C
wire xfmr.C to earth: green
"""


def test_what_stands_beside_a_three_wire_zone_valve_is_still_told() -> None:
    unit = (
        THREE_WIRE + "part hand is service-switch\nwire xfmr.R to aid.A\n"
        "wire aid.B to hand to zone.E\n"
    )
    (found,) = (each for each in findings(unit) if each.rule == NAME)
    assert "hand switches its common: put hand between xfmr.R and aid" in found.message


def test_a_thermostat_beside_a_safety_is_not_called_one() -> None:
    unit = changed(
        FAN,
        ("part fan", "part limit is high-limit\npart fan"),
        ("xfmr.R to stat.R", "xfmr.R to fan.A"),
        ("stat.W to fan.A", "fan.B to limit to stat"),
        ("fan.B to xfmr.C", "stat.W to xfmr.C"),
    ).replace("limit to stat\n", "limit to stat.R\n")
    found = only(unit)
    assert found.message == (
        "fan is on the hot side at fan.A, and limit, a safety, is in its common: put limit and "
        "stat between xfmr.R and fan, and run fan.B straight to xfmr.C"
    )
    assert found.seen_at_unit.endswith("keeps it on, whatever limit says.")


SILENT = {
    "the C of a thermostat that needs none": FAN + "jumper stat.W to stat.C\n",
    "the common of a thermostat behind a fuse in the common": changed(
        FAN, ("is thermostat", "is thermostat: power common")
    )
    + "part guard is fuse: 3 A\nwire fan.B to guard to stat.C\n",
    "a common that was not traced": changed(FAN, ("is thermostat", "is thermostat: power common"))
    + "wire unknown to stat.C\n",
    "a zone valve's end switch that shares a terminal with its motor": THREE_WIRE
    + "wire xfmr.R to aid to zone.E\n",
    "several such valves side by side": THREE_WIRE
    + "part more is zone-valve-3-wire\npart stat2 is thermostat\n"
    "wire xfmr.R to stat2 to more.M\nwire more.ME to xfmr.C\n"
    "wire xfmr.R to aid to zone.E to more.E\n",
    "switched on the hot side": FAN,
    "coil terminals have no polarity": changed(
        FAN, ("fan.A", "fan.x"), ("fan.B", "fan.A"), ("fan.x", "fan.B")
    ),
    "a lamp across a limit": FAN + "part limit is high-limit\npart lamp is lamp\n"
    "wire xfmr.R to limit to stat.R\nwire limit.1 to lamp to limit.2\n",
    "a thermostat that lives on its load": changed(
        FAN, ("is thermostat", "is thermostat: power robbing")
    ),
    "a second load straight across the supply": FAN
    + "part lamp is lamp\nwire xfmr.R to lamp to xfmr.C\n",
    "the control has a rule of its own": changed(
        two_rod(),
        ("wire xfmr.R to limit", "wire xfmr.C to limit"),
        ("wire xfmr.C to box.COM", "wire xfmr.R to box.COM"),
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]


def test_two_zones_switched_in_the_common_are_two_findings() -> None:
    zones = """\
part xfmr is transformer
part stat1 is thermostat
part stat2 is thermostat
part fan1 is relay
part fan2 is relay
wire xfmr.R to fan1 to stat1 to xfmr.C
wire xfmr.R to fan2 to stat2 to xfmr.C
wire xfmr.C to earth
"""
    assert [found.span.text for found in findings(zones) if found.rule == NAME] == ["fan1", "fan2"]
