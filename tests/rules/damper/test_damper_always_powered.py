"""The damper's motor on constant power."""

from __future__ import annotations

import pytest

from tests.rules.damper.units import CALL, HARNESS, unit
from tests.rules.raised import mended, only, raised
from wirecheck.model.finding import Breaks

CONSTANT = HARNESS.replace("D-CALL to CALL", "D-HOT to CALL")


def test_it_is_told_in_full() -> None:
    found = only(unit(CONSTANT))
    assert (found.rule, found.fault, found.span.text) == (
        "damper-always-powered",
        "constant",
        "CALL",
    )
    assert found.message == "vent.CALL is on constant 24 V: feed it from box.D-CALL"
    assert found.seen_at_unit == (
        "The damper never shuts, and its end switch feeds the control with no call: the burner "
        "fires as soon as there is power."
    )
    assert found.breaks is Breaks.SAFETY


def test_from_the_transformer_itself_likewise() -> None:
    harness = HARNESS.replace("D-CALL to CALL, ", "") + "wire xfmr.R to vent.CALL\n"
    assert only(unit(harness)).rule == "damper-always-powered"


def test_with_its_lead_back_elsewhere_it_only_stays_open() -> None:
    harness = CONSTANT.replace("D-PROVED to PROVED", "D-COM to PROVED")
    found = [f for f in raised(unit(harness)) if f[0] == "damper-always-powered"]
    assert found == [("damper-always-powered", "constant", "CALL")]


def test_constant_power_beside_the_right_lead_is_one_mistake_at_its_lead() -> None:
    """It bypasses thermostat and limit as well: that follows, and the right leads stay."""
    text = unit(HARNESS + "wire box.24V to vent.CALL\n")
    found = only(text)
    assert (found.rule, found.fault, found.span.text) == (
        "damper-always-powered",
        "beside-call",
        "box.24V to vent.CALL",
    )
    assert found.breaks is Breaks.SAFETY
    assert raised(mended(text)) == []
    assert only(unit(HARNESS + "jumper vent.HOT to vent.CALL\n")).fault == "beside-call"


SILENT = {
    "fed by the call": unit(),
    "beside it a lead to a hot terminal that nothing feeds": unit(
        feed="wire xfmr.C to box.COM\nwire box.24V to vent.CALL\n"
    ),
    "fed by the call from the call terminal": unit(
        HARNESS.replace("D-CALL to CALL, ", "") + "wire box.TH to vent.CALL\n"
    ),
    "its hot terminal is on constant power": unit(
        HARNESS.replace("D-HOT to HOT, ", "") + "wire xfmr.R to vent.HOT\n"
    ),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert "damper-always-powered" not in [rule for rule, _fault, _text in raised(text)]


def test_a_call_straight_from_the_hot_side_is_told_of_the_call() -> None:
    text = unit(call=CALL + "wire xfmr.R to box.TH\n")
    assert [rule for rule, _fault, _text in raised(text)] == ["hot-straight-to-call"]
