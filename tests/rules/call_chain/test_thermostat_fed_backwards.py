"""Thermostats whose supply comes in at the heating terminal."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FED, changed
from tests.rules.raised import findings, only
from wirecheck.model.finding import Breaks

NAME = "thermostat-fed-backwards"
BACK = changed(
    FED, ("xfmr.R to stat.R", "xfmr.R to stat.W"), ("stat.W to fan.A", "stat.R to fan.A")
)
COOL = "part aid is relay\nwire stat.Y to aid to xfmr.C\n"


def test_one_with_a_call_for_cooling_is_told_in_full() -> None:
    found = only(BACK + COOL)
    assert (found.rule, found.fault, found.breaks) == (NAME, "backwards", Breaks.OPERATION)
    assert found.message == (
        "the supply comes to stat at stat.W, and stat.R is on the call: exchange the leads of "
        "stat.R and stat.W"
    )
    assert found.seen_at_unit == (
        "What stat has besides its heating contact gets no power while that is open."
    )


def test_one_with_power_of_its_own() -> None:
    text = (
        changed(BACK, ("is thermostat", "is thermostat: power common")) + "wire xfmr.C to stat.C\n"
    )
    assert NAME in [found.rule for found in findings(text)]


SILENT = {
    "a plain contact the other way round": BACK,
    "the right way": FED + COOL,
    "through a limit": changed(FED, ("xfmr.R to stat.R", "xfmr.R to limit to stat.R"))
    + COOL
    + "part limit is high-limit\n",
    "a second thermostat beside it": FED
    + COOL
    + "part more is thermostat\nwire xfmr.R to more to fan.A\n",
    "a feed that was not traced": changed(BACK + COOL, ("stat.R to fan.A", "stat.R to unknown")),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert NAME not in [found.rule for found in findings(text)]
