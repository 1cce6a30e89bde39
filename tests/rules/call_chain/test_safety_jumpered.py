"""Safeties that a lead or a jumper leads past."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import CALL, unit
from tests.rules.raised import mended, only, raised
from wirecheck.model.finding import Breaks

JUMPER = CALL + "jumper limit.1 to limit.2\n"


def test_a_jumper_is_told_in_full() -> None:
    found = only(unit(JUMPER))
    assert (found.rule, found.fault) == ("safety-jumpered", "one")
    assert found.span.text == "limit.1 to limit.2"
    assert found.message == "the jumper limit.1 to limit.2 joins both sides of limit: take it off"
    assert found.seen_at_unit == ("With limit open the burner runs on through overheating.")
    assert found.breaks is Breaks.SAFETY
    assert found.terminals == ("limit.1", "limit.2")
    assert found.leads == ("limit.1 to limit.2",)
    assert "Never bypass a safety" in found.caution


def test_taking_the_jumper_off_mends_it() -> None:
    assert raised(mended(unit(JUMPER))) == []


def test_a_lead_past_two_safeties_is_one_mistake() -> None:
    found = only(unit(CALL + "wire limit.1 to rollout.2\n"))
    assert found.fault == "several"
    assert found.message == (
        "the lead limit.1 to rollout.2 leads past limit and rollout: take it off, so that the "
        "current goes through them"
    )


def test_two_jumpers_are_two_mistakes() -> None:
    found = raised(unit(JUMPER + "jumper rollout.1 to rollout.2\n"))
    assert [(rule, text) for rule, _fault, text in found] == [
        ("safety-jumpered", "limit.1 to limit.2"),
        ("safety-jumpered", "rollout.1 to rollout.2"),
    ]


def test_the_lead_that_leads_past_is_named_and_not_the_safety_s_own() -> None:
    found = only(unit("wire xfmr.R to limit to rollout to stat to box.TH\nwire xfmr.R to stat.R\n"))
    assert found.leads == ("xfmr.R to stat.R",)


def test_both_leads_of_a_safety_on_one_nut_bypass_it() -> None:
    call = "wire xfmr.R to nut to limit to nut to rollout to stat to box.TH\n"
    found = only(unit(call, parts="splice nut\n"))
    assert (found.fault, found.edits) == ("one-place", ())
    assert found.message == (
        "the leads nut to limit.1 and limit.2 to nut bring both ends of limit to one conductor: "
        "land one of them further along the call, so that the current goes through"
    )


@pytest.mark.parametrize(
    ("kind", "danger"),
    [
        ("pressure-switch", "missing pressure"),
        ("pressure-switch: contact normally-closed", "too much pressure"),
        ("rollout-switch", "flame rollout"),
        ("spill-switch", "spilling flue gas"),
        ("air-switch", "missing air"),
        ("low-water-cutoff", "low water"),
        ("flow-switch", "missing flow"),
        ("door-switch", "an open door"),
        ("emergency-stop", "a pulled emergency stop"),
    ],
)
def test_every_sort_of_safety_says_what_it_no_longer_stops(kind: str, danger: str) -> None:
    text = unit(JUMPER).replace("limit is high-limit", f"limit is {kind}")
    assert only(text).seen_at_unit.endswith(f"runs on through {danger}.")


def test_a_kind_of_the_user_s_own_and_its_labels_are_used() -> None:
    text = unit(CALL + "jumper limit.IN to limit.OUT\n").replace(
        "part limit is high-limit\n",
        'kind plenum-switch is high-limit\nlabels plenum-switch: 1 as "IN", 2 as "OUT"\n'
        "part limit is plenum-switch\n",
    )
    assert only(text).message == (
        "the jumper limit.IN to limit.OUT joins both sides of limit: take it off"
    )


def test_the_limit_inside_a_fan_and_limit_control_is_named() -> None:
    call = "wire xfmr.R to limit.LIMIT-1..LIMIT-2 to rollout to stat to box.TH\n"
    text = unit(call + "jumper limit.LIMIT-1 to limit.LIMIT-2\n").replace(
        "is high-limit", "is fan-limit-control: link removed"
    )
    assert "both sides of the limit contact of limit" in only(text).message


def test_the_bridge_over_a_boiler_control_takes_its_limit_too() -> None:
    call = (
        "wire boiler.R to stat to boiler.W\nwire xfmr.R to limit to rollout to boiler.BURNER-1\n"
        "wire boiler.BURNER-2 to box.TH\njumper boiler.BURNER-1 to boiler.BURNER-2\n"
        "wire line.L1 to boiler.L1: black\nwire line.N to boiler.N: white\n"
    )
    found = only(unit(call, parts="part boiler is boiler-control\n"))
    assert (found.rule, found.fault) == ("safety-jumpered", "several")
    assert "the burner contact of boiler and the limit contact of boiler" in found.message


SILENT = {
    "two limits side by side are something else": CALL,
    "a jumper between two switches carries the call on": (
        "wire xfmr.R to limit.1\njumper limit.2 to rollout.1\nwire rollout.2 to stat to box.TH\n"
    ),
    "a jumper to a lamp that shows the call": CALL + "jumper rollout.2 to stat.R\n",
    "a second lead beside the one in the chain": CALL + "wire limit.2 to rollout.1\n",
}


@pytest.mark.parametrize("call", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(call: str) -> None:
    assert [rule for rule, _fault, _text in raised(unit(call)) if rule == "safety-jumpered"] == []


def test_a_jumper_that_was_found_broken_is_still_in_place() -> None:
    text = unit(JUMPER).replace("limit.2\n", "limit.2: broken\n")
    assert "safety-jumpered" in [rule for rule, _fault, _text in raised(text)]
