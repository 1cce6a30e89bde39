"""Relays whose own resting contact feeds their coil."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FED, changed
from tests.rules.raised import findings, only
from wirecheck.model.finding import Breaks

NAME = "relay-cuts-itself-off"
LAMP = (
    FED
    + """\
part shine is lamp: 24 V
wire xfmr.R to fan.COM
wire fan.NC to shine to xfmr.C
"""
)


def test_a_coil_behind_its_own_resting_contact_is_told_in_full() -> None:
    found = only(changed(LAMP, ("xfmr.R to stat.R", "fan.NC to stat.R")))
    assert (found.rule, found.fault, found.breaks) == (NAME, "resting", Breaks.OPERATION)
    assert found.message == (
        "the coil of fan is fed through its own resting contact fan.COM..NC: as soon as it pulls "
        "in it lets go again; feed it from ahead of fan.COM..NC"
    )
    assert found.seen_at_unit == (
        "fan chatters for as long as it is called, and what hangs on it with it."
    )


def test_the_supply_of_the_coil_counts() -> None:
    unit = changed(FED, ("line.L1 to xfmr.L1: black", "line.L1 to fan.COM..NC to xfmr.L1: black"))
    assert [found.rule for found in findings(unit)] == [NAME]


SILENT = {
    "a lamp that goes out": LAMP,
    "a relay that holds itself in": changed(
        LAMP, ("fan.NC to shine to xfmr.C", "fan.NO to fan.A")
    ).replace("part shine is lamp: 24 V\n", ""),
    "the resting contact of another relay": LAMP
    + "part aid is relay\nwire stat.W to aid to xfmr.C\n".replace(
        "stat.W to aid", "shine.1 to aid"
    ),
    "beside a lead": changed(LAMP, ("xfmr.R to stat.R", "xfmr.R to stat.R\nwire fan.NC to stat.R"))
    .replace("wire fan.NC to shine to xfmr.C\n", "")
    .replace("part shine is lamp: 24 V\n", ""),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
