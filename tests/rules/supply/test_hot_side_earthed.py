"""R on earth."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FAN, changed
from tests.rules.raised import findings, mended, only, raised
from tests.rules.units import two_rod
from wirecheck.model.finding import Breaks

NAME = "hot-side-earthed"


def test_r_earthed_beside_c_is_told_in_full() -> None:
    found = only(FAN + "wire xfmr.R to earth: green\n")
    assert (found.rule, found.fault, found.breaks) == (NAME, "short", Breaks.SAFETY)
    assert found.message == (
        "the lead xfmr.R to earth puts the hot side xfmr.R on earth, and its common reaches earth "
        "too: take it off"
    )
    assert found.caution == "Shut off power and gas before moving leads."
    assert [edit.words for edit in found.edits] == ["take out the green lead from xfmr.R to earth"]
    assert mended(FAN + "wire xfmr.R to earth: green\n") == FAN


def test_r_earthed_instead_of_c_shorts_through_the_burner_ground() -> None:
    unit = changed(two_rod(), ("wire xfmr.C to earth", "wire xfmr.R to earth"))
    assert (only(unit).fault, only(unit).span.text) == ("short", "earth")
    assert only(unit).message.endswith("take it off; what belongs on earth is xfmr.C")
    assert raised(mended(unit)) == []


def test_without_any_other_earth_it_is_a_safety_matter_still() -> None:
    unit = changed(FAN, ("wire xfmr.C to earth", "wire xfmr.R to earth"))
    assert (only(unit).fault, only(unit).breaks) == ("alone", Breaks.SAFETY)


LOUD = {
    "over a splice": FAN + "splice nut\nwire xfmr.R to nut\nwire nut to earth\n",
    "by a lead that chafes": changed(FAN, ("xfmr.R to stat.R", "xfmr.R to stat.R: touches earth")),
    "on the metal of the burner": two_rod(more="wire limit.1 to pilot.HOOD\n"),
    "on the burner ground": two_rod(more="wire xfmr.R to box.GND\n"),
}


@pytest.mark.parametrize("unit", LOUD.values(), ids=LOUD)
def test_other_ways_to_earth_are_found(unit: str) -> None:
    assert [(found.rule, found.fault) for found in findings(unit)] == [(NAME, "short")]


SILENT = {
    "c is earthed, as it should be": FAN,
    "c is earthed twice, and on the hood": two_rod(more="wire xfmr.C to pilot.HOOD\n"),
    "a lead past a switch has a rule of its own": FAN + "wire fan.A to earth\n",
    "a broken lead to earth reaches nothing": FAN + "wire xfmr.R to earth: broken\n",
    "r is on an insulated burner that nothing else is on": FAN
    + "part torch is pilot-burner: one-rod, bond none\nwire xfmr.R to torch.HOOD\n"
    + "wire torch.SPARK to unknown: ignition-cable\n",
    "exchanged leads are told as exchanged": changed(
        two_rod(),
        ("wire xfmr.R to limit", "wire xfmr.C to limit"),
        ("wire xfmr.C to box.COM", "wire xfmr.R to box.COM"),
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]


def test_printed_labels_are_used() -> None:
    unit = changed(FAN, ("xfmr.R", "xfmr.24V")) + 'labels xfmr: R as "24V"\n'
    unit += 'wire xfmr."24V" to earth\n'
    assert only(unit).message.startswith("the lead xfmr.24V to earth puts the hot side xfmr.24V")
