"""Blowers with a speed that has no lead."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FED, changed, without
from tests.rules.raised import findings, only
from wirecheck.model.finding import Breaks

NAME = "speed-not-wired"
BLOWER = (
    FED
    + """\
part air is blower: two-speed
wire line.L1 to fan.COM: black
wire fan.NO to air.HI: black
wire fan.NC to air.LO: red
wire line.N to air.N: white
"""
)


def test_a_fast_speed_without_its_lead_is_told_in_full() -> None:
    found = only(changed(BLOWER, ("wire fan.NO to air.HI: black\n", "")))
    assert (found.rule, found.fault, found.breaks) == (NAME, "stops", Breaks.OPERATION)
    assert found.message == (
        "air is typed with two speeds; a relay takes air.LO off, and air.HI has no lead: run it, "
        "or leave two-speed out if only the other is used"
    )
    assert found.seen_at_unit == (
        "air stops when the relay pulls in, and does not run at that speed."
    )


def test_a_slow_speed_that_may_be_left_unused_is_workmanship() -> None:
    found = only(without(BLOWER, "wire fan.NC to air.LO: red"))
    assert (found.rule, found.fault, found.breaks) == (NAME, "no-lead", Breaks.WORKMANSHIP)


def test_both_leads_on_the_fast_speed_leave_the_slow_one_empty() -> None:
    found = only(changed(BLOWER, ("fan.NC to air.LO", "fan.NC to air.HI")))
    assert (found.rule, found.fault, found.terminals) == (NAME, "stops", ("air.LO",))


def test_a_fan_contact_that_leads_nowhere_is_where_it_belongs() -> None:
    found = only(
        changed(BLOWER, ("fan.NC to air.LO", "fan.NC to plenum.FAN-1"))
        + "part plenum is fan-limit-control: link removed\n"
    )
    assert (found.rule, found.fault, found.breaks) == (NAME, "beside", Breaks.OPERATION)
    assert found.message == (
        "air is typed with two speeds; air.LO has no lead, and neither has plenum.FAN-2, where a "
        "contact brings the line to: run one between them"
    )


SILENT = {
    "both wired": BLOWER,
    "two speeds by default, one used": changed(
        without(BLOWER, "wire fan.NC to air.LO: red"), ("blower: two-speed", "blower")
    ),
    "one speed": changed(
        without(BLOWER, "wire fan.NC to air.LO: red"),
        ("blower: two-speed", "blower: one-speed"),
        ("air.HI", "air.L"),
    ),
    "not traced": changed(BLOWER, ("fan.NC to air.LO", "fan.NC to unknown")),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
