"""One colour on both sides of a supply at one device."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FAN, PUMP, changed
from tests.rules.raised import findings, only
from tests.rules.units import two_rod
from wirecheck.model.finding import Breaks

NAME = "one-colour-both-sides"
COLOURED = changed(
    FAN,
    ("to stat.R", "to stat.R: red"),
    ("to fan.A", "to fan.A: white"),
    ("to xfmr.C\n", "to xfmr.C: blue\n"),
)


def test_it_is_told_in_full() -> None:
    found = only(changed(COLOURED, ("blue", "red")))
    assert (found.rule, found.breaks, found.span.text) == (
        NAME,
        Breaks.WORKMANSHIP,
        "fan.B to xfmr.C",
    )
    assert found.message == (
        "at xfmr xfmr.R is on the hot side and xfmr.C on the common, and both leads are red: mark "
        "one of them"
    )


def test_at_line_voltage() -> None:
    found = only(changed(PUMP, ("white", "black")))
    assert (found.rule, found.terminals) == (NAME, ("line.L1", "line.N"))


SILENT = {
    "each side its colour": COLOURED,
    "both sides of a switch are one circuit": changed(COLOURED, ("white", "red")),
    "one wire through everything was typed with one colour": """\
part xfmr is transformer
part stat is thermostat
part fan is relay
wire xfmr.R to stat to fan to xfmr.C: red
wire xfmr.C to earth: green
""",
    "a green earth and a green call": changed(COLOURED, ("white", "green")),
    "the leads are numbered": changed(
        COLOURED,
        ("xfmr.C: blue", 'xfmr.C: red, number "2"'),
        ("stat.R: red", 'stat.R: red, number "1"'),
    ),
    "a strip gathers what it likes": changed(
        COLOURED, ("xfmr.R to stat.R: red", "xfmr.R to strip.1: red")
    )
    + "part strip is terminal-strip\nwire strip.1 to stat.R\nwire strip.2 to fan.B: red\n",
    "red for the call at the control, blue for its common": two_rod(),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
