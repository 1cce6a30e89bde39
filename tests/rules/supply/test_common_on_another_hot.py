"""Supplies tied in line."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FED
from tests.rules.raised import findings
from wirecheck.model.finding import Breaks

NAME = "common-on-another-hot"
OTHER = """\
part other is transformer
part aid is relay
wire line.L1 to other.L1: black
wire line.N to other.N: white
wire other.R to aid to other.C
"""
TIED = FED + OTHER + "wire other.C to stat.W\n"


def test_a_common_on_a_switched_lead_is_told_in_full() -> None:
    (found,) = (each for each in findings(TIED) if each.rule == NAME)
    assert (found.fault, found.breaks) == ("floating", Breaks.WORKMANSHIP)
    assert found.message == (
        "the way over other.C to stat.W and xfmr.R to stat.R brings the common other.C of other to "
        "xfmr.R, the hot side of xfmr: take it apart, so that each feeds its own circuit"
    )
    assert found.seen_at_unit == (
        "It works as long as other is earthed nowhere; with an earth on it one of the two is "
        "shorted."
    )


def test_a_common_on_the_hot_side_itself() -> None:
    assert NAME in [found.rule for found in findings(FED + OTHER + "wire other.C to xfmr.R\n")]


def test_both_earthed_is_a_short() -> None:
    text = TIED + "part pilot is pilot-burner: one-rod\nwire other.C to pilot.HOOD: green\n"
    found = [found for found in findings(text) if found.rule == NAME]
    assert [(each.fault, each.breaks) for each in found] == [("in-line", Breaks.SAFETY)]


SILENT = {
    "each by itself": FED + OTHER,
    "both earthed": FED + OTHER + "wire other.C to earth: green\n",
    "commons joined": FED + OTHER + "wire other.C to xfmr.C: blue\n",
    "over a coil": FED
    + OTHER
    + "part more is relay\nwire other.C to more.A\nwire more.B to stat.W\n",
    "a contact of the one in the circuit of the other": FED
    + OTHER.replace("other.R to aid", "other.R to fan.COM..NO to aid"),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert NAME not in [found.rule for found in findings(text)]
