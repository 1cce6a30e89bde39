"""A control without its common lead."""

from __future__ import annotations

import pytest

from tests.rules.circuits import changed, without
from tests.rules.raised import findings, mended, only, raised
from tests.rules.units import beside, direct, two_rod
from wirecheck.model.finding import Breaks

NAME = "control-common-missing"
COMMON = "wire xfmr.C to box.COM: blue"
EARTH = "wire xfmr.C to earth: green"


@pytest.mark.parametrize("unit", [two_rod(), direct()])
def test_hidden_by_the_burner_ground_it_is_told_in_full(unit: str) -> None:
    wrong = without(unit, COMMON)
    found = only(wrong)
    assert (found.rule, found.fault, found.breaks) == (NAME, "through-ground", Breaks.SAFETY)
    assert found.span.text == "box"
    assert found.message == (
        "no lead brings xfmr.C to box.COM: run one; now the burner ground carries the control's "
        "whole current"
    )
    assert raised(mended(wrong)) == []


def test_without_earth_the_control_is_dead() -> None:
    unit = without(changed(two_rod(), (COMMON, "splice nut\nwire xfmr.C to nut")), EARTH)
    found = only(unit)
    assert (found.fault, found.breaks) == ("dead", Breaks.OPERATION)


def test_a_broken_common_lead_is_this_finding_alone() -> None:
    found = only(changed(two_rod(), (COMMON, f"{COMMON}, broken")))
    assert (found.rule, found.fault) == (NAME, "through-ground")
    assert found.leads == ("xfmr.C to box.COM",)


def test_the_common_on_the_burner_ground_works() -> None:
    wrong = changed(two_rod(), ("xfmr.C to box.COM", "xfmr.C to box.GND"))
    found = only(wrong)
    assert (found.fault, found.breaks) == ("on-burner-ground", Breaks.WORKMANSHIP)
    assert raised(mended(wrong)) == []


LOUD = {
    "with the hood on earth by a lead": without(
        two_rod(more="wire pilot.HOOD to earth: green\n"), COMMON
    ),
    "in the one of two units that lacks it": without(two_rod(), COMMON) + beside(),
}


@pytest.mark.parametrize("unit", LOUD.values(), ids=LOUD)
def test_other_units_without_it_are_found(unit: str) -> None:
    assert [found.rule for found in findings(unit)] == [NAME]


SILENT = {
    "right": two_rod(),
    "over a splice and a strip": changed(
        two_rod(more="splice nut\npart strip is terminal-strip\n"),
        (COMMON, "wire xfmr.C to nut to strip.1 to box.COM"),
    ),
    "to the valve first, and back by VC": changed(two_rod(), (COMMON, "wire xfmr.C to valve.C")),
    "both on one earth stud": changed(two_rod(), (COMMON, "wire box.COM to earth")),
    "a switch in the common is another mistake": changed(
        two_rod(more="part aux is service-switch\n"), (COMMON, "wire xfmr.C to aux to box.COM")
    ),
    "a common that was not traced": changed(two_rod(), (COMMON, "wire box.COM to unknown")),
    "a sketch without a transformer": (
        "part stat is thermostat\npart box is pilot-ignition-control\nwire stat.W to box.TH\n"
        "wire stat.R to unknown\nwire box.GND to unknown\n"
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
