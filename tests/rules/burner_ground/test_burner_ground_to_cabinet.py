"""The ground lead that goes to the cabinet and no further."""

from __future__ import annotations

import pytest

from tests.rules.raised import mended, only, raised
from tests.rules.units import direct, two_rod


def test_the_cabinet_is_told_in_full() -> None:
    found = only(two_rod(ground="wire box.GND to earth: green\n"))
    assert (found.rule, found.fault, found.span.text) == (
        "burner-ground-to-cabinet",
        "cabinet-only",
        "earth",
    )
    assert found.message == (
        "the ground lead of box.GND goes to the cabinet only: run a green lead from box.GND to "
        "pilot.HOOD itself"
    )
    assert found.seen_at_unit == (
        "The pilot lights, the spark goes on, the flame is not proved; the trial ends."
    )


def test_the_earth_stays_and_a_lead_is_added() -> None:
    unit = two_rod(ground="wire box.GND to earth: green\n")
    assert [edit.action for edit in only(unit).edits] == ["add"]
    assert raised(mended(unit)) == []


def test_a_solid_bond_carries_it_for_today() -> None:
    unit = two_rod(
        burner="pilot-burner: two-rod, bond solid", ground="wire box.GND to earth: green\n"
    )
    assert only(unit).fault == "cabinet-only-but-bonded"


def test_it_matters_from_the_burner_too_where_the_common_is_not_earthed() -> None:
    floating = two_rod(ground="wire pilot.HOOD to earth: green\n").replace(
        "wire xfmr.C to earth: green\n", ""
    )
    assert ("burner-ground-to-cabinet", "cabinet-only", "earth") in raised(floating)


SILENT = {
    "cabinet and burner both": two_rod(more="wire box.GND to earth: green\n"),
    "both grounded at the cabinet": two_rod(
        ground="wire box.GND to earth: green\nwire pilot.HOOD to earth: green\n"
    ),
    "the frame of a direct burner earthed as well": direct(
        more="wire pilot.FRAME to earth: green\n"
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert raised(unit) == []
