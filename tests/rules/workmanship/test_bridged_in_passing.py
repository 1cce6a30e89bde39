"""Terminals of one part typed one behind the other."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FAN, changed
from tests.rules.raised import findings, mended, only, raised
from wirecheck.model.finding import Breaks

NAME = "bridged-in-passing"
RIGHT = FAN + "part lamp is lamp\nwire xfmr.R to fan.COM..NO to lamp to xfmr.C\n"
WRONG = changed(RIGHT, ("fan.COM..NO", "fan.COM to fan.NO"))


def test_the_form_with_two_dots_is_shown() -> None:
    found = only(WRONG)
    assert (found.rule, found.breaks, found.span.text) == (
        NAME,
        Breaks.OPERATION,
        "fan.COM to fan.NO",
    )
    assert found.message == (
        "as typed, a lead joins fan.COM to fan.NO and bridges fan: if it passes through, write "
        "fan.COM..NO; if the bridge is there, take it out"
    )
    assert raised(mended(WRONG)) == []


def test_a_load_can_be_bridged_too() -> None:
    unit = FAN + "part aux is relay\nwire stat.G to aux.A to aux.B to xfmr.C\n"
    assert NAME in [found.rule for found in findings(unit)]


def test_printed_labels_are_used_in_the_form() -> None:
    unit = (
        changed(WRONG, ("fan.COM to fan.NO", 'fan.COM to fan."4 x"')) + 'labels fan: NO as "4 x"\n'
    )
    assert 'write fan.COM.."4 x"' in only(unit).message
    assert raised(mended(unit)) == []


SILENT = {
    "passed": RIGHT,
    "a jumper says what it is": FAN
    + "part lamp is lamp\nwire xfmr.R to fan.COM\njumper fan.COM to fan.NO\n"
    "wire fan.NO to lamp to xfmr.C\n",
    "two points of a strip have nothing between": FAN
    + "part strip is terminal-strip\nwire fan.A to strip.1 to strip.2 to unknown\n",
    "two feeds of a thermostat have no contact between": changed(
        FAN,
        ("is thermostat", "is thermostat: feeds two"),
        ("xfmr.R to stat.R\n", "xfmr.R to stat.Rh to stat.Rc\n"),
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
