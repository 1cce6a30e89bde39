"""Leads between a damper and its control left out."""

from __future__ import annotations

import pytest

from tests.rules.damper.units import HARNESS, unit, without
from tests.rules.raised import mended, only, raised
from wirecheck.model.finding import Breaks

PINS = {
    "D-HOT to HOT": "hot",
    "D-CALL to CALL": "call",
    "D-PROVED to PROVED": "proved",
    "D-COM to COM": "common",
}


def test_a_missing_lead_back_is_told_in_full() -> None:
    found = only(unit(without("D-PROVED to PROVED")))
    assert (found.rule, found.fault, found.span.text) == ("damper-lead-missing", "proved", "vent")
    assert found.message == "no lead brings the call back from vent.PROVED to box.D-PROVED: run one"
    assert found.seen_at_unit == "The damper opens, and the burner never lights."
    assert found.breaks is Breaks.OPERATION


@pytest.mark.parametrize("pin", PINS)
def test_each_of_the_four_is_missed_and_can_be_run(pin: str) -> None:
    text = unit(without(pin))
    assert only(text).fault == PINS[pin]
    assert raised(mended(text)) == []


@pytest.mark.parametrize(
    ("action", "fault", "breaks", "seen"),
    [
        ("spring-shut", "", Breaks.WORKMANSHIP, "It works all the same"),
        ("power-both", "-to-shut", Breaks.OPERATION, "The burner lights; the damper stays open"),
        ("spring-open", "-to-shut", Breaks.OPERATION, "The burner lights; the damper stays open"),
    ],
)
def test_constant_power_is_for_shutting_where_no_spring_does_it(
    action: str, fault: str, breaks: Breaks, seen: str
) -> None:
    damper = f"vent-damper: action {action}"
    no_lead = only(unit(without("D-HOT to HOT"), damper=damper))
    unfed = only(unit(damper=damper, feed="wire xfmr.C to box.COM\n"))
    assert (no_lead.fault, unfed.fault) == (f"hot{fault}", f"feed{fault}")
    for found in (no_lead, unfed):
        assert found.rule == "damper-lead-missing"
        assert found.breaks is breaks
        assert found.seen_at_unit.startswith(seen)


def test_a_damper_with_a_feed_of_its_own_leaves_the_control_s_terminal_empty() -> None:
    harness = without("D-HOT to HOT") + "wire xfmr.R to vent.HOT\n"
    found = raised(unit(harness, feed="wire xfmr.C to box.COM\n"))
    assert "damper-lead-missing" not in [rule for rule, _fault, _text in found]


def test_a_common_that_ends_at_earth_is_no_lead_of_its_own() -> None:
    found = only(unit(without("D-COM to COM") + "wire vent.COM to earth: green\n"))
    assert (found.fault, found.span.text, found.edits) == ("common-by-metal", "vent.COM", ())
    assert found.breaks is Breaks.WORKMANSHIP
    assert found.message == (
        "no lead joins vent.COM to box.D-COM, the common: its current goes back over earth; run one"
    )


SILENT = {
    "the harness": unit(HARNESS),
    "a lead that was not traced": unit(
        without("D-PROVED to PROVED")
        + "wire box.D-PROVED to unknown\nwire vent.PROVED to unknown\n"
    ),
    "over a strip": unit(
        without("D-COM to COM") + "wire box.D-COM to strip.1 to vent.COM\n",
        parts="part strip is terminal-strip\n",
    ),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert raised(text) == []


def test_a_broken_lead_is_told_as_broken_only() -> None:
    text = unit(without("D-COM to COM") + "wire box.D-COM to vent.COM: broken\n")
    assert [rule for rule, _fault, _text in raised(text)] == ["lead-found-bad"]
