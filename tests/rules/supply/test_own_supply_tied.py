"""Call terminals with their own 24 V, fed from another transformer."""

from __future__ import annotations

import pytest

from tests.rules.circuits import changed
from tests.rules.raised import findings, only
from wirecheck.model.finding import Breaks

NAME = "own-supply-tied"

DRY = """\
part xfmr is transformer
part stat is thermostat
part zone is zone-valve
part boiler is boiler-call
wire xfmr.R to stat to zone to xfmr.C
wire xfmr.C to earth: green
wire boiler.1 to zone.E1
wire zone.E2 to boiler.2
"""
TIED = (
    changed(
        DRY,
        ("boiler.1 to zone.E1", "xfmr.R to zone.E1"),
        ("zone.E2 to boiler.2", "zone.E2 to boiler.1"),
    )
    + "wire xfmr.C to boiler.2\n"
)


def test_end_switches_fed_from_the_zone_transformer_are_told_in_full() -> None:
    found = only(TIED)
    assert (found.rule, found.breaks, found.span.text) == (NAME, Breaks.SAFETY, "xfmr.R")
    assert found.message == (
        "xfmr feeds boiler.1 and boiler.2, which have 24 V of their own behind them: take the "
        "lead xfmr.R to zone.E1 off, and let the contacts join boiler.1 to boiler.2 with nothing "
        "else on them"
    )


LOUD = {
    "the other way round": changed(
        TIED,
        ("zone.E2 to boiler.1", "zone.E2 to boiler.2"),
        ("xfmr.C to boiler.2", "xfmr.C to boiler.1"),
    ),
    "behind a switching relay": changed(
        TIED,
        ("boiler is boiler-call", "boiler is switching-relay"),
        ("zone.E2 to boiler.1", "zone.E2 to boiler.W"),
        ("xfmr.C to boiler.2", "xfmr.C to boiler.R"),
    ),
}


@pytest.mark.parametrize("unit", LOUD.values(), ids=LOUD)
def test_other_ways_of_tying_are_found(unit: str) -> None:
    assert NAME in [found.rule for found in findings(unit)]


SILENT = {
    "dry contacts are right": DRY,
    "two zones in parallel are right": DRY
    + "part stat2 is thermostat\npart zone2 is zone-valve\n"
    + "wire xfmr.R to stat2 to zone2 to xfmr.C\n"
    + "wire boiler.1 to zone2.E1..E2 to boiler.2\n",
    "tied on one side alone is harmless": DRY + "wire xfmr.C to boiler.2\n",
    "a three-wire zone valve ties one side": """\
part xfmr is transformer
part stat is thermostat
part zone is zone-valve-3-wire
part boiler is boiler-call
wire xfmr.R to zone.ME
wire zone.M to stat to xfmr.C
wire zone.ME to boiler.1
wire zone.E to boiler.2
""",
    "the boiler's own thermostat terminals, closed by a thermostat": """\
part boiler is boiler-control
part stat is thermostat
wire boiler.R to stat to boiler.W
""",
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]


SHARED = """\
part x is transformer
part s is thermostat
part a is zone-valve
part b is boiler-call
wire x.R to s to a to x.C
wire b.1 to a.E1..E2 to b.2
"""


def test_the_lead_from_the_other_supply_is_named_and_not_that_of_the_end_switch() -> None:
    found = only(SHARED + "wire b.1 to s.W\nwire b.2 to x.C\n")
    assert (found.rule, found.span.text) == (NAME, "s.W")
    assert "take the lead b.1 to s.W off" in found.message


def test_an_end_switch_may_share_one_lead_with_the_other_supply() -> None:
    assert findings(SHARED) == ()
    assert NAME not in [found.rule for found in findings(SHARED + "wire b.2 to x.C\n")]
