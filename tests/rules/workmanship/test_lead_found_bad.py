"""Leads recorded as broken, loose or chafed."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FAN, PUMP, changed
from tests.rules.raised import findings, only
from tests.rules.units import direct, one_rod, two_rod
from wirecheck.model.finding import Breaks

NAME = "lead-found-bad"


def test_a_broken_lead_is_told_in_full() -> None:
    found = only(changed(FAN, ("stat.W to fan.A", "stat.W to fan.A: broken")))
    assert (found.rule, found.fault, found.breaks) == (NAME, "broken", Breaks.OPERATION)
    assert found.message == "the lead stat.W to fan.A is recorded as broken: replace it"


@pytest.mark.parametrize(
    ("unit", "fault", "breaks"),
    [
        (FAN + "wire fan.A to stat.W: broken\n", "broken-doubled", Breaks.WORKMANSHIP),
        (
            changed(FAN, ("earth: green", "earth: green, broken")),
            "broken-earth",
            Breaks.WORKMANSHIP,
        ),
        (changed(FAN, ("to fan.A", "to fan.A: loose 50 ohm")), "loose", Breaks.OPERATION),
        (
            changed(PUMP, ("pump.N: white", "pump.N: white, loose 1 ohm")),
            "loose-line",
            Breaks.SAFETY,
        ),
        (
            changed(FAN, ("fan.B to xfmr.C", "fan.B to xfmr.C: touches earth")),
            "touches",
            Breaks.WORKMANSHIP,
        ),
        (
            two_rod(ground="wire box.GND to pilot.HOOD: green, broken\n"),
            "broken-signal",
            Breaks.OPERATION,
        ),
        (
            two_rod(sense="wire box.SENSE to nut to pilot.ROD (broken)\n", more="splice nut\n"),
            "broken-signal",
            Breaks.OPERATION,
        ),
        (
            direct(spark="wire box.SPARK to pilot.SPARK: ignition-cable, broken\n"),
            "broken-spark",
            Breaks.SAFETY,
        ),
        (
            one_rod(spark="wire box.SPARK to pilot.SPARK: ignition-cable, broken\n"),
            "broken-spark",
            Breaks.OPERATION,
        ),
        (two_rod(more="wire box.PV to valve.PV: broken\n"), "broken-doubled", Breaks.WORKMANSHIP),
    ],
)
def test_each_record(unit: str, fault: str, breaks: Breaks) -> None:
    found = only(unit)
    assert (found.rule, found.fault, found.breaks) == (NAME, fault, breaks)


def test_a_loose_splice() -> None:
    unit = (
        changed(FAN, ("xfmr.R to stat.R", "xfmr.R to nut to stat.R")) + "splice nut: loose 20 ohm\n"
    )
    assert (
        only(unit).message
        == "the splice nut is recorded as loose, with 20 ohm: make the joint again"
    )


def test_a_record_of_a_whole_wire_is_one_finding() -> None:
    unit = changed(two_rod(), ("to box.TH: red", "to box.TH: red, broken"))
    assert [found.rule for found in findings(unit)] == [NAME]


SILENT = {
    "nothing recorded": two_rod(),
    "an earthed call lead is told as that": changed(FAN, ("to fan.A", "to fan.A: touches earth")),
    "a hot lead on the cabinet is told as that": changed(
        PUMP, ("to disc to", "to disc (touches earth) to")
    ),
    "a common that is gone is told as that": changed(
        two_rod(), ("box.COM: blue", "box.COM: blue, broken")
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
