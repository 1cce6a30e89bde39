"""The rod, or the sense terminal, on the ignition voltage."""

from __future__ import annotations

import pytest

from tests.rules.raised import mended, only, raised
from tests.rules.units import direct, one_rod, two_rod
from wirecheck.model.finding import Breaks

ON_SPARK = "wire box.SPARK to pilot.ROD\n"


def test_the_sense_lead_on_the_spark_blade_is_told_in_full() -> None:
    found = only(two_rod(sense=ON_SPARK))
    assert (found.rule, found.fault, found.span.text) == (
        "rod-on-spark",
        "rod-lead-on-spark",
        "box.SPARK",
    )
    assert found.message == (
        "the rod pilot.ROD is on box.SPARK, the ignition voltage: land its lead on box.SENSE"
    )
    assert found.seen_at_unit == (
        "It may light, the flame is never proved, the trial ends. Some 20 kV stands on a lead "
        "that is not made for it."
    )
    assert found.breaks is Breaks.SAFETY
    assert [edit.words for edit in found.edits] == [
        "take the lead from pilot.ROD off box.SPARK and land it on box.SENSE"
    ]
    assert "high voltage" in found.caution


@pytest.mark.parametrize("unit", [two_rod(sense=ON_SPARK), direct(sense=ON_SPARK)])
def test_the_edit_mends_it(unit: str) -> None:
    assert raised(mended(unit)) == []


RAISING = {
    "rod alone on the spark blade": two_rod(spark="", sense=ON_SPARK),
    "rod tied to the electrode at the burner": two_rod(sense="wire pilot.ROD to pilot.SPARK\n"),
    "sense lead on electrode and rod": two_rod(
        sense="wire box.SENSE to pilot.ROD\nwire box.SENSE to pilot.SPARK\n"
    ),
    "spark and sense blades joined on one rod": one_rod(sense="jumper box.SPARK to box.SENSE\n"),
    "the one rod on both blades": one_rod(sense="wire box.SENSE to pilot.SPARK\n"),
}


@pytest.mark.parametrize("unit", RAISING.values(), ids=RAISING)
def test_other_ways_to_it_are_one_finding_each(unit: str) -> None:
    assert only(unit).rule == "rod-on-spark"


SILENT = {
    "leads written backwards": two_rod(
        spark="wire pilot.SPARK to box.SPARK: ignition-cable\n",
        sense="wire pilot.ROD to box.SENSE\n",
    ),
    "the sense lead over a strip": two_rod(
        sense="wire box.SENSE to tb.1 to pilot.ROD\n", more="part tb is terminal-strip\n"
    ),
    "ignition cable as sense lead": two_rod(sense="wire box.SENSE to pilot.ROD: ignition-cable\n"),
    "one rod": one_rod(),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert raised(unit) == []
