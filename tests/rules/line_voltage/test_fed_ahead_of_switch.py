"""What stays live with the switch of its unit off."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FED, changed
from tests.rules.raised import findings, only
from wirecheck.model.finding import Breaks

NAME = "fed-ahead-of-switch"
UNIT = (
    changed(FED, ("line.L1 to xfmr.L1", "line.L1 to disc to xfmr.L1"))
    + """\
part disc is service-switch
part pump is circulator
wire disc.2 to fan.COM: black
wire fan.NO to pump.L: black
wire line.N to pump.N: white
"""
)
PUMP_AHEAD = changed(UNIT, ("disc.2 to fan.COM", "disc.1 to fan.COM"))
XFMR_AHEAD = changed(UNIT, ("to disc to xfmr.L1", "to disc.1: black\nwire line.L1 to xfmr.L1"))


def test_a_pump_tapped_ahead_of_the_switch_is_told_in_full() -> None:
    found = only(PUMP_AHEAD)
    assert (found.rule, found.fault, found.breaks) == (NAME, "tapped", Breaks.SAFETY)
    assert found.message == (
        "pump.L gets its feed from ahead of disc, which switches off the rest of the unit: feed it "
        "from disc.2"
    )
    assert found.seen_at_unit == "With disc off there is line voltage at pump.L."


def test_a_transformer_tapped_ahead_of_the_switch_of_two_motors() -> None:
    found = only(XFMR_AHEAD + "part fill is circulator\nwire fan.NO to fill to line.N\n")
    assert (found.rule, found.terminals[0]) == (NAME, "xfmr.L1")


def test_a_door_switch_counts_too() -> None:
    found = only(changed(PUMP_AHEAD, ("service-switch", "door-switch: 120 V")))
    assert (found.rule, found.terminals[0]) == (NAME, "pump.L")


SECOND = """\
part xfmr2 is transformer
part stat2 is thermostat
part fan2 is relay
wire line.L1 to xfmr2.L1: black
wire line.N to xfmr2.N: white
wire xfmr2.R to stat2 to fan2 to xfmr2.C
wire xfmr2.C to earth: green
"""
SILENT = {
    "all behind the switch": UNIT,
    "another unit without a switch": UNIT + SECOND,
    "each unit with a switch of its own": UNIT
    + "part disc2 is service-switch\n"
    + changed(SECOND, ("line.L1 to xfmr2.L1", "line.L1 to disc2 to xfmr2.L1")),
    "one stop ahead of the switch": changed(UNIT, ("line.L1 to disc", "line.L1 to stop to disc"))
    + "part stop is emergency-stop: 120 V\n",
    "a pump that has nothing to do with the unit": UNIT
    + "part drain is circulator\nwire line.L1 to drain to line.N\n",
    "a motor between two hot legs": changed(UNIT, ("mains: 120 V", "mains: 240 V"))
    + "part big is load: volts 240 V\nwire disc.2 to big to line.L2\n",
    "a pump with a switch of its own": XFMR_AHEAD,
    "a pump on a breaker of its own": changed(
        UNIT, ("disc.2 to fan.COM", "disc.1 to own to fan.COM")
    )
    + "part own is breaker: 15 A\n",
    "the door opens all": changed(UNIT, ("service-switch", "door-switch: 120 V")),
    "a switch in the 24 V circuit": changed(FED, ("xfmr.R to stat.R", "xfmr.R to hand to stat.R"))
    + "part hand is service-switch\n",
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
