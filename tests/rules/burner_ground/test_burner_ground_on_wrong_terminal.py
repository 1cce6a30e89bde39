"""The ground lead on a terminal that is not the burner's metal."""

from __future__ import annotations

import pytest

from tests.rules.raised import mended, only, raised
from tests.rules.units import beside, one_rod, two_rod
from wirecheck.model.finding import Breaks


def test_the_rod_is_told_in_full() -> None:
    found = only(two_rod(ground="wire box.GND to pilot.ROD: green\n"))
    assert (found.rule, found.fault) == ("burner-ground-on-wrong-terminal", "wrong-terminal")
    assert found.span.text == "pilot.ROD"
    assert found.message == (
        "the ground lead of box.GND lands on pilot.ROD: take it off there and land it on pilot.HOOD"
    )
    assert found.seen_at_unit == "The rod is grounded: the pilot lights and is never proved."
    assert found.breaks is Breaks.OPERATION
    assert [edit.words for edit in found.edits] == [
        "take the green lead from box.GND off pilot.ROD and land it on pilot.HOOD"
    ]


WRONG = {
    "on the electrode": ("wire box.GND to pilot.SPARK: green\n", Breaks.SAFETY),
    "on the valve": ("wire box.GND to valve.MV: green\n", Breaks.SAFETY),
    "on the call": ("wire box.GND to box.TH: green\n", Breaks.SAFETY),
    "on R": ("wire xfmr.R to box.GND: green\n", Breaks.SAFETY),
    "from the burner to the wrong blade": ("wire pilot.HOOD to box.PV: green\n", Breaks.SAFETY),
    "from the burner to the sense blade": ("wire pilot.HOOD to box.SENSE\n", Breaks.OPERATION),
    "from the burner to the spark blade": ("wire pilot.HOOD to box.SPARK\n", Breaks.SAFETY),
}


@pytest.mark.parametrize(("ground", "breaks"), WRONG.values(), ids=WRONG)
def test_each_wrong_terminal_gives_one_finding(ground: str, breaks: Breaks) -> None:
    found = only(two_rod(ground=ground))
    assert (found.rule, found.breaks) == ("burner-ground-on-wrong-terminal", breaks)


@pytest.mark.parametrize("ground", [ground for ground, _breaks in WRONG.values()], ids=WRONG)
def test_the_edit_mends_it(ground: str) -> None:
    assert raised(mended(two_rod(ground=ground))) == []


def test_another_units_burner_is_the_wrong_one() -> None:
    found = only(two_rod(ground="wire box.GND to pilot2.HOOD: green\n", more=beside()))
    assert (found.rule, found.span.text) == ("burner-ground-on-wrong-terminal", "pilot2.HOOD")


SILENT = {
    "a second lead from the ground terminal is its own matter": two_rod(
        more="wire box.GND to earth: green\n"
    ),
    "a bond from the hood to the cabinet is welcome": two_rod(
        more="wire pilot.HOOD to earth: green\n"
    ),
    "two units may share one earth": two_rod(
        more="wire pilot.HOOD to earth: green\n" + beside() + "wire pilot2.HOOD to earth: green\n"
    ),
    "one rod": one_rod(),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert raised(unit) == []


def test_leads_exchanged_with_the_spark_lead_are_told_there() -> None:
    unit = one_rod(
        spark="wire box.SPARK to pilot.HOOD: ignition-cable\n",
        ground="wire box.GND to pilot.SPARK: green\n",
    )
    assert [rule for rule, _fault, _text in raised(unit)] == ["spark-lead-earthed"]
