"""The electrode on the sense blade, nothing on the spark blade."""

from __future__ import annotations

import pytest

from tests.rules.raised import mended, only, raised
from tests.rules.units import direct, one_rod, two_rod
from wirecheck.model.finding import Breaks

ON_SENSE = "wire box.SENSE to pilot.SPARK: ignition-cable\n"


def test_it_is_told_in_full() -> None:
    found = only(two_rod(spark=ON_SENSE, sense=""))
    assert (found.rule, found.span.text) == ("electrode-on-sense", "box.SENSE")
    assert found.message == (
        "the electrode pilot.SPARK is on box.SENSE, and box.SPARK does not reach it: land the "
        "electrode's lead on box.SPARK"
    )
    assert found.seen_at_unit == "No spark at the pilot; unlit pilot gas flows for a whole trial."
    assert found.breaks is Breaks.SAFETY
    assert "smell for gas" in found.caution


def test_it_is_main_gas_with_direct_ignition() -> None:
    assert "unlit main gas" in only(direct(spark=ON_SENSE, sense="")).seen_at_unit


def test_both_leads_on_the_sense_blade_is_one_finding() -> None:
    assert only(two_rod(spark=ON_SENSE)).rule == "electrode-on-sense"


def test_the_edit_mends_it_on_one_rod() -> None:
    assert raised(mended(one_rod(spark=ON_SENSE))) == []


SILENT = {
    "one rod on spark": one_rod(),
    "two rods, each in place": two_rod(),
    "direct ignition, each in place": direct(),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert raised(unit) == []
