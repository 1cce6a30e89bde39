"""Safeties recorded as stuck closed."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import unit
from tests.rules.raised import only, raised
from wirecheck.model.finding import Breaks


def test_a_limit_stuck_closed_is_told_in_full() -> None:
    found = only(unit().replace("is high-limit", "is high-limit: stuck closed"))
    assert (found.rule, found.fault) == ("safety-stuck-closed", "stops-nothing")
    assert found.span.text == "stuck closed"
    assert found.message == (
        "limit was found stuck closed: replace it and find out why it had to act; do not run the "
        "burner until then"
    )
    assert found.seen_at_unit == "limit stays closed and the burner runs on through overheating."
    assert found.breaks is Breaks.SAFETY
    assert found.edits == ()


@pytest.mark.parametrize("kind", ["air-switch", "pressure-switch", "flow-switch"])
def test_a_switch_that_proves_must_be_seen_open_first(kind: str) -> None:
    found = only(unit().replace("is high-limit", f"is {kind}: stuck closed"))
    assert found.fault == "proves-nothing"
    assert "must block the start" in found.message


def test_a_pressure_switch_that_opens_on_pressure_proves_nothing_at_rest() -> None:
    words = "is pressure-switch: normally-closed, stuck closed"
    assert only(unit().replace("is high-limit", words)).fault == "stops-nothing"


def test_the_limit_inside_a_fan_and_limit_control_is_named() -> None:
    call = "wire xfmr.R to limit.LIMIT-1..LIMIT-2 to rollout to stat to box.TH\n"
    words = "is fan-limit-control: link removed, limit-stuck closed"
    found = only(unit(call).replace("is high-limit", words))
    assert found.message.startswith("the limit contact of limit was found stuck closed")


SILENT = {
    "stuck open it does its work too well": ("is high-limit", "is high-limit: stuck open"),
    "a thermostat is no safety": ("is thermostat", "is thermostat: stuck closed"),
    "a rollout switch with manual reset": ("is rollout-switch", "is rollout-switch: manual"),
}


@pytest.mark.parametrize("change", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(change: tuple[str, str]) -> None:
    rules = [rule for rule, _fault, _text in raised(unit().replace(*change))]
    assert "safety-stuck-closed" not in rules


def test_the_fan_contact_may_stick_without_danger() -> None:
    call = "wire xfmr.R to limit.LIMIT-1..LIMIT-2 to rollout to stat to box.TH\n"
    words = "is fan-limit-control: link removed, fan-stuck closed"
    found = raised(unit(call).replace("is high-limit", words))
    assert "safety-stuck-closed" not in [rule for rule, _fault, _text in found]
