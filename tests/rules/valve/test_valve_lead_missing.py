"""A lead of the gas valve that is off."""

from __future__ import annotations

import pytest

from tests.rules.raised import mended, only, raised
from tests.rules.units import direct, one_rod, two_rod
from wirecheck.model.finding import Breaks


def test_the_common_is_told_in_full() -> None:
    found = only(two_rod(valve="plug box to valve: PV, MV\n"))
    assert (found.rule, found.fault, found.span.text) == (
        "valve-lead-missing",
        "common-off",
        "valve",
    )
    assert found.message == "no lead joins box.VC to valve.C: run it"
    assert found.seen_at_unit == (
        "No gas: no operator opens, though the control sparks and its outputs are live."
    )
    assert found.breaks is Breaks.OPERATION


OFF = {
    "pilot-off": ("plug box to valve: MV, VC to C\n", "No pilot gas: the spark goes on"),
    "main-off": ("plug box to valve: PV, VC to C\n", "The main operator never opens"),
    "common-off": ("plug box to valve: MV\n", "No gas: no operator opens"),
}


@pytest.mark.parametrize(("fault", "case"), OFF.items(), ids=OFF)
def test_what_is_seen_follows_from_what_is_off(fault: str, case: tuple[str, str]) -> None:
    found = only(two_rod(valve=case[0]))
    assert found.fault == fault
    assert found.seen_at_unit.startswith(case[1])


@pytest.mark.parametrize("valve", [case[0] for case in OFF.values()], ids=OFF)
def test_the_edits_mend_it(valve: str) -> None:
    assert raised(mended(two_rod(valve=valve))) == []


def test_several_leads_off_are_one_finding() -> None:
    found = only(one_rod(valve="plug box to valve: PV\n"))
    assert found.message == ("no lead joins box.MV to valve.MV and box.VC to valve.C: run them")


def test_a_direct_control_feeds_all_operators() -> None:
    found = only(direct(valve="wire box.VC to valve.C\n"))
    assert (found.fault, found.message) == (
        "feed-off",
        "no lead joins box.V to valve.1: run it",
    )


SILENT = {
    "through a switch, which is another matter": two_rod(
        valve="plug box to valve: PV, VC to C\nwire box.MV to ps to valve.MV\n",
        more="part ps is pressure-switch\n",
    ),
    "through a relay that the output drives": two_rod(
        valve="plug box to valve: PV, VC to C\nwire box.MV to cr to box.VC\n"
        "wire xfmr.R to cr.COM..NO to valve.MV\n",
        more="part cr is relay\n",
    ),
    "an end not traced": two_rod(
        valve="plug box to valve: PV, VC to C\nwire valve.MV to unknown\n"
    ),
    "an end not traced at the control": two_rod(
        valve="plug box to valve: PV, VC to C\nwire box.MV to unknown\n"
    ),
    "the common by way of the cabinet": two_rod(
        valve="plug box to valve: PV, MV\nwire valve.C to earth\n"
    ),
    "two valves side by side": two_rod(
        more="part second is gas-valve-3-wire\nplug box to second: PV, MV, VC to C\n"
    ),
    "pilot and main in two valves": two_rod(
        valve_is="gas-valve-2-wire",
        valve="wire box.PV to valve to box.VC\n",
        more="part main is gas-valve-2-wire\nwire box.MV to main to box.VC\n",
    ),
    "no valve drawn": "part box is pilot-ignition-control\nwire box.GND to earth: green\n",
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    found = [rule for rule, _fault, _text in raised(unit)]
    assert [rule for rule in found if rule.startswith("valve-lead")] == []


def test_a_broken_lead_is_told_as_broken_only() -> None:
    unit = two_rod(valve="plug box to valve: PV, VC to C\nwire box.MV to valve.MV: broken\n")
    assert [rule for rule, _fault, _text in raised(unit)] == ["lead-found-bad"]


def test_a_common_on_another_transformer_is_off() -> None:
    unit = two_rod(
        valve="plug box to valve: PV, MV\nwire t2.C to valve.C\n",
        more="part t2 is transformer\nwire line.L1 to t2.L1: black\nwire line.N to t2.N: white\n",
    )
    assert "valve-lead-missing" in [rule for rule, _fault, _text in raised(unit)]
