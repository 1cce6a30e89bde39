"""Blowers of two speeds fed at both."""

from __future__ import annotations

import pytest

from tests.rules.circuits import changed
from tests.rules.raised import findings, only
from wirecheck.model.finding import Breaks

NAME = "both-speeds-fed"

BLOWER = """\
part line is mains: 120 V
part plenum is fan-limit-control: link removed
part call is thermostat: volts 120 V
part cool is relay: 120 V, poles 2
part air is blower
wire line.L1 to call to cool to line.N
wire line.L1 to cool.1.COM
wire cool.1.NO to air.HI
wire line.L1 to cool.2.COM
wire cool.2.NC to plenum.FAN-1..FAN-2 to air.LO
wire line.N to air.N
wire line.G to earth
"""


def test_both_speeds_on_one_leg_are_told_in_full() -> None:
    found = only(
        "part l is mains\npart b is blower\nwire l.L1 to b.HI\nwire l.L1 to b.LO\n"
        "wire l.N to b.N\nwire l.G to earth\n"
    )
    assert (found.rule, found.fault, found.breaks) == (NAME, "joined", Breaks.OPERATION)
    assert found.message == (
        "b.HI and b.LO are one conductor, and b is made to be fed at one of them: take the lead "
        "off the speed that is not wanted, and cap it"
    )
    assert found.edits == ()


def test_the_fan_contact_on_low_with_no_resting_contact_before_it() -> None:
    unit = changed(
        BLOWER,
        ("wire line.L1 to cool.2.COM\n", ""),
        ("cool.2.NC to plenum", "line.L1 to plenum"),
    )
    found = only(unit)
    assert (found.fault, found.terminals[:2]) == ("together", ("air.HI", "air.LO"))
    assert "plenum.FAN-1" in found.terminals


def test_both_behind_the_same_contact() -> None:
    found = only(
        changed(
            BLOWER,
            ("wire cool.1.NO to air.HI\n", ""),
            ("wire line.L1 to cool.1.COM\n", ""),
            ("cool.2.NC to plenum", "cool.2.NC to air.HI\nwire cool.2.NC to plenum"),
        )
    )
    assert (found.rule, found.fault) == (NAME, "together")


SILENT = {
    "a resting contact of the same relay, on another pole": BLOWER,
    "the contact the other way round": changed(
        BLOWER, ("cool.1.NO", "cool.1.NC"), ("cool.2.NC", "cool.2.NO")
    ),
    "a relay for each speed, kept apart elsewhere": BLOWER.replace("cool.2.", "heat.1.").replace(
        "heat.1.NC", "heat.1.NO"
    )
    + "part heat is relay: poles 2\n",
    "one speed in use": changed(
        BLOWER,
        ("wire line.L1 to cool.2.COM\nwire cool.2.NC to plenum.FAN-1..FAN-2 to air.LO\n", ""),
    ),
    "one speed alone": changed(
        BLOWER, ("is blower", "is blower: one-speed"), ("to air.HI", "to air.L"),
        ("wire line.L1 to cool.2.COM\nwire cool.2.NC to plenum.FAN-1..FAN-2 to air.LO\n", ""),
    ),
    "low fed by what was not traced": changed(
        BLOWER, ("plenum.FAN-1..FAN-2 to air.LO", "unknown\nwire unknown to air.LO")
    ),
}  # fmt: skip


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
