"""Relays whose contact is in line with a fan contact, and open on a call for heat."""

from __future__ import annotations

import pytest

from tests.rules.circuits import changed
from tests.rules.raised import findings, only
from wirecheck.model.finding import Breaks

NAME = "fan-contact-cut-off"
FURNACE = """\
part line is mains: 120 V
part xfmr is transformer
part plenum is fan-limit-control: link removed
part stat is thermostat
part fan is relay
part air is blower: two-speed
part box is pilot-ignition-control
wire line.L1 to xfmr.L1: black
wire line.L1 to fan.COM..NO to air.HI: black
wire fan.NC to plenum.FAN-1..FAN-2 to air.LO: red
wire line.N to xfmr.N to air.N: white
wire line.G to earth: green
wire xfmr.R to stat to plenum.LIMIT-1..LIMIT-2 to box.TH
wire stat.G to fan.A
wire fan.B to xfmr.C to box.COM
wire box.GND to earth: green
"""


def test_the_relay_on_the_call_for_heat_is_told_in_full() -> None:
    found = only(changed(FURNACE, ("stat.G to fan.A", "stat.W to fan.A")))
    assert (found.rule, found.fault, found.breaks) == (NAME, "cut-off", Breaks.OPERATION)
    assert found.message == (
        "fan is pulled in on a call for heat, and takes air.LO off with fan.COM..NC, which plenum "
        "is to start for heat: put the coil of fan on the call for the fan or for cooling"
    )
    assert found.seen_at_unit == ("The blower does not run at that speed when the plenum is hot.")
    assert found.leads == ("stat.W to fan.A", "fan.B to xfmr.C")


@pytest.mark.parametrize(
    ("end", "when"),
    [
        ("xfmr.R", "all the time"),
        ("plenum.LIMIT-2", "on a call for heat"),
        ("box.TH", "on a call for heat"),
    ],
)
def test_elsewhere_in_the_call_likewise(end: str, when: str) -> None:
    found = only(changed(FURNACE, ("stat.G to fan.A", f"{end} to fan.A")))
    assert (found.rule, found.terminals) == (NAME, ("fan.A", "fan.B", "stat.G"))
    assert f"pulled in {when}" in found.message


def test_the_throws_exchanged() -> None:
    found = only(
        changed(
            FURNACE, ("fan.COM..NO to air.HI", "fan.COM..NC to air.HI"), ("fan.NC to", "fan.NO to")
        )
    )
    assert (found.rule, found.fault) == (NAME, "waits")
    assert found.message == (
        "plenum is to start air.LO for heat, and fan.COM..NO stands in line, which is open on a "
        "call for heat: put plenum on the contact of fan that is closed at rest"
    )


def test_the_speeds_exchanged() -> None:
    text = changed(FURNACE, ("air.HI", "air.X"), ("air.LO", "air.HI"), ("air.X", "air.LO"))
    found = only(text)
    assert (found.rule, found.fault) == (NAME, "slower")
    assert found.message == (
        "fan takes air.HI off with fan.COM..NC, which plenum starts for heat, and gives air.LO "
        "instead: exchange the leads of air.HI and air.LO, so that the relay gives the fast speed"
    )


SILENT = {
    "fast for heat, slowly by a relay that gives way to it": changed(
        FURNACE,
        ("fan.COM..NO to air.HI", "plenum.FAN-1..FAN-2 to air.HI"),
        ("wire fan.NC to plenum.FAN-1..FAN-2 to air.LO: red\n", ""),
    ),
    "on the fan": FURNACE,
    "on the call for cooling": changed(FURNACE, ("stat.G to fan.A", "stat.Y to fan.A")),
    "behind a switch for the summer": changed(
        FURNACE, ("stat.G to fan.A", "xfmr.R to summer to fan.A")
    )
    + "part summer is service-switch\n",
    "behind a control of its own": changed(FURNACE, ("stat.G to fan.A", "xfmr.R to damp to fan.A"))
    + "part damp is operating-control\n",
    "on another thermostat, which cools": changed(
        FURNACE, ("stat.G to fan.A", "xfmr.R to cool to fan.A")
    )
    + "part cool is thermostat\n",
    "the slow speed beside the relay": changed(
        FURNACE, ("stat.G to fan.A", "stat.W to fan.A"), ("fan.NC to", "line.L1 to")
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
