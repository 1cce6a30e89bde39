"""A gas valve that the supply or the call reaches without the control."""

from __future__ import annotations

import pytest

from tests.rules.raised import mended, only, raised
from tests.rules.units import direct, two_rod
from wirecheck.model.finding import Breaks

PILOT_OK = "wire box.PV to valve.PV\nwire box.VC to valve.C\n"
RELAY = "part cr is relay\n"


def test_the_call_on_the_main_operator_is_told_in_full() -> None:
    found = only(two_rod(valve=PILOT_OK + "wire box.TH to valve.MV\n"))
    assert (found.rule, found.span.text) == ("valve-fed-past-control", "box.TH")
    assert found.message == (
        "valve.MV is fed from box.TH, past box: take that lead off and feed it from box.MV"
    )
    assert found.seen_at_unit == (
        "Gas with no ignition control: the operator opens with no flame proved and stays open when "
        "the flame goes out."
    )
    assert found.breaks is Breaks.SAFETY
    assert "smell for gas" in found.caution


def test_the_edit_mends_it() -> None:
    assert raised(mended(two_rod(valve=PILOT_OK + "wire box.TH to valve.MV\n"))) == []


RAISING = {
    "the thermostat straight to a two-wire valve": direct(
        valve="wire stat.W to valve.1\nwire xfmr.C to valve.C\n"
    ),
    "the damper's hot side": two_rod(valve=PILOT_OK + "wire box.D-PROVED to valve.MV\n"),
    "a relay that the call pulls in": two_rod(
        valve=PILOT_OK + "wire box.TH to cr to xfmr.C\nwire xfmr.R to cr.COM..NO to valve.MV\n",
        more=RELAY,
    ),
    "the operator's other side": two_rod(
        valve="wire box.PV to valve.PV\nwire box.VC to valve.MV\nwire box.TH to valve.C\n"
    ),
}


@pytest.mark.parametrize("unit", RAISING.values(), ids=RAISING)
def test_other_ways_to_it(unit: str) -> None:
    assert "valve-fed-past-control" in [rule for rule, _fault, _text in raised(unit)]


SILENT = {
    "a relay that the control's output pulls in": two_rod(
        valve=PILOT_OK + "wire box.MV to cr to box.VC\nwire xfmr.R to cr.COM..NO to valve.MV\n",
        more=RELAY,
    ),
    "a relay of another control's output in the valve lead": direct(
        valve="wire box.V to cr.COM..NO to valve.1\nwire box.VC to valve.C\n"
        "wire box.V to cr to box.VC\n",
        more=RELAY,
    ),
    "a valve of line volts behind a relay": direct(
        valve_is="gas-valve-2-wire: volts 120 V",
        valve="wire box.V to cr to box.VC\nwire line.L1 to cr.COM..NO to valve.1: black\n"
        "wire line.N to valve.C: white\n",
        more=RELAY,
    ),
    "the common on the transformer": direct(
        valve="wire box.V to valve.1\nwire xfmr.C to valve.C\n"
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert "valve-fed-past-control" not in [rule for rule, _fault, _text in raised(unit)]


def test_a_standing_pilot_unit_in_the_same_file_is_right_without_a_control() -> None:
    standing = (
        "part stat2 is thermostat\npart old is standing-pilot-gas-valve\n"
        "part tc is thermocouple\npart flame is standing-pilot-burner\n"
        "wire xfmr.R to stat2 to old to xfmr.C\n"
        "wire tc.PLUS to old.TC\nwire tc.MINUS to old.TC-C\n"
    )
    found = [rule for rule, _fault, _text in raised(two_rod(more=standing))]
    assert [rule for rule in found if "valve" in rule] == []
