"""Safeties between a control and its gas valve."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import unit
from tests.rules.raised import only, raised
from wirecheck.model.finding import Breaks

CALL = "wire xfmr.R to rollout to stat to box.TH\n"
PILOT = "wire box.PV to valve.PV\n"
MAIN = "wire box.MV to valve.MV\n"
COMMON = "wire box.VC to valve.C\n"


def test_a_limit_in_the_main_valve_s_lead_is_told_in_full() -> None:
    valve = PILOT + "wire box.MV to limit to valve.MV\n" + COMMON
    found = only(unit(CALL, valve=valve))
    assert (found.rule, found.fault, found.span.text) == ("safety-at-the-valve", "main", "limit")
    assert found.message == (
        "limit stands between box.MV and valve.MV: the control does not know when it opens; move "
        "it into the call lead, and run this lead straight"
    )
    assert found.seen_at_unit == (
        "When limit opens the main gas shuts, the pilot stays lit and the control stays as it is."
    )
    assert found.breaks is Breaks.OPERATION
    assert found.terminals == ("limit.1", "limit.2")


@pytest.mark.parametrize(
    ("valve", "fault", "breaks"),
    [
        ("wire box.PV to limit to valve.PV\n" + MAIN + COMMON, "pilot", Breaks.OPERATION),
        (PILOT + MAIN + "wire valve.C to limit to box.VC\n", "common", Breaks.SAFETY),
    ],
)
def test_the_other_valve_leads(valve: str, fault: str, breaks: Breaks) -> None:
    found = only(unit(CALL, valve=valve))
    assert (found.rule, found.fault, found.breaks) == ("safety-at-the-valve", fault, breaks)


def test_a_direct_control_takes_it_for_a_lost_flame() -> None:
    text = unit(CALL, valve="wire box.V to limit to valve.1\nwire box.VC to valve.C\n")
    text = text.replace("pilot-ignition-control", "direct-ignition-control")
    text = text.replace("gas-valve-3-wire", "gas-valve-2-wire").replace(
        "pilot-burner", "direct-burner"
    )
    found = only(text)
    assert found.fault == "direct"
    assert "tries again" in found.seen_at_unit


def test_it_is_seen_through_an_adapter() -> None:
    valve = "wire box.V to limit to tie.V\nwire box.VC to tie.VC\nplug tie to valve: PV, MV, C\n"
    text = unit(CALL, valve=valve, parts="part tie is valve-adapter\n")
    text = text.replace("pilot-ignition-control", "direct-ignition-control")
    assert only(text.replace("pilot-burner", "direct-burner")).fault == "direct"


def test_the_valve_leads_over_a_strip_are_silent() -> None:
    valve = (
        "wire box.PV to strip.1 to valve.PV\nwire box.MV to strip.2 to valve.MV\n"
        "wire box.VC to strip.3 to valve.C\n"
    )
    assert raised(unit(valve=valve, parts="part strip is terminal-strip\n")) == []


def test_exchanged_valve_leads_are_no_safety_s_fault() -> None:
    text = unit(valve="wire box.PV to valve.MV\nwire box.MV to valve.PV\n" + COMMON)
    assert [rule for rule, _fault, _text in raised(text)] == ["valve-leads-out-of-order"]


def test_a_switch_to_shut_the_valve_by_hand_is_no_safety() -> None:
    valve = PILOT + "wire box.MV to hand to valve.MV\n" + COMMON
    text = unit(valve=valve, parts="part hand is service-switch\n")
    assert "safety-at-the-valve" not in [rule for rule, _fault, _text in raised(text)]


def test_a_valve_lead_that_was_not_traced_is_not_judged() -> None:
    valve = PILOT + "wire box.MV to unknown\nwire unknown to limit to valve.MV\n" + COMMON
    text = unit(CALL, valve=valve)
    assert "safety-at-the-valve" not in [rule for rule, _fault, _text in raised(text)]
