"""The sense link against the pilot that is drawn."""

from __future__ import annotations

import pytest

from tests.rules.raised import mended, only, raised
from tests.rules.units import direct, one_rod, two_rod

FITTED = "pilot-ignition-control: sense-link fitted"
CUT = "pilot-ignition-control: sense-link cut"


def test_a_link_on_two_rods_is_told_in_full() -> None:
    found = only(two_rod(control=FITTED))
    assert (found.fault, found.span.text) == ("fitted-on-two-rod", "sense-link fitted")
    assert found.message == (
        "the sense link of box is fitted, and pilot has a rod of its own on box.SENSE: cut the link"
    )
    assert found.seen_at_unit == (
        "Rod and electrode sense in parallel: the pilot lights and is proved now and then."
    )


def test_no_link_on_one_rod_is_told_in_full() -> None:
    found = only(one_rod(control=CUT))
    assert found.message == (
        "the sense link of box is cut, and the only rod of pilot is its electrode: fit the link "
        "again, or use the control that suits one rod"
    )
    assert found.seen_at_unit == "The pilot lights and is never proved; the trial ends."


@pytest.mark.parametrize("unit", [two_rod(control=FITTED), one_rod(control=CUT)])
def test_the_edit_mends_it(unit: str) -> None:
    assert raised(mended(unit)) == []


def test_a_kind_of_the_users_own_is_judged_alike() -> None:
    kind = f"kind old-box is {FITTED}\n"
    assert only(kind + two_rod(control="old-box")).fault == "fitted-on-two-rod"


SILENT = {
    "cut for two": two_rod(control=CUT),
    "fitted for one": one_rod(control=FITTED),
    "nothing said, two": two_rod(),
    "nothing said, one": one_rod(),
    "direct ignition has no link": direct(),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert raised(unit) == []
