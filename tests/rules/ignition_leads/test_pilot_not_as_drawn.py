"""The control set up for another pilot than the one drawn."""

from __future__ import annotations

import pytest

from tests.rules.raised import mended, only, raised
from tests.rules.units import one_rod, two_rod


def test_a_mismatch_is_told_in_full() -> None:
    found = only(two_rod(control="pilot-ignition-control: pilot one-rod"))
    assert (found.rule, found.span.text) == ("pilot-not-as-drawn", "pilot one-rod")
    assert found.message == (
        "box is set up for a one-rod pilot, and pilot is two-rod: set the control up for two-rod, "
        "or use the burner it is made for"
    )
    assert found.seen_at_unit == "The pilot lights and is proved erratically or not at all."


@pytest.mark.parametrize(
    "unit",
    [
        two_rod(control="pilot-ignition-control: pilot one-rod"),
        one_rod(control="pilot-ignition-control: pilot two-rod"),
    ],
)
def test_the_edit_mends_it(unit: str) -> None:
    assert raised(mended(unit)) == []


SILENT = {
    "both say two": two_rod(control="pilot-ignition-control: pilot two-rod"),
    "both say one": one_rod(control="pilot-ignition-control: pilot one-rod"),
    "only the burner says": two_rod(),
    "neither says": two_rod(burner="pilot-burner"),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert raised(unit) == []
