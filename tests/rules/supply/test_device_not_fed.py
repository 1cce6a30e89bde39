"""Primaries, coils and motors that lie across no supply."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FED, PUMP, changed, without
from tests.rules.raised import findings, only
from wirecheck.model.finding import Breaks

NAME = "device-not-fed"
ON_ONE_LEG = PUMP + changed(
    without(FED, "part line is mains: 120 V", "wire line.G to earth: green"),
    ("line.L1 to xfmr.L1: black", "line.N to xfmr.L1: white"),
)


def test_both_ends_on_one_leg_are_told_in_full() -> None:
    found = only(ON_ONE_LEG)
    assert (found.rule, found.fault, found.breaks) == (NAME, "one-side", Breaks.OPERATION)
    assert found.span.text == "xfmr.L1"
    assert found.message == (
        "both ends of xfmr are on line.N: of xfmr.L1 and xfmr.N land one on the other side of the "
        "supply"
    )


def test_one_lost_lead_is_one_finding_for_all_it_feeds() -> None:
    both = (
        "splice nut\n"
        + PUMP
        + without(FED, "part line is mains: 120 V", "wire line.G to earth: green")
    )
    lost = changed(
        both, ("line.N to pump.N", "nut to pump.N"), ("line.N to xfmr.N", "nut to xfmr.N")
    )
    found = only(lost)
    assert (found.fault, found.terminals) == (
        "not-reached",
        ("pump.N", "xfmr.N", "line.N"),
    )
    assert found.message == (
        "pump.N does not reach the supply, so pump and xfmr cannot be fed: lead it back to the "
        "other side of what feeds pump.L"
    )


LOUD = {
    "two loads that meet and have no way back": changed(
        FED, ("fan.B to xfmr.C", "fan.B to more.A\npart more is relay\nwire more.B to stat.W")
    ),
    "a motor whose neutral ends at a splice": changed(
        "splice nut\n" + PUMP, ("line.N to pump.N", "nut to pump.N")
    ),
    "a coil with both ends on the hot side": changed(FED, ("fan.B to xfmr.C", "fan.B to xfmr.R"))
    + "part lamp is lamp\nwire xfmr.R to lamp to xfmr.C\n",
    "a primary with no leads beside a line that is drawn": PUMP
    + without(
        FED,
        "part line is mains: 120 V",
        "wire line.G to earth: green",
        "wire line.L1 to xfmr.L1: black",
        "wire line.N to xfmr.N: white",
    ),
}


@pytest.mark.parametrize("unit", LOUD.values(), ids=LOUD)
def test_other_dead_devices_are_found(unit: str) -> None:
    assert [found.rule for found in findings(unit)] == [NAME]


SILENT = {
    "two lamps for half the volts in series": changed(
        FED,
        ("part fan is relay", "part fan is lamp: 12 V\npart more is lamp: 12 V"),
        ("fan.A", "fan.L"),
        ("fan.B to", "fan.N to more to"),
    ),
    "across the line through a switch": PUMP,
    "the common may come over the earth": changed(FED, ("fan.B to xfmr.C", "fan.B to earth")),
    "a lamp across a limit tells of its trip": FED
    + "part limit is high-limit\npart lamp is lamp\nwire xfmr.R to limit to fan.A\n"
    + "wire limit.1 to lamp to limit.2\n",
    "two legs of a split phase": changed(
        PUMP,
        ("mains: 120 V", "mains: 240 V"),
        ("pump is circulator", "pump is circulator: 240 V"),
        ("line.N to pump.N: white", "line.L2 to pump.N: red"),
    ),
    "a sketch without a line": "part xfmr is transformer\npart fan is relay\n"
    "wire xfmr.R to fan to xfmr.C\nwire xfmr.C to earth\nwire xfmr.L1 to unknown\n",
    "a lead that was not traced": changed(PUMP, ("line.N to pump.N", "unknown to pump.N")),
    "an empty terminal before it tells the story": without(
        changed(PUMP, ("line.L1 to disc to pump.L", "disc to pump.L")), "part line is mains: 120 V"
    )
    + "part line is mains: 120 V\nwire line.L1 to line.N: broken\n",
    "a broken lead is told as broken": changed(PUMP, ("pump.N: white", "pump.N: white, broken")),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
