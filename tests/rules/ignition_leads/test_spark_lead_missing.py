"""No spark at the electrode for want of a lead."""

from __future__ import annotations

import pytest

from tests.rules.raised import mended, only, raised
from tests.rules.units import direct, one_rod, two_rod
from wirecheck.model.finding import Breaks


def test_no_lead_is_told_in_full() -> None:
    found = only(one_rod(spark=""))
    assert (found.rule, found.fault, found.span.text) == ("spark-lead-missing", "no-lead", "box")
    assert found.message == (
        "no lead runs from box.SPARK to the electrode pilot.SPARK: run an ignition cable between "
        "them, as short as it can be"
    )
    assert found.seen_at_unit == ("No spark at the pilot; unlit pilot gas until the trial ends.")
    assert found.breaks is Breaks.OPERATION


@pytest.mark.parametrize("unit", [one_rod(spark=""), two_rod(spark=""), direct(spark="")])
def test_the_edit_mends_it(unit: str) -> None:
    assert raised(mended(unit)) == []


@pytest.mark.parametrize(
    ("unit", "breaks"),
    [
        (one_rod(spark=""), Breaks.OPERATION),
        (two_rod(spark=""), Breaks.SAFETY),
        (direct(spark=""), Breaks.SAFETY),
        (two_rod(spark="wire box.SENSE to pilot.SPARK: ignition-cable\n", sense=""), Breaks.SAFETY),
        (two_rod(spark="wire box.SPARK to pilot.HOOD: ignition-cable\n"), Breaks.SAFETY),
        (direct(spark="wire box.SPARK to earth: ignition-cable\n"), Breaks.SAFETY),
        (
            direct(spark="wire box.SPARK to pilot.SPARK: ignition-cable, touches earth\n"),
            Breaks.SAFETY,
        ),
    ],
)
def test_unlit_gas_is_of_one_class_whichever_lead_is_the_cause(unit: str, breaks: Breaks) -> None:
    assert only(unit).breaks is breaks


def test_an_electrode_on_another_circuit_is_named() -> None:
    found = only(one_rod(spark="wire box.PV to pilot.SPARK: ignition-cable\n"))
    assert (found.rule, found.fault, found.span.text) == (
        "spark-lead-missing",
        "electrode-elsewhere",
        "box.PV",
    )


SILENT = {
    "an end not traced may be the one": one_rod(spark="wire box.SPARK to unknown\n"),
    "so may one at the burner": one_rod(spark="wire unknown to pilot.SPARK\n"),
    "no burner is drawn": "part box is pilot-ignition-control\nwire box.GND to earth: green\n",
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert "spark-lead-missing" not in [rule for rule, _fault, _text in raised(unit)]


def test_a_broken_lead_is_told_as_broken_only() -> None:
    unit = one_rod(spark="wire box.SPARK to pilot.SPARK: ignition-cable, broken\n")
    assert [rule for rule, _fault, _text in raised(unit)] == ["lead-found-bad"]


def test_a_lead_left_hanging_is_one_finding() -> None:
    unit = one_rod(spark="wire box.SPARK to open: ignition-cable\n")
    assert [rule for rule, _fault, _text in raised(unit)] == ["spark-lead-missing"]
