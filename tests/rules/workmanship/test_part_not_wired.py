"""Parts that no lead reaches."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FAN, changed
from tests.rules.raised import findings, only, raised
from tests.rules.units import two_rod
from wirecheck.model.finding import Breaks

NAME = "part-not-wired"


def test_a_device_is_told_in_full() -> None:
    found = only(FAN + "part aid is relay\n")
    assert (found.rule, found.fault, found.breaks) == (NAME, "device", Breaks.OPERATION)
    assert found.span.text == "aid"
    assert found.message == "no lead reaches aid: wire it, or take it out of the drawing"


def test_a_safety_is_a_safety_matter() -> None:
    found = only(FAN + "part limit is high-limit\n")
    assert (found.fault, found.breaks) == ("safety", Breaks.SAFETY)


def test_a_strip_is_workmanship() -> None:
    assert only(FAN + "part strip is terminal-strip\n").breaks is Breaks.WORKMANSHIP


def test_a_thermostat_left_out_of_a_call_that_runs_for_good() -> None:
    unit = changed(two_rod(), ("wire xfmr.R to limit to stat to box.TH", "wire xfmr.R to box.TH"))
    found = only(changed(unit, ("part limit is high-limit\n", "")))
    assert (found.rule, found.fault, found.breaks) == (NAME, "thermostat", Breaks.SAFETY)
    assert found.message == (
        "no lead reaches stat, and the call reaches box.TH without it: wire stat into the call"
    )
    assert found.seen_at_unit == "The burner fires whether stat calls or not."
    assert found.edits == ()


def test_with_a_limit_left_in_the_call_the_burner_cycles_on_it() -> None:
    found = only(changed(two_rod(), ("limit to stat to box.TH", "limit to box.TH")))
    assert (found.fault, found.breaks) == ("thermostat", Breaks.OPERATION)


def test_a_spare_thermostat_beside_one_that_calls_does_nothing() -> None:
    assert only(two_rod() + "part spare is thermostat\n").fault == "device"


@pytest.mark.parametrize(
    "unit",
    [two_rod(spark="", sense="", ground=""), two_rod(valve="")],
    ids=["the burner", "the valve"],
)
def test_all_the_leads_of_one_part_are_one_mistake(unit: str) -> None:
    assert len(raised(unit)) == 1


SILENT = {
    "one lead is enough to be another rule's matter": FAN
    + "part aid is relay\nwire aid.A to fan.A\n",
    "a diagram that has no leads yet": "part xfmr is transformer\npart fan is relay\n",
    "a lead that was not traced may reach it": FAN + "part aid is relay\nwire fan.A to unknown\n",
    "a standing pilot has nothing to wire": FAN + "part torch is standing-pilot-burner\n",
    "a strip in use": FAN + "part strip is terminal-strip\nwire strip.1 to fan.A\n",
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
