"""A unit with a vent damper, whose harness or plug a test puts in other ways."""

from __future__ import annotations

_PARTS = """\
part line is mains: 120 V
part xfmr is transformer
part limit is high-limit
part stat is thermostat
part box is {control}
part vent is {damper}
part valve is gas-valve-3-wire
part pilot is pilot-burner
wire line.L1 to xfmr.L1: black
wire line.N to xfmr.N: white
wire line.G to earth: green
wire xfmr.C to earth: green
plug box to valve: PV, MV, VC to C
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD: green
"""
CALL = "wire xfmr.R to limit to stat to box.TH\n"
FEED = "wire xfmr.R to box.24V\nwire xfmr.C to box.COM\n"
HARNESS = "plug box to vent: D-HOT to HOT, D-CALL to CALL, D-PROVED to PROVED, D-COM to COM\n"


def unit(  # noqa: PLR0913  # all but the first are named
    harness: str = HARNESS,
    *,
    call: str = CALL,
    control: str = "pilot-ignition-control",
    damper: str = "vent-damper",
    parts: str = "",
    feed: str = FEED,
) -> str:
    """A unit with a pilot of two rods and a damper; the harness first."""
    return _PARTS.format(control=control, damper=damper) + parts + call + feed + harness


def crossed(hot: str, call: str, proved: str, common: str) -> str:
    """The harness with each of the control's terminals on some terminal of the damper."""
    pins = zip(("D-HOT", "D-CALL", "D-PROVED", "D-COM"), (hot, call, proved, common), strict=True)
    return "plug box to vent: " + ", ".join(f"{a} to {b}" for a, b in pins) + "\n"


def without(pin: str) -> str:
    """The harness with one pin left out."""
    return HARNESS.replace(f"{pin}, ", "").replace(f", {pin}", "")
