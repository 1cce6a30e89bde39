"""Motors that run though the relay for them is at rest."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FED, changed
from tests.rules.raised import findings, only
from wirecheck.model.finding import Breaks

NAME = "motor-always-on"
PUMP = (
    FED
    + """\
part pump is circulator
wire line.L1 to fan.COM: black
wire fan.NO to pump.L: black
wire line.N to pump.N: white
"""
)
PAST = changed(PUMP, ("fan.NO to pump.L", "xfmr.L1 to pump.L"))


def test_a_lead_from_before_the_contact_is_told_in_full() -> None:
    found = only(PAST)
    assert (found.rule, found.fault, found.breaks) == (NAME, "past-contact", Breaks.OPERATION)
    assert found.message == (
        "pump is fed at pump.L with nothing calling for it, and fan.NO of fan has no lead: feed "
        "pump.L from fan.NO"
    )
    assert found.seen_at_unit == "pump runs as long as there is power."


BOILER = """\
part line is mains: 120 V
part boiler is boiler-control
part stat is thermostat
part pump is circulator
wire line.L1 to boiler.L1: black
wire line.N to boiler.N: white
wire line.G to earth: green
wire boiler.R to stat to boiler.W
wire boiler.PUMP to pump.L: black
wire boiler.PUMP-N to pump.N: white
"""


def test_a_pump_fed_past_its_boiler_control() -> None:
    found = only(changed(BOILER, ("boiler.PUMP to pump.L", "boiler.L1 to pump.L")))
    assert (found.rule, found.terminals) == (NAME, ("pump.L", "boiler.PUMP"))


FURNACE = (
    FED
    + """\
part plenum is fan-limit-control: link removed
part air is blower: one-speed
wire line.L1 to plenum.FAN-1..FAN-2 to air.L: black
wire line.N to air.N: white
"""
)


def test_a_blower_fed_past_its_fan_contact() -> None:
    found = only(
        changed(
            FURNACE, ("plenum.FAN-1..FAN-2 to air.L", "plenum.FAN-1: black\nwire line.L1 to air.L")
        )
    )
    assert (found.rule, found.terminals) == (NAME, ("air.L", "plenum.FAN-2"))


TWO = (
    changed(FED, ("part fan is relay", "part fan is contactor: poles 2"))
    + """\
part pump is circulator
part air is blower: one-speed
wire line.L1 to fan.1.COM..1.NO to pump.L: black
wire line.L1 to fan.2.COM..2.NO to air.L: black
wire line.N to pump.N to air.N: white
"""
)


def test_a_blower_past_its_pole_and_a_pump_over_both() -> None:
    found = only(
        changed(
            TWO,
            ("line.L1 to fan.1.COM", "fan.2.NO to fan.1.COM"),
            (
                "line.L1 to fan.2.COM..2.NO to air.L",
                "line.L1 to fan.2.COM: black\nwire line.L1 to air.L",
            ),
        )
    )
    assert (found.rule, found.fault) == (NAME, "pump-elsewhere")
    assert found.message == (
        "air is fed at air.L with nothing calling for it, and fan.2.NO of fan, which could start "
        "it, feeds something else: exchange the leads of air.L and fan.2.NO"
    )


SILENT = {
    "a pole for each motor": TWO,
    "a blower behind its fan contact": FURNACE,
    "slow at rest and fast on a call that is not wired": (
        FED + "part air is blower\nwire line.L1 to fan.COM: black\nwire fan.NC to air.LO: red\n"
        "wire line.N to air.N: white\n"
    ),
    "an exhaust fan that always runs, and a pump without its lead": changed(
        PAST, ("wire xfmr.L1 to pump.L: black\n", "")
    )
    + "part exhaust is blower: one-speed\nwire line.L1 to exhaust to line.N\n",
    "through the contact": PUMP,
    "a second relay in parallel": (
        PAST + "part aid is relay\nwire stat.W to aid to xfmr.C\nwire line.L1 to aid.COM\n"
        "wire aid.NO to pump.L\n"
    ).replace("wire xfmr.L1 to pump.L: black\n", ""),
    "a pump that runs all the time, no contact idle": changed(
        PAST, ("wire line.L1 to fan.COM: black\n", "")
    ),
    "a pump behind a switch": PUMP + "part disc is service-switch\n",
    "fed by its boiler control": BOILER,
    "not traced": changed(PUMP, ("fan.NO to pump.L", "unknown to pump.L")),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
