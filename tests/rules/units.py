"""Right units of each ignition system, whose leads tests exchange for others."""

from __future__ import annotations

_HEAD = """\
part line is mains: 120 V
part xfmr is transformer
part limit is high-limit
part stat is thermostat
"""
_LEADS = """\
wire line.L1 to xfmr.L1: black, 14 AWG
wire line.N to xfmr.N: white, 14 AWG
wire line.G to earth: green
wire xfmr.R to limit to stat to box.TH: red
wire xfmr.C to box.COM: blue
wire xfmr.C to earth: green
"""
SPARK = "wire box.SPARK to pilot.SPARK: ignition-cable\n"
SENSE = "wire box.SENSE to pilot.ROD\n"
GROUND = "wire box.GND to pilot.HOOD: green\n"


_TWO_ROD = {
    "control": "pilot-ignition-control",
    "valve_is": "gas-valve-3-wire",
    "burner": "pilot-burner: two-rod",
    "spark": SPARK,
    "sense": SENSE,
    "ground": GROUND,
    "valve": "plug box to valve: PV, MV, VC to C\n",
    "more": "",
}
_ONE_ROD = _TWO_ROD | {"burner": "pilot-burner: one-rod", "sense": ""}
_DIRECT = _TWO_ROD | {
    "control": "direct-ignition-control",
    "valve_is": "gas-valve-2-wire",
    "burner": "direct-burner",
    "valve": "wire box.V to valve.1\nwire box.VC to valve.C\n",
}


def two_rod(**other: str) -> str:
    """A unit with an intermittent pilot of two rods; each argument puts other lines in place.

    ``control``, ``valve_is`` and ``burner`` say what the parts are; ``spark``, ``sense``,
    ``ground`` and ``valve`` are the leads; ``more`` comes on top.
    """
    return _unit(_TWO_ROD, other)


def one_rod(**other: str) -> str:
    """A unit with an intermittent pilot of one rod."""
    return _unit(_ONE_ROD, other)


def direct(**other: str) -> str:
    """A unit that lights its main burner directly; the burner is called ``pilot`` here too."""
    return _unit(_DIRECT, other)


def _unit(usual: dict[str, str], other: dict[str, str]) -> str:
    assert other.keys() <= usual.keys()
    told = usual | other
    parts = (("box", "control"), ("valve", "valve_is"), ("pilot", "burner"))
    leads = ("spark", "sense", "ground", "valve", "more")
    return "".join(
        [
            _HEAD,
            *(f"part {name} is {told[what]}\n" for name, what in parts),
            _LEADS,
            *(told[what] for what in leads),
        ]
    )


def beside(
    *,
    spark: str = "wire box2.SPARK to pilot2.SPARK: ignition-cable\n",
    ground: str = "wire box2.GND to pilot2.HOOD: green\n",
    valve: str = "plug box2 to valve2: PV, MV, VC to C\n",
) -> str:
    """The lines of a second unit, of one rod, on the transformer of the first."""
    return (
        "part limit2 is high-limit\n"
        "part stat2 is thermostat\n"
        "part box2 is pilot-ignition-control\n"
        "part valve2 is gas-valve-3-wire\n"
        "part pilot2 is pilot-burner: one-rod\n"
        "wire xfmr.R to limit2 to stat2 to box2.TH: red\n"
        "wire xfmr.C to box2.COM: blue\n"
    ) + (spark + ground + valve)
