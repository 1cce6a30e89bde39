"""Leads with both ends on one conductor."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FAN, PUMP
from tests.rules.raised import findings, mended, only, raised
from tests.rules.units import beside, two_rod
from wirecheck.model.finding import Breaks

NAME = "lead-does-nothing"


def test_a_doubled_lead_is_told_in_full() -> None:
    unit = FAN + "wire fan.A to stat.W\n"
    found = only(unit)
    assert (found.rule, found.fault, found.breaks) == (NAME, "doubled", Breaks.WORKMANSHIP)
    assert found.message == (
        "a second lead runs from fan.A to stat.W: take it out, or land it where it was meant to go"
    )
    assert raised(mended(unit)) == []


def test_a_link_inside_the_device_does_it_already() -> None:
    found = only(two_rod(more="jumper box.COM to box.VC\n"))
    assert found.message == (
        "box.COM and box.VC are one conductor without this lead, inside the device: take it out, "
        "or land it where it was meant to go"
    )


LOUD = {
    "the common on VC twice": two_rod(more="splice nut\nwire box.VC to nut\nwire nut to valve.C\n"),
    "a ring of neutrals": PUMP
    + "part fan is inducer\nwire disc.2 to fan.L\nwire line.N to fan.N\nwire fan.N to pump.N\n",
    "over a splice": FAN + "splice nut\nwire fan.A to nut\nwire nut to stat.W\n",
    "the common to the valve by two ways": two_rod(more="wire xfmr.C to valve.C\n"),
}


@pytest.mark.parametrize("unit", LOUD.values(), ids=LOUD)
def test_other_loops_are_found_once(unit: str) -> None:
    assert [found.rule for found in findings(unit)] == [NAME]


SILENT = {
    "the common on COM and VC from one wire-nut": two_rod(
        valve="", more="splice nut\nwire xfmr.C to nut\nwire nut to box.VC\n"
    ).replace("part valve is gas-valve-3-wire\n", ""),
    "earths are the better the more there are": two_rod(
        more="wire pilot.HOOD to earth\nwire box.COM to earth\nwire box.GND to earth\n"
    ),
    "a second burner ground": two_rod(more="wire box.GND to pilot.HOOD: green\n"),
    "the hood on the common as well": two_rod(more="wire xfmr.C to pilot.HOOD\n"),
    "a star of commons": two_rod(more=beside()),
    "a broken lead beside the one that replaced it": FAN + "wire fan.A to stat.W: broken\n",
    "loose ends are never joined": FAN + "wire fan.A to open: capped\nwire fan.A to open: capped\n",
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
