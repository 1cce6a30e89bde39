"""The rod without a lead."""

from __future__ import annotations

import pytest

from tests.rules.raised import mended, only, raised
from tests.rules.units import direct, one_rod, two_rod


def test_no_lead_is_told_in_full() -> None:
    found = only(two_rod(sense=""))
    assert (found.rule, found.span.text) == ("sense-lead-missing", "box")
    assert found.message == (
        "no lead runs from the flame rod pilot.ROD to box.SENSE: run one, well clear of the spark "
        "lead"
    )
    assert found.seen_at_unit == "The pilot lights and is not proved; the trial ends."


@pytest.mark.parametrize("unit", [two_rod(sense=""), direct(sense="")])
def test_the_edit_mends_it(unit: str) -> None:
    assert raised(mended(unit)) == []


def test_two_missing_leads_are_two_findings() -> None:
    assert [rule for rule, _fault, _text in raised(two_rod(sense="", spark=""))] == [
        "spark-lead-missing",  # the worse of the two comes first
        "sense-lead-missing",
    ]


SILENT = {
    "one rod needs none": one_rod(),
    "over a splice": two_rod(sense="wire box.SENSE to nut to pilot.ROD\n", more="splice nut\n"),
    "an end not traced may be the one": two_rod(sense="wire pilot.ROD to unknown\n"),
    "the control says one rod, the burner nothing": two_rod(
        control="pilot-ignition-control: pilot one-rod", burner="pilot-burner", sense=""
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert "sense-lead-missing" not in [rule for rule, _fault, _text in raised(unit)]


def test_a_broken_lead_is_told_as_broken_only() -> None:
    unit = two_rod(sense="wire box.SENSE to pilot.ROD: broken\n")
    assert [rule for rule, _fault, _text in raised(unit)] == ["lead-found-bad"]
