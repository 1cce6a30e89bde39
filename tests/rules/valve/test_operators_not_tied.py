"""A three-wire valve on a direct control with one operator left off."""

from __future__ import annotations

import pytest

from tests.rules.raised import mended, only, raised
from tests.rules.units import direct, two_rod
from wirecheck.model.finding import Breaks

ON_PV = "plug box to valve: V to PV, VC to C\n"
ON_MV = "plug box to valve: V to MV, VC to C\n"


def unit(valve: str, seats: str = "redundant") -> str:
    return direct(valve_is=f"gas-valve-3-wire: {seats}", valve=valve)


def test_a_redundant_valve_is_told_in_full() -> None:
    found = only(unit(ON_PV))
    assert (found.rule, found.fault, found.span.text) == ("operators-not-tied", "redundant", "PV")
    assert found.message == (
        "box.V feeds valve.PV and nothing feeds valve.MV: tie both operators of valve together, by "
        "the adapter or a lead, so that box.V drives both"
    )
    assert found.seen_at_unit == (
        "No main gas: one operator alone keeps the redundant valve shut; the trial ends."
    )
    assert found.breaks is Breaks.OPERATION


def test_a_single_seat_lets_gas_out_at_the_pilot_outlet() -> None:
    found = only(unit(ON_PV, "single-seat"))
    assert (found.fault, found.breaks) == ("single-seat", Breaks.SAFETY)
    assert found.seen_at_unit == (
        "Gas comes out at the pilot outlet, where nothing lights it; no main gas."
    )


def test_the_main_operator_alone_leaves_a_redundant_valve_shut() -> None:
    assert only(unit(ON_MV)).fault == "redundant"


@pytest.mark.parametrize("valve", [ON_PV, ON_MV])
def test_the_edit_mends_it(valve: str) -> None:
    assert raised(mended(unit(valve))) == []


SILENT = {
    "tied by a lead": unit(ON_PV + "wire valve.PV to valve.MV\n"),
    "tied at the control": unit("plug box to valve: V to PV, V to MV, VC to C\n"),
    "a two-wire valve": direct(),
    "a pilot system": two_rod(),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert raised(text) == []


def test_a_single_seat_opens_by_its_main_operator_alone() -> None:
    found = [rule for rule, _fault, _text in raised(unit(ON_MV, "single-seat"))]
    assert "operators-not-tied" not in found
