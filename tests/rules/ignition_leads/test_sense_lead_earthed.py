"""The rod or its lead on metal."""

from __future__ import annotations

import pytest

from tests.rules.raised import only, raised
from tests.rules.units import direct, one_rod, two_rod
from wirecheck.model.finding import Breaks


def test_a_rod_tied_to_the_hood_is_told_in_full() -> None:
    found = only(two_rod(more="wire pilot.ROD to pilot.HOOD\n"))
    assert (found.rule, found.fault, found.span.text) == (
        "sense-lead-earthed",
        "landed",
        "pilot.HOOD",
    )
    assert found.message == (
        "the sense lead is landed on grounded metal at pilot.HOOD: run it from box.SENSE to "
        "pilot.ROD and nowhere else"
    )
    assert found.seen_at_unit == "The pilot lights and is never proved; the trial ends."
    assert found.breaks is Breaks.OPERATION


def test_a_lead_that_touches_is_told_in_full() -> None:
    found = only(two_rod(sense="wire box.SENSE to pilot.ROD: touches earth\n"))
    assert found.message == (
        "the sense lead box.SENSE to pilot.ROD touches metal: replace it and keep it clear of "
        "metal and heat"
    )


RAISING = {
    "sense lead on the cabinet": two_rod(sense="wire box.SENSE to earth\n"),
    "sense lead on the hood": two_rod(sense="wire box.SENSE to pilot.HOOD\n"),
    "sense blade on the common": two_rod(sense="wire box.SENSE to box.COM\n"),
    "rod to the cabinet": direct(sense="wire pilot.ROD to earth\n"),
    "one rod, sense blade grounded": one_rod(sense="wire box.SENSE to box.GND\n"),
}


@pytest.mark.parametrize("unit", RAISING.values(), ids=RAISING)
def test_other_ways_to_it_are_one_finding_each(unit: str) -> None:
    assert only(unit).rule == "sense-lead-earthed"


SILENT = {
    "two rods": two_rod(),
    "one rod": one_rod(),
    "the ground lead in the same run of text": two_rod(
        ground="wire box.GND to pilot.HOOD to earth: green\n"
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert raised(unit) == []


def test_a_dirty_rod_is_no_matter_of_the_leads() -> None:
    unit = two_rod(burner="pilot-burner: two-rod, rod dirty")
    assert [rule for rule, _fault, _text in raised(unit)] == ["part-found-bad"]


def test_a_ground_lead_on_the_rod_is_told_as_that() -> None:
    unit = two_rod(ground="wire box.GND to pilot.ROD: green\n")
    assert only(unit).rule == "burner-ground-on-wrong-terminal"
