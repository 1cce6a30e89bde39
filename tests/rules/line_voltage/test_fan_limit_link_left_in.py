"""The factory link of a fan-and-limit control."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FED, changed, without
from tests.rules.raised import findings, mended, only, raised
from wirecheck.model.finding import Breaks

NAME = "fan-limit-link-left-in"

FURNACE = (
    changed(
        FED,
        ("wire xfmr.R to stat.R", "wire xfmr.R to plenum.LIMIT-1..LIMIT-2 to stat.R"),
        ("part stat", "part plenum is fan-limit-control: link removed\npart stat"),
        ("part fan", "part blower is blower: one-speed\npart fan"),
    )
    + "wire line.L1 to plenum.FAN-1..FAN-2 to blower.L: black\nwire line.N to blower.N: white\n"
)
LEFT_IN = changed(FURNACE, (": link removed", ""))


def test_the_link_that_was_not_typed_as_removed_is_told_in_full() -> None:
    found = only(LEFT_IN)
    assert (found.rule, found.breaks, found.span.text) == (NAME, Breaks.SAFETY, "plenum")
    assert found.message == (
        "the factory link of plenum joins plenum.FAN-1, at line voltage, to plenum.LIMIT-1 in the "
        "24 V circuit: break it out (then type: link removed)"
    )
    assert raised(mended(LEFT_IN)) == []


def test_typed_as_fitted_it_is_found_where_the_fan_is_not_drawn() -> None:
    unit = without(
        changed(FURNACE, ("link removed", "link fitted")),
        "part blower is blower: one-speed",
        "wire line.L1 to plenum.FAN-1..FAN-2 to blower.L: black",
        "wire line.N to blower.N: white",
    )
    assert [found.span.text for found in findings(unit)] == ["link fitted"]


SILENT = {
    "removed": FURNACE,
    "both contacts at line voltage need the link": changed(
        LEFT_IN,
        ("wire xfmr.R to plenum.LIMIT-1..LIMIT-2 to stat.R", "wire xfmr.R to stat.R"),
        ("line.L1 to xfmr.L1", "plenum.LIMIT-2 to xfmr.L1"),
    ),
    "the fan contact is not drawn, the link not typed": without(
        LEFT_IN,
        "part blower is blower: one-speed",
        "wire line.L1 to plenum.FAN-1..FAN-2 to blower.L: black",
        "wire line.N to blower.N: white",
    ),
    "the limit is not used": changed(
        LEFT_IN, ("wire xfmr.R to plenum.LIMIT-1..LIMIT-2 to stat.R", "wire xfmr.R to stat.R")
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
