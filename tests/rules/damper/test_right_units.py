"""Right dampers of many sorts: nothing at all is said of them."""

from __future__ import annotations

import pytest

from tests.rules.damper.units import CALL, FEED, HARNESS, unit
from tests.rules.raised import raised

RIGHT = {
    "plugged in": unit(),
    "with the plug typed as removed": unit(control="pilot-ignition-control: damper-plug removed"),
    "powered both ways": unit(damper="vent-damper: power-both"),
    "on a direct control": unit()
    .replace("pilot-ignition-control", "direct-ignition-control")
    .replace("plug box to valve: PV, MV, VC to C", "plug box to valve: V to 1, VC to C")
    .replace("gas-valve-3-wire", "gas-valve-2-wire")
    .replace("pilot-burner", "direct-burner"),
    "by single leads, written backwards": unit(
        "wire vent.HOT to box.D-HOT\nwire vent.CALL to box.D-CALL\n"
        "wire vent.PROVED to box.D-PROVED\nwire vent.COM to box.D-COM\n"
    ),
    "power and common straight from the transformer": unit(
        "wire xfmr.R to vent.HOT\nwire xfmr.C to vent.COM\n"
        "wire box.D-CALL to vent.CALL\nwire vent.PROVED to box.D-PROVED\n"
    ),
    "power through a fuse": unit(
        "wire xfmr.R to spare to vent.HOT\nwire box.D-CALL to vent.CALL\n"
        "wire vent.PROVED to box.D-PROVED\nwire box.D-COM to vent.COM\n",
        parts="part spare is fuse\n",
    ),
    "a spill switch in the lead to the motor": unit(
        "wire box.D-HOT to vent.HOT\nwire box.D-CALL to spill to vent.CALL\n"
        "wire vent.PROVED to box.D-PROVED\nwire box.D-COM to vent.COM\n",
        parts="part spill is spill-switch\n",
    ),
    "a spill switch in the lead back": unit(
        "wire box.D-HOT to vent.HOT\nwire box.D-CALL to vent.CALL\n"
        "wire vent.PROVED to spill to box.D-PROVED\nwire box.D-COM to vent.COM\n",
        parts="part spill is spill-switch\n",
    ),
    "in the call lead, with the plug in the control": unit(
        "wire xfmr.R to vent.HOT\nwire xfmr.C to vent.COM\nwire vent.PROVED to box.TH\n",
        call="wire xfmr.R to limit to stat to vent.CALL\n",
        feed="wire xfmr.C to box.COM\n",
    ),
    "with other labels on the control": unit(
        'labels box: D-HOT as "1", D-CALL as "2", D-PROVED as "3", D-COM as "4"\n'
        "plug box to vent: 1 to HOT, 2 to CALL, 3 to PROVED, 4 to COM\n"
    ),
    "beside a second control that has none": unit(
        HARNESS
        + "part box-2 is direct-ignition-control\npart burner-2 is direct-burner\n"
        + "part valve-2 is gas-valve-2-wire\nplug box-2 to valve-2: V to 1, VC to C\n"
        + "wire stat.W to box-2.TH\nwire xfmr.C to box-2.COM\nwire box-2.GND to burner-2.FRAME\n"
        + "wire box-2.SENSE to burner-2.ROD\nwire box-2.SPARK to burner-2.SPARK: ignition-cable\n"
    ),
    "no damper, the plug in": unit("", call=CALL, feed=FEED).replace(
        "part vent is vent-damper\n", ""
    ),
}


@pytest.mark.parametrize("text", RIGHT.values(), ids=RIGHT)
def test_a_right_damper_raises_nothing(text: str) -> None:
    assert raised(text) == []
