"""The heater that is corrected in the tests, right and with mistakes."""

from wirecheck import load_text
from wirecheck.model.diagram import Diagram

#: Right; a comment and an odd indent that must stay where they are.
HEATER = """\
diagram "Bench heater"
# parts
part xfmr is transformer
part limit is high-limit
part stat is thermostat
part box is pilot-ignition-control: two-rod
part valve is gas-valve-3-wire
part pilot is pilot-burner: two-rod
  wire xfmr.R to limit to stat to box.TH: red   # the call
wire xfmr.C to box.COM: blue
wire xfmr.C to earth: green
plug box to valve: PV, MV, VC to C
wire box.SPARK to pilot.SPARK: ignition-cable
wire box.SENSE to pilot.ROD: yellow
wire box.GND to pilot.HOOD: green
"""


def heater(*changes: tuple[str, str]) -> Diagram:
    """The heater with pieces of its text replaced."""
    text = HEATER
    for old, new in changes:
        assert text.count(old) == 1
        text = text.replace(old, new)
    built = load_text(text, "heater.wiring")
    assert not built.problems
    return built.diagram


def pilot(*changes: tuple[str, str]) -> Diagram:
    """The ignition leads alone, as somebody may sketch them: small enough to try every edit."""
    return heater(
        ("part xfmr is transformer\n", ""),
        ("part limit is high-limit\n", ""),
        ("part stat is thermostat\n", ""),
        ("part valve is gas-valve-3-wire\n", ""),
        ("  wire xfmr.R to limit to stat to box.TH: red   # the call\n", ""),
        ("wire xfmr.C to box.COM: blue\n", ""),
        ("wire xfmr.C to earth: green\n", ""),
        ("plug box to valve: PV, MV, VC to C\n", ""),
        *changes,
    )


SENSE_ON_SPARK = ("box.SENSE to", "box.SPARK to")
VALVE_SWAPPED = ("PV, MV, VC", "PV to MV, MV to PV, VC")
NO_BURNER_GROUND = ("wire box.GND to pilot.HOOD: green\n", "")
LIMIT_BRIDGED = ("wire xfmr.C to earth", "jumper limit.1 to limit.2\nwire xfmr.C to earth")
LINK_FITTED = ("control: two-rod", "control: two-rod, sense-link fitted")
