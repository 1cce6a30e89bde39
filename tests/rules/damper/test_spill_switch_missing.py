"""A draft hood and a damper with no spill switch in the call."""

from __future__ import annotations

import pytest

from tests.rules.damper.units import unit
from tests.rules.raised import only, raised
from wirecheck.model.finding import Breaks

HOOD = "vent-damper: draft-hood yes"
SPILL = "part spill is spill-switch\n"


def test_it_is_told_in_full() -> None:
    found = only(unit(damper=HOOD))
    assert (found.rule, found.fault, found.span.text) == (
        "spill-switch-missing",
        "none",
        "draft-hood yes",
    )
    assert found.message == (
        "vent is on a unit with a draft hood, and the call to box.TH has no spill switch: fit one "
        "at the draft hood and wire it into the call lead"
    )
    assert found.seen_at_unit == (
        "With the vent blocked or the damper not fully open, combustion products spill into the "
        "room and the burner goes on."
    )
    assert found.breaks is Breaks.SAFETY
    assert found.edits == ()


def test_another_limit_in_the_call_does_not_take_its_place() -> None:
    call = "wire xfmr.R to limit to spill to stat to box.TH\n"
    text = unit(damper=HOOD, call=call, parts="part spill is high-limit\n")
    assert only(text).rule == "spill-switch-missing"


SILENT = {
    "in the call": ("wire xfmr.R to limit to spill to stat to box.TH\n", SPILL),
    "in the line": (
        "wire xfmr.R to limit to stat to box.TH\n",
        SPILL,
    ),
    "of a kind of the user's own": (
        "wire xfmr.R to limit to spill to stat to box.TH\n",
        "kind hood-switch is spill-switch: setting 90 C\npart spill is hood-switch\n",
    ),
}


@pytest.mark.parametrize(("call", "parts"), SILENT.values(), ids=SILENT)
def test_a_spill_switch_that_acts_is_silent(call: str, parts: str) -> None:
    text = unit(damper=HOOD, call=call, parts=parts)
    if "spill" not in call:
        text = text.replace("line.L1 to xfmr.L1", "line.L1 to spill to xfmr.L1")
    assert raised(text) == []


@pytest.mark.parametrize("damper", ["vent-damper", "vent-damper: draft-hood no"])
def test_without_a_draft_hood_none_is_asked_for(damper: str) -> None:
    assert raised(unit(damper=damper)) == []


def test_a_spill_switch_wired_wrong_is_told_of_itself() -> None:
    call = "wire xfmr.R to limit to stat to box.TH\nwire limit.2 to spill to box.24V\n"
    text = unit(damper=HOOD, call=call, parts=SPILL, feed="wire xfmr.C to box.COM\n")
    assert [rule for rule, _fault, _text in raised(text)] == ["safety-not-in-chain"]
