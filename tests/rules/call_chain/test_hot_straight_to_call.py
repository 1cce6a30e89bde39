"""Calls that come straight from the hot side."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import CALL, unit, zones
from tests.rules.raised import mended, only, raised
from wirecheck.model.finding import Breaks


def test_a_lead_past_everything_is_told_in_full() -> None:
    found = only(unit(CALL + "wire xfmr.R to box.TH\n"))
    assert (found.rule, found.fault) == ("hot-straight-to-call", "past")
    assert found.span.text == "xfmr.R to box.TH"
    assert found.message == (
        "the lead xfmr.R to box.TH joins xfmr.R straight to box.TH, past limit, rollout and stat: "
        "take it off, so that the call goes through limit, rollout and stat"
    )
    assert found.seen_at_unit == (
        "The burner fires as soon as there is power; nothing in the call lead stops it."
    )
    assert found.breaks is Breaks.SAFETY


def test_taking_it_off_mends_it() -> None:
    assert raised(mended(unit(CALL + "wire xfmr.R to box.TH\n"))) == []


def test_a_lead_moved_from_the_thermostat_is_not_simply_taken_off() -> None:
    found = only(unit("wire xfmr.R to limit to rollout to stat.R\nwire xfmr.R to box.TH\n"))
    assert (found.rule, found.edits) == ("hot-straight-to-call", ())
    assert "past limit, rollout and stat" in found.message


def test_a_loose_end_behind_the_thermostat_follows_from_it() -> None:
    call = "wire xfmr.R to limit to rollout to stat to open\nwire xfmr.R to box.TH\n"
    assert [rule for rule, _fault, _text in raised(unit(call))] == ["hot-straight-to-call"]


def test_over_a_splice_all_the_leads_are_named() -> None:
    call = CALL + "wire xfmr.R to nut to box.TH\n"
    found = only(unit(call, parts="splice nut\n"))
    assert found.leads == ("xfmr.R to nut", "nut to box.TH")
    assert found.edits == ()


def test_with_the_limit_in_the_line_the_burner_cycles_on_it() -> None:
    call = "wire xfmr.R to stat to aid to box.TH\nwire xfmr.R to box.TH\n"
    text = unit(
        call,
        line="wire line.L1 to limit to rollout to xfmr.L1: black\n",
        parts="part aid is thermostat\n",
    )
    found = only(text)
    assert (found.rule, found.breaks) == ("hot-straight-to-call", Breaks.OPERATION)
    assert "past stat and aid" in found.message


def test_a_boiler_s_call_terminals_joined_beside_the_zones() -> None:
    found = only(
        zones(
            parts="part limit is high-limit\n",
            ends=(
                "wire boiler.1 to limit to zone-1.E1\nwire zone-1.E1 to zone-2.E1\n"
                "wire zone-1.E2 to boiler.2\nwire zone-2.E2 to boiler.2\n"
                "jumper boiler.1 to boiler.2\n"
            ),
        )
    )
    assert found.span.text == "boiler.1 to boiler.2"


SILENT = {
    "a bench supply with no thermostat drawn": "wire xfmr.R to box.TH\n",
    "the hot side feeds the damper's supply": CALL + "wire xfmr.R to box.24V\n",
    "the call also lights a lamp": CALL + "wire box.TH to lamp to xfmr.C\n",
}


@pytest.mark.parametrize("call", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(call: str) -> None:
    parts = "part lamp is lamp\n" if "lamp" in call else ""
    text = unit(call, parts=parts)
    if call == "wire xfmr.R to box.TH\n":
        for name in ("limit is high-limit", "rollout is rollout-switch", "stat is thermostat"):
            text = text.replace(f"part {name}\n", "")
    assert raised(text) == []


def test_exchanged_with_the_hot_terminal_it_is_told_as_that() -> None:
    call = "wire xfmr.R to limit to rollout to stat to box.24V\nwire xfmr.R to box.TH\n"
    assert [rule for rule, _fault, _text in raised(unit(call))] == ["call-and-hot-exchanged"]
