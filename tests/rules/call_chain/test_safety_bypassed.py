"""Safeties that another way of the call leads past."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import CALL, unit, zones
from tests.rules.raised import only, raised
from wirecheck.model.finding import Breaks

AID = "part aid is thermostat\n"
ONE_CALL = "wire xfmr.R to limit to rollout to stat to box.TH\nwire xfmr.R to aid to box.TH\n"


def test_a_safety_in_one_of_two_calls_is_told_in_full() -> None:
    found = only(unit(ONE_CALL, parts=AID))
    assert (found.rule, found.fault, found.span.text) == ("safety-bypassed", "one-call", "limit")
    assert found.message == (
        "only one call goes through limit and rollout; by way of aid it goes past: move limit "
        "and rollout to where all calls have come together, or to their common feed"
    )
    assert found.seen_at_unit == (
        "The burner runs on through overheating and flame rollout while aid calls."
    )
    assert found.breaks is Breaks.SAFETY
    assert found.terminals == ("limit.1", "limit.2", "rollout.1", "rollout.2")


def test_each_call_with_a_safety_of_its_own_is_short_of_the_other_s() -> None:
    call = "wire xfmr.R to limit to stat to box.TH\nwire xfmr.R to rollout to aid to box.TH\n"
    found = raised(unit(call, parts=AID))
    assert found == [
        ("safety-bypassed", "one-call", "limit"),
        ("safety-bypassed", "one-call", "rollout"),
    ]


def test_a_switch_across_a_safety_bypasses_it() -> None:
    call = CALL + "wire xfmr.R to spare to limit.2\n"
    found = only(unit(call, parts="part spare is service-switch\n"))
    assert found.fault == "other-path"
    assert found.message == (
        "current gets past limit by way of spare: open that way, so that every way to box.TH "
        "goes through limit"
    )


def test_a_switch_across_the_whole_call_is_one_mistake() -> None:
    call = CALL + "wire xfmr.R to spare to box.TH\n"
    found = only(unit(call, parts="part spare is service-switch\n"))
    assert (found.fault, found.terminals[::2]) == ("other-path", ("limit.1", "rollout.1"))


def test_two_safeties_side_by_side_are_one_mistake() -> None:
    call = "wire xfmr.R to limit to stat to box.TH\nwire xfmr.R to rollout to limit.2\n"
    found = only(unit(call))
    assert found.fault == "side-by-side"
    assert found.message == (
        "limit and rollout stand side by side in the call to box.TH: current passes while any of "
        "them is closed; put them one behind the other"
    )


def test_a_limit_beside_the_thermostat_limits_nothing() -> None:
    call = "wire xfmr.R to rollout to stat to box.TH\nwire rollout.2 to limit to box.TH\n"
    found = only(unit(call))
    assert (found.rule, found.fault, found.span.text) == ("safety-bypassed", "beside-call", "limit")
    assert found.message == (
        "limit stands beside stat in the call to box.TH, so that either of them calls alone: put "
        "limit in line with stat"
    )


def test_a_cut_off_in_one_zone_does_not_stop_the_boiler_for_the_other() -> None:
    motors = "wire xfmr.R to lwco to stat-1 to zone-1.M1\nwire xfmr.R to stat-2 to zone-2.M1\n"
    found = only(zones(motors, parts="part lwco is low-water-cutoff\n"))
    assert found.fault == "one-call"
    assert "by way of the end switch of zone-2 it goes past" in found.message


def test_a_limit_in_one_zone_is_taken_for_the_boiler_s_where_that_has_none() -> None:
    motors = "wire xfmr.R to limit to stat-1 to zone-1.M1\nwire xfmr.R to stat-2 to zone-2.M1\n"
    assert only(zones(motors, parts="part limit is high-limit\n")).fault == "one-call"


SILENT = {
    "ahead of both calls": (
        "wire xfmr.R to limit to rollout to stat to box.TH\nwire rollout.2 to aid to box.TH\n"
    ),
    "behind both calls": (
        "wire xfmr.R to stat to limit.1\nwire xfmr.R to aid to limit.1\n"
        "wire limit.2 to rollout to box.TH\n"
    ),
    "one ahead and one behind": (
        "wire xfmr.R to limit to stat to rollout.1\nwire limit.2 to aid to rollout.1\n"
        "wire rollout.2 to box.TH\n"
    ),
    "the other call serves something else": (
        "wire xfmr.R to limit to rollout to stat to box.TH\nwire xfmr.R to aid to fan to xfmr.C\n"
    ),
    "both calls act through one relay": (
        "wire xfmr.R to stat to fan.A\nwire xfmr.R to aid to fan.A\nwire fan.B to xfmr.C\n"
        "wire xfmr.R to limit to rollout to fan.COM..NO to box.TH\n"
    ),
}


@pytest.mark.parametrize("call", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(call: str) -> None:
    fan = "part fan is relay\n" if "fan" in call else ""
    assert raised(unit(call, parts=AID + fan)) == []
