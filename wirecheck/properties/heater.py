"""The heater that the properties are explained on: right, and with one thing done wrong."""

from __future__ import annotations

from typing import Final

HEATER: Final = """\
diagram "Heater"
part line is mains: 120 V
part xfmr is transformer: primary 120 V, secondary 24 V, rating 40 VA
part limit is high-limit
part rollout is rollout-switch
part stat is thermostat
part box is pilot-ignition-control: two-rod
part valve is gas-valve-3-wire: pilot 0.2 A, main 0.4 A
part pilot is pilot-burner: two-rod
wire line.L1 to xfmr.L1: black
wire line.N to xfmr.N: white
wire line.G to earth: green
wire xfmr.R to limit to rollout to stat to box.TH: red
wire xfmr.C to box.COM: blue
wire xfmr.C to earth: green
plug box to valve: PV, MV, VC to C
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD: yellow
wire box.GND to pilot.HOOD: green
"""

#: The same with a damper in its flue.
HEATER_WITH_DAMPER: Final = HEATER.replace(
    "wire line.L1",
    """\
part spill is spill-switch
part vent is vent-damper
wire xfmr.R to box.24V: red
plug box to vent: D-HOT to HOT, D-CALL to CALL, D-PROVED to PROVED, D-COM to COM
wire line.L1""",
    1,
).replace("rollout to stat", "rollout to spill to stat")

#: The same without its valve, as somebody may sketch the ignition alone.
HEATER_WITHOUT_VALVE: Final = "".join(
    line for line in HEATER.splitlines(keepends=True) if "valve" not in line
)


def otherwise(old: str, new: str, heater: str = HEATER) -> str:
    """The heater with a piece of its text replaced.

    Raises:
        ValueError: the piece is not there, or more than once.
    """
    if heater.count(old) != 1:
        raise ValueError(f"{heater.count(old)} times in the heater: {old!r}")
    return heater.replace(old, new)
