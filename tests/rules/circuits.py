"""Small right circuits without a burner, whose leads tests exchange for others."""

from __future__ import annotations

#: A fan relay on its own transformer; every lead in a line of its own.
FAN = """\
part xfmr is transformer
part stat is thermostat
part fan is relay
wire xfmr.R to stat.R
wire stat.W to fan.A
wire fan.B to xfmr.C
wire xfmr.C to earth: green
"""

#: The same with the line in front of it.
FED = (
    """\
part line is mains: 120 V
wire line.L1 to xfmr.L1: black
wire line.N to xfmr.N: white
wire line.G to earth: green
"""
    + FAN
)

#: A circulator behind a service switch.
PUMP = """\
part line is mains: 120 V
part disc is service-switch
part pump is circulator
wire line.L1 to disc to pump.L: black
wire line.N to pump.N: white
wire line.G to earth: green
"""


def changed(text: str, *replacements: tuple[str, str]) -> str:
    """A text with pieces replaced, each of which has to be there."""
    for old, new in replacements:
        assert old in text, old
        text = text.replace(old, new)
    return text


def without(text: str, *lines: str) -> str:
    """A text without some of its lines."""
    return changed(text, *((f"{line}\n", "") for line in lines))
