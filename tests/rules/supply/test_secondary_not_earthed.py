"""A secondary that reaches earth nowhere."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FED, changed, without
from tests.rules.raised import findings, mended, only, raised
from tests.rules.units import two_rod
from wirecheck.model.finding import Breaks

NAME = "secondary-not-earthed"
UNGUARDED = without(FED, "wire xfmr.C to earth: green")
FLOATING = changed(
    UNGUARDED,
    ("part stat is thermostat", "part limit is high-limit\npart stat is thermostat"),
    ("wire xfmr.R to stat.R", "wire xfmr.R to limit to stat.R"),
)


def test_a_floating_secondary_is_told_in_full() -> None:
    found = only(FLOATING)
    assert (found.rule, found.breaks) == (NAME, Breaks.WORKMANSHIP)
    assert found.span.text == "xfmr.C"
    assert found.message == (
        "neither side of xfmr reaches earth, by a lead or by a burner ground: earth xfmr.C beside "
        "the transformer, unless its maker's instructions say otherwise"
    )
    assert found.seen_at_unit == "It works; the first earth fault goes unnoticed."


def test_the_edit_mends_it() -> None:
    assert raised(mended(FLOATING)) == []


def test_two_transformers_on_one_common_are_one_finding() -> None:
    two = FLOATING + (
        "part aux is transformer\npart aid is relay\n"
        "wire line.L1 to aux.L1\nwire line.N to aux.N\n"
        "wire aux.R to aid to aux.C\nwire aux.C to xfmr.C\n"
    )
    assert [rule for rule, *_ in raised(two)] == [NAME]


def test_an_insulated_burner_earths_nothing() -> None:
    unit = without(
        two_rod(burner="pilot-burner: two-rod, bond none"), "wire xfmr.C to earth: green"
    )
    assert only(unit).rule == NAME


SILENT = {
    "no safety and no control hangs on it": UNGUARDED,
    "nor on the transformer of a zone valve": UNGUARDED.replace("is relay", "is zone-valve")
    .replace("fan.A", "fan.M1")
    .replace("fan.B", "fan.M2"),
    "the burner ground counts as a path, through rust too": without(
        two_rod(), "wire xfmr.C to earth: green"
    ),
    "the earth may be made at the load": changed(
        FED, ("wire xfmr.C to earth", "wire fan.B to earth")
    ),
    "earthed in two places on one side is normal": FED + "wire fan.B to earth: green\n",
    "a sketch that draws no earth is not judged": without(
        FED,
        "wire xfmr.C to earth: green",
        "wire line.G to earth: green",
        "wire line.L1 to xfmr.L1: black",
        "wire line.N to xfmr.N: white",
        "part line is mains: 120 V",
    ),
    "a control whose burner ground is not drawn may earth it": without(
        changed(two_rod(ground=""), ("part pilot is pilot-burner: two-rod\n", "")),
        "wire xfmr.C to earth: green",
        "wire box.SPARK to pilot.SPARK: ignition-cable",
        "wire box.SENSE to pilot.ROD",
    ),
    "a common that was not traced may be earthed": changed(
        FLOATING, ("wire fan.B to xfmr.C", "wire fan.B to xfmr.C\nwire xfmr.C to unknown")
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]


def test_a_missing_burner_ground_explains_it() -> None:
    unit = without(two_rod(ground=""), "wire xfmr.C to earth: green")
    assert [rule for rule, *_ in raised(unit)] == ["burner-ground-missing"]
