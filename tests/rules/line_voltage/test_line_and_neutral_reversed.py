"""The neutral on the hot terminal."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FED, PUMP, changed
from tests.rules.raised import findings, mended, only, raised
from wirecheck.model.finding import Breaks

NAME = "line-and-neutral-reversed"
AT_LINE = changed(
    PUMP,
    ("line.L1 to disc", "line.x to disc"),
    ("line.N to pump", "line.L1 to pump"),
    ("line.x", "line.N"),
)
PLAIN = changed(FED, ("to xfmr.L1", "to xfmr.x"), ("to xfmr.N", "to xfmr.L1"), ("xfmr.x", "xfmr.N"))


def test_a_plain_primary_does_not_care() -> None:
    found = only(PLAIN)
    assert (found.rule, found.fault, found.breaks) == (NAME, "plain", Breaks.WORKMANSHIP)
    assert found.message == (
        "line and neutral are reversed at xfmr: xfmr.L1 has line.N, xfmr.N has line.L1; exchange "
        "the two leads"
    )


def test_a_switch_beyond_breaks_the_neutral() -> None:
    found = only(AT_LINE)
    assert (found.fault, found.breaks) == ("breaks-neutral", Breaks.SAFETY)
    assert found.message == (
        "line and neutral are reversed before pump: pump.L has line.N, so that disc breaks the "
        "neutral; exchange the leads at the supply"
    )
    assert found.seen_at_unit == "Switched off or blown, pump stops and stays hot."


@pytest.mark.parametrize("unit", [PLAIN, AT_LINE])
def test_the_edits_mend_it(unit: str) -> None:
    # The colours stay with the leads: what was white is white on the hot terminal now.
    assert {rule for rule, *_ in raised(mended(unit))} <= {"line-lead-colour"}


def test_a_switch_in_the_hot_lead_is_none_in_the_neutral() -> None:
    unit = changed(
        PUMP, ("disc to pump.L", "disc to pump.x"), ("to pump.N", "to pump.L"), ("pump.x", "pump.N")
    )
    assert (only(unit).fault, only(unit).breaks) == ("plain", Breaks.WORKMANSHIP)
    assert raised(mended(unit)) == []


def test_all_devices_on_the_same_two_leads_are_one_finding() -> None:
    unit = AT_LINE + "part draft is inducer\nwire disc.2 to draft.L\nwire draft.N to pump.N\n"
    assert "pump and draft" in only(unit).message


SILENT = {
    "right": PUMP,
    "right at the transformer": FED,
    "two hot legs have no neutral": changed(
        PUMP,
        ("mains: 120 V", "mains: 240 V"),
        ("pump is circulator", "pump is circulator: 240 V"),
        ("line.N to pump.N: white", "line.L2 to pump.L: red"),
        ("disc to pump.L", "disc to pump.N"),
    ),
    "a load without polarity": changed(
        PUMP, ("circulator", "relay: 120 V"), ("pump.L", "pump.B"), ("pump.N", "pump.A")
    ),
    "a line that is not drawn": "part xfmr is transformer\npart fan is relay\n"
    "wire xfmr.R to fan to xfmr.C\nwire xfmr.C to earth\nwire xfmr.L1 to unknown: white\n",
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
