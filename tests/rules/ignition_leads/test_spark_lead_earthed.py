"""The spark lead on metal."""

from __future__ import annotations

import pytest

from tests.rules.raised import mended, only, raised
from tests.rules.units import direct, one_rod, two_rod
from wirecheck.model.finding import Breaks


def test_a_lead_on_the_cabinet_is_told_in_full() -> None:
    found = only(one_rod(spark="wire box.SPARK to earth: ignition-cable\n"))
    assert (found.rule, found.fault, found.span.text) == ("spark-lead-earthed", "landed", "earth")
    assert found.message == (
        "the ignition lead of box.SPARK is landed on grounded metal at earth: run it from "
        "box.SPARK to pilot.SPARK and take it off earth"
    )
    assert found.seen_at_unit == "No spark at the electrode, unlit pilot gas until the trial ends."
    assert found.breaks is Breaks.OPERATION


def test_a_lead_that_touches_is_told_in_full() -> None:
    found = only(two_rod(spark="wire box.SPARK to pilot.SPARK: ignition-cable, touches earth\n"))
    assert (found.rule, found.fault) == ("spark-lead-earthed", "touches")
    assert found.message == (
        "the ignition lead box.SPARK to pilot.SPARK touches metal: replace it, and keep it clear "
        "of the cabinet"
    )


def test_exchanged_with_the_ground_lead_puts_the_voltage_on_the_burner() -> None:
    unit = one_rod(
        spark="wire box.SPARK to pilot.HOOD: ignition-cable\n",
        ground="wire box.GND to pilot.SPARK: green\n",
    )
    found = only(unit)
    assert (found.fault, found.breaks) == ("exchanged-with-ground", Breaks.SAFETY)
    assert raised(mended(unit)) == []


RAISING = {
    "on the hood": one_rod(spark="wire box.SPARK to pilot.HOOD: ignition-cable\n"),
    "on the common": two_rod(spark="wire box.SPARK to box.VC: ignition-cable\n"),
    "beside the electrode": two_rod(more="wire pilot.SPARK to pilot.HOOD\n"),
    "on the frame of a direct burner": direct(more="wire pilot.SPARK to pilot.FRAME\n"),
    "electrode on the ground blade too": one_rod(more="wire box.GND to pilot.SPARK\n"),
}


@pytest.mark.parametrize("unit", RAISING.values(), ids=RAISING)
def test_other_ways_to_it_are_one_finding_each(unit: str) -> None:
    assert only(unit).rule == "spark-lead-earthed"


SILENT = {
    "one rod": one_rod(),
    "two rods": two_rod(),
    "direct": direct(),
    "a hood that is earthed": one_rod(more="wire pilot.HOOD to earth\n"),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert raised(unit) == []
