"""The ground lead that is not there."""

from __future__ import annotations

import pytest

from tests.rules.raised import mended, only, raised
from tests.rules.units import beside, direct, one_rod, two_rod
from wirecheck.model.finding import Breaks


def test_no_lead_is_told_in_full() -> None:
    found = only(two_rod(ground=""))
    assert (found.rule, found.fault, found.span.text) == ("burner-ground-missing", "no-lead", "box")
    assert found.message == (
        "no lead runs from box.GND to pilot.HOOD: run a green lead from the control to the "
        "burner itself, not to the cabinet"
    )
    assert found.seen_at_unit == (
        "The pilot lights, the spark goes on, the flame is not proved; the trial ends."
    )
    assert found.breaks is Breaks.OPERATION
    assert found.terminals == ("box.GND", "pilot.HOOD")
    assert [edit.words for edit in found.edits] == ["run a lead from box.GND to pilot.HOOD: green"]


@pytest.mark.parametrize("unit", [two_rod(ground=""), one_rod(ground=""), direct(ground="")])
def test_the_edit_mends_it(unit: str) -> None:
    assert raised(mended(unit)) == []


def test_printed_labels_are_used() -> None:
    labels = 'labels box: GND as "BNR GND"\n'
    assert "from box.BNR GND to pilot.HOOD" in only(two_rod(ground="", more=labels)).message


def test_a_solid_bond_closes_it_for_today() -> None:
    unit = two_rod(burner="pilot-burner: two-rod, bond solid", ground="")
    found = only(unit)
    assert (found.fault, found.breaks) == ("no-lead-but-bonded", Breaks.OPERATION)
    assert found.seen_at_unit.startswith("It may work today.")


def test_a_solid_bond_closes_nothing_where_the_secondary_is_not_earthed() -> None:
    unit = two_rod(burner="pilot-burner: two-rod, bond solid", ground="")
    floating = unit.replace("wire xfmr.C to earth: green\n", "")
    assert ("burner-ground-missing", "no-lead", "box") in raised(floating)


def test_metal_that_comes_back_over_the_earth_is_workmanship() -> None:
    found = only(two_rod(ground="wire pilot.HOOD to earth: green\n"))
    assert (found.fault, found.breaks) == ("at-another-terminal", Breaks.WORKMANSHIP)


def test_a_ground_lead_that_lands_on_the_common_again_is_none() -> None:
    found = only(two_rod(ground="wire box.GND to xfmr.C: green\n"))
    assert (found.rule, found.fault) == ("burner-ground-missing", "no-lead")


SILENT = {
    "a lead is a lead, whichever end is typed first": two_rod(
        ground="wire pilot.HOOD to box.GND: green\n"
    ),
    "it may go over a splice": two_rod(
        ground="wire box.GND to nut to pilot.HOOD: green\n", more="splice nut: crimp\n"
    ),
    "or over a terminal strip": two_rod(
        ground="wire box.GND to strip.1 to pilot.HOOD: green\n",
        more="part strip is terminal-strip\n",
    ),
    "ground and metal may both be earthed instead": two_rod(
        ground="wire box.GND to earth: green\nwire pilot.HOOD to earth: green\n"
    ),
    "a lead that was not traced may be the one": two_rod(ground="wire box.GND to unknown: green\n"),
    "so may one at the burner": two_rod(ground="wire unknown to pilot.HOOD: green\n"),
    "the metal of a direct burner is its frame": direct(
        ground="wire box.GND to pilot.FRAME: green\n"
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert [rule for rule, _fault, _text in raised(unit) if rule.startswith("burner-ground")] == []


def test_a_sketch_without_a_burner_is_not_judged() -> None:
    assert raised("part box is pilot-ignition-control\nwire box.GND to earth: green\n") == []


def test_a_broken_ground_lead_is_told_as_broken_only() -> None:
    unit = two_rod(ground="wire box.GND to pilot.HOOD: green, broken\n")
    assert [rule for rule, _fault, _text in raised(unit)] == ["lead-found-bad"]


def test_a_second_control_does_not_borrow_the_burner_of_the_first() -> None:
    second = beside(spark="", ground="").replace("part pilot2 is pilot-burner: one-rod\n", "")
    found = [rule for rule, _fault, _text in raised(two_rod(more=second))]
    assert "burner-ground-missing" not in found
    assert "spark-lead-missing" not in found
