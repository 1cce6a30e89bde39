"""Units whose call, common, supply or valve leads a test puts in other ways."""

from __future__ import annotations

_PARTS = """\
part line is mains: 120 V
part xfmr is transformer
part limit is high-limit
part rollout is rollout-switch
part stat is thermostat
part box is pilot-ignition-control
part valve is gas-valve-3-wire
part pilot is pilot-burner
"""
_BURNER = """\
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD
wire box.GND to pilot.HOOD: green
"""
CALL = "wire xfmr.R to limit to rollout to stat to box.TH\n"
_ZONES = """\
part line is mains: 120 V
part xfmr is transformer
part stat-1 is thermostat
part stat-2 is thermostat
part zone-1 is zone-valve
part zone-2 is zone-valve
part boiler is boiler-call
wire line.L1 to xfmr.L1: black
wire line.N to xfmr.N: white
wire line.G to earth: green
wire xfmr.C to zone-1.M2 to zone-2.M2
wire xfmr.C to earth: green
"""


def unit(  # noqa: PLR0913  # all but the first are named
    call: str = CALL,
    *,
    parts: str = "",
    line: str = "wire line.L1 to xfmr.L1: black\n",
    common: str = "wire xfmr.C to box.COM\n",
    earth: str = "wire xfmr.C to earth: green\n",
    valve: str = "plug box to valve: PV, MV, VC to C\n",
    ground: str = "",
) -> str:
    """A unit with a pilot of two rods, a limit and a rollout switch; its call lead first."""
    rest = "wire line.N to xfmr.N: white\nwire line.G to earth: green\n"
    return _PARTS + parts + line + rest + call + common + earth + valve + _BURNER + ground


def zones(
    motors: str = ("wire xfmr.R to stat-1 to zone-1.M1\nwire xfmr.R to stat-2 to zone-2.M1\n"),
    *,
    parts: str = "",
    ends: str = (
        "wire boiler.1 to zone-1.E1..E2 to boiler.2\nwire boiler.1 to zone-2.E1..E2 to boiler.2\n"
    ),
) -> str:
    """A boiler called by the end switches of two zone valves."""
    return _ZONES + parts + motors + ends
