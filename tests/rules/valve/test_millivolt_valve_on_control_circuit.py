"""A millivolt valve on 24 V."""

from __future__ import annotations

import pytest

from tests.rules.raised import mended, only, raised
from tests.rules.units import direct, two_rod
from wirecheck.model.finding import Breaks


def test_a_reused_valve_is_told_in_full() -> None:
    found = only(
        direct(valve_is="millivolt-gas-valve", valve="plug box to valve: V to CALL, VC to C\n")
    )
    assert (found.rule, found.span.text) == ("millivolt-valve-on-control-circuit", "CALL")
    assert found.message == (
        "valve.CALL is on the 24 V circuit, and valve is a millivolt valve: never reuse one, fit a "
        "valve made for 24 V"
    )
    assert found.seen_at_unit == "Its coil burns out or sticks; gas may pass with no flame."
    assert found.breaks is Breaks.SAFETY


OWN = """\
part gen is thermopile
part mv is millivolt-gas-valve
part room is thermostat: volts 750 mV
wire gen.PLUS to mv.GEN
wire gen.MINUS to mv.C
wire mv.GEN to room to mv.CALL
"""


def test_a_thermostat_of_24_volts_on_it_is_found() -> None:
    unit = "part xfmr is transformer\npart stat is thermostat\npart mv is millivolt-gas-valve\n"
    unit += "wire xfmr.R to stat to mv.CALL\nwire xfmr.C to mv.C\n"
    assert "millivolt-valve-on-control-circuit" in [rule for rule, _fault, _text in raised(unit)]


STANDING = """\
part xfmr is transformer
part stat is thermostat
part valve is standing-pilot-gas-valve
wire xfmr.R to stat to valve.TC
wire valve.TC-C to xfmr.C
"""


def test_24_volts_on_the_thermocouple_s_terminals_of_a_24_volt_valve() -> None:
    """The valve is the right one: its leads are on the wrong terminals."""
    found = only(STANDING)
    assert (found.fault, found.span.text) == ("on-thermocouple", "valve.TC")
    assert found.message == (
        "24 V is on valve.TC, which is for the thermocouple of valve: land it on valve.1"
    )
    assert found.breaks is Breaks.SAFETY
    assert raised(mended(STANDING)) == []


SILENT = {
    "a standing pilot with its 24 V where it belongs": STANDING.replace("TC-C", "C").replace(
        "valve.TC", "valve.1"
    ),
    "on its own thermopile": OWN,
    "beside a unit with a control": two_rod(more=OWN),
    "beside it with one earth for both": two_rod(more=OWN + "wire mv.C to earth\n"),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    found = [rule for rule, _fault, _text in raised(unit)]
    assert "millivolt-valve-on-control-circuit" not in found
