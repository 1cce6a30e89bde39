"""Line volts on a tap for others."""

from __future__ import annotations

import pytest

from tests.rules.circuits import changed
from tests.rules.raised import findings, mended, only, raised
from wirecheck.model.finding import Breaks

NAME = "wrong-primary-tap"


def fed(line: str, primary: str, hot: str, neutral: str, tap: str = "L1") -> str:
    """A transformer between two legs of a line."""
    return f"""\
part line is mains: {line}
part xfmr is transformer: primary {primary}
part stat is thermostat
part fan is relay
wire line.{hot} to xfmr.{tap}: black
wire line.{neutral} to xfmr.N
wire line.G to earth: green
wire xfmr.R to stat to fan to xfmr.C
wire xfmr.C to earth: green
"""


@pytest.mark.parametrize(
    ("unit", "fault", "volts", "breaks"),
    [
        (fed("120 V", "240 V", "L1", "N"), "too-low", "12 V", Breaks.OPERATION),
        (fed("208 V", "240 V", "L1", "L2"), "too-low", "20.8 V", Breaks.OPERATION),
        (fed("240 V", "208 V", "L1", "L2"), "too-high", "27.7 V", Breaks.OPERATION),
        (fed("240 V", "120 V", "L1", "L2"), "too-high", "48 V", Breaks.SAFETY),
        (fed("208 V, three-phase", "240 V", "L1", "N"), "too-low", "12 V", Breaks.OPERATION),
    ],
)
def test_the_secondary_volts_decide(unit: str, fault: str, volts: str, breaks: Breaks) -> None:
    found = only(unit)
    assert (found.rule, found.fault, found.breaks) == (NAME, fault, breaks)
    assert f"so {volts} come out instead of 24 V" in found.message


def test_a_wrong_tap_is_told_in_full_and_mended() -> None:
    unit = fed("208 V", "120/208/240 V", "L1", "L2", "240V")
    found = only(unit)
    assert found.span.text == "xfmr.240V"
    assert found.message == (
        "the 240 V primary of xfmr gets 208 V at xfmr.240V, so 20.8 V come out instead of 24 V: "
        "move the lead to xfmr.208V"
    )
    assert raised(mended(unit)) == []


@pytest.mark.parametrize(
    ("unit", "seen"),
    [
        (fed("240 V", "208 V", "L1", "L2"), "Coils and controls run hot."),
        (fed("240 V", "120 V", "L1", "L2"), "Coils and controls burn out."),
    ],
)
def test_what_too_many_volts_do_depends_on_how_many(unit: str, seen: str) -> None:
    assert only(unit).seen_at_unit == seen


SILENT = {
    "the right tap": fed("240 V", "120/240 V", "L1", "L2", "240V"),
    "one leg of a split phase has half the volts": fed("240 V", "120 V", "L1", "N"),
    "a leg of a 208 V star has 120 V": fed("208 V", "120 V", "L1", "N"),
    "115 and 120 V are one nominal voltage": fed("115 V", "120 V", "L1", "N"),
    "220 and 240 V count as one": fed("220 V", "240 V", "L1", "N"),
    "volts that nobody typed are not judged": changed(
        fed("240 V", "120 V", "L1", "N"), ("mains: 240 V", "mains: single-phase")
    ),
    "nor is a primary whose volts nobody typed": changed(
        fed("240 V", "120 V", "L1", "L2"), ("transformer: primary 120 V", "transformer")
    ),
    "a switch before it changes nothing": changed(
        fed("240 V", "240 V", "L1", "L2"),
        ("part stat", "part disc is service-switch\npart stat"),
        ("line.L1 to", "line.L1 to disc to"),
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert [found.rule for found in findings(unit)] == []


def test_a_kind_of_ones_own_states_the_volts_too() -> None:
    unit = "kind big is transformer: primary 240 V\n" + changed(
        fed("120 V", "240 V", "L1", "N"), ("transformer: primary 240 V", "big")
    )
    assert only(unit).fault == "too-low"
