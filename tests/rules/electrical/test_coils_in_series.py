"""One load behind another."""

from __future__ import annotations

import pytest

from tests.rules.raised import only, raised

NAME = "coils-in-series"
_HEAD = "part xfmr is transformer\npart stat is thermostat\nwire xfmr.C to earth: green\n"


def test_two_relays_share_the_volts() -> None:
    found = only(
        _HEAD + "part a is relay\npart b is relay: 8 VA\nwire xfmr.R to stat to a to b to xfmr.C\n"
    )
    assert (found.rule, found.fault) == (NAME, "series")
    assert found.message == (
        "a and b are in series between xfmr.R and xfmr.C: a gets 17.4 V of its 24 V and b gets "
        "8.7 V of its 24 V; feed each of them from the switched side, and bring each back to "
        "xfmr.C by a lead of its own"
    )


def test_three_zone_valves() -> None:
    text = "".join(f"part z{n} is zone-valve\n" for n in "abc")
    text = _HEAD + text + "wire xfmr.R to stat to za to zb to zc to xfmr.C\n"
    assert [rule for rule, _fault, _text in raised(text)] == [NAME]


_SIDE_BY_SIDE = """\
part a is relay
part b is relay
wire xfmr.R to stat to a to xfmr.C
wire stat.W to b to xfmr.C
"""
_MADE_FOR_IT = """\
part a is lamp: 12 V
part b is lamp: 12 V
wire xfmr.R to stat to a to b to xfmr.C
"""
_LIGHTS_ON_A_TRIP = """\
part a is relay
part high is high-limit
part trip is lamp
wire xfmr.R to stat to high to a to xfmr.C
wire high.1 to trip.L
wire trip.N to high.2
"""


@pytest.mark.parametrize("wiring", [_SIDE_BY_SIDE, _MADE_FOR_IT, _LIGHTS_ON_A_TRIP])
def test_what_only_looks_like_it(wiring: str) -> None:
    assert NAME not in [rule for rule, _fault, _text in raised(_HEAD + wiring)]


def test_a_thermostat_that_robs_its_power_through_the_load() -> None:
    text = _HEAD.replace("thermostat", "thermostat: robbing")
    assert raised(text + "part a is relay\nwire xfmr.R to stat to a to xfmr.C\n") == []


def test_a_second_load_that_goes_nowhere_is_no_series() -> None:
    text = _HEAD + "part a is relay\npart b is relay\nwire xfmr.R to stat to a to b.A\n"
    assert NAME not in [rule for rule, _fault, _text in raised(text)]


def test_valve_leads_out_of_order_are_told_by_their_own_rule() -> None:
    text = """\
part xfmr is transformer
part stat is thermostat
part box is pilot-ignition-control: two-rod
part valve is gas-valve-3-wire
part pilot is pilot-burner: two-rod
wire xfmr.R to stat to box.TH
wire xfmr.C to box.COM
wire xfmr.C to earth: green
plug box to valve: PV to PV, MV to C, VC to MV
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD: green
"""
    assert [rule for rule, _fault, _text in raised(text)] == ["valve-leads-out-of-order"]
