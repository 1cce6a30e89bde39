"""Loads behind both throws of a relay contact."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FED, changed
from tests.rules.raised import findings
from wirecheck.model.finding import Breaks

NAME = "fed-over-both-throws"
BLOWER = (
    FED
    + """\
part air is blower: two-speed
part plenum is fan-limit-control: link removed
wire line.L1 to fan.COM: black
wire fan.NO to air.HI: black
wire fan.NC to plenum.FAN-1..FAN-2 to air.LO: red
wire line.N to air.N: white
"""
)


def test_the_hot_lead_on_a_throw_is_told_in_full() -> None:
    text = changed(
        BLOWER,
        ("line.L1 to fan.COM", "line.L1 to fan.NC"),
        ("fan.NC to plenum", "fan.COM to plenum"),
    )
    (found,) = (each for each in findings(text) if each.rule == NAME)
    assert (found.fault, found.breaks, found.terminals[0]) == ("both", Breaks.OPERATION, "air.HI")
    assert found.message == (
        "air.HI would be fed over two throws of fan that are never closed together: the supply "
        "belongs on fan.COM, and each throw to what it is to feed"
    )
    assert found.seen_at_unit == "air never runs at air.HI, whatever fan does."


def test_the_slow_speed_likewise() -> None:
    text = changed(
        BLOWER,
        ("line.L1 to fan.COM", "line.L1 to fan.NO"),
        ("fan.NO to air.HI", "fan.COM to air.HI"),
    )
    found = [each.terminals[0] for each in findings(text) if each.rule == NAME]
    assert found == ["air.LO"]


SILENT = {
    "the supply on the pole": BLOWER,
    "a relay of one throw": FED
    + "part pump is circulator\nwire line.L1 to fan.COM..NO to pump to line.N\n",
    "two relays, the resting contact of one and the working one of the other": FED
    + "part aid is relay\npart pump is circulator\nwire stat.Y to aid to xfmr.C\n"
    "wire line.L1 to fan.COM..NO to aid.COM..NC to pump to line.N\n",
    "two relays that change places": FED
    + "part aid is relay\npart pump is circulator\nwire stat.Y to aid to xfmr.C\n"
    "wire line.L1 to fan.COM\nwire fan.NO to aid.NO\nwire fan.NC to aid.NC\n"
    "wire aid.COM to pump to line.N\n",
    "a load that is not wired": FED + "part pump is circulator\n",
    "not traced": changed(BLOWER, ("line.L1 to fan.COM", "unknown to fan.COM")),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
