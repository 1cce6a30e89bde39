"""Leads that end nowhere."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FAN, PUMP
from tests.rules.raised import findings, mended, only, raised
from tests.rules.units import two_rod
from wirecheck.model.finding import Breaks

NAME = "loose-end"


def test_a_bare_end_is_told_in_full_and_capped() -> None:
    unit = FAN + "wire fan.A to open: white\n"
    found = only(unit)
    assert (found.rule, found.fault, found.breaks) == (NAME, "bare", Breaks.WORKMANSHIP)
    assert found.span.text == "open"
    assert found.message == (
        "the lead from fan.A ends loose: land it where it belongs, cap it, or take it out"
    )
    assert raised(mended(unit)) == []


def test_at_line_voltage_it_is_a_safety_matter() -> None:
    found = only(PUMP + "wire open to disc.2\n")
    assert (found.fault, found.breaks) == ("live-line", Breaks.SAFETY)


def test_a_lead_with_two_loose_ends() -> None:
    unit = FAN + "wire open to open: red\n"
    assert only(unit).fault == "both-ends"
    assert raised(mended(unit)) == []


SILENT = {
    "capped": FAN + "wire fan.A to open: white, capped\n",
    "both ends capped": FAN + "wire open to open: capped\n",
    "capped at line voltage": PUMP + "wire disc.2 to open: capped\n",
    "an end not traced is not loose": FAN + "wire fan.A to unknown\n",
    "where its place is empty, that is told": two_rod(sense="wire box.SENSE to open\n"),
    "so at the valve": two_rod(valve="plug box to valve: PV, VC to C\nwire box.MV to open\n"),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]


def test_a_lead_taken_off_and_left_is_one_finding() -> None:
    assert len(findings(two_rod(ground="wire box.GND to open: green\n"))) == 1
