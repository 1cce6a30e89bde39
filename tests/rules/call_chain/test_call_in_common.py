"""Thermostats and hand switches in the common lead."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import CALL, unit
from tests.rules.raised import only, raised
from wirecheck.model.finding import Breaks

STRAIGHT = "wire xfmr.R to limit to rollout to box.TH\n"
IN_COMMON = "wire xfmr.C to stat to box.COM\n"


def test_a_thermostat_bypassed_by_the_burner_ground_is_told_in_full() -> None:
    found = only(unit(STRAIGHT, common=IN_COMMON))
    assert (found.rule, found.fault, found.span.text) == ("call-in-common", "bypassed", "stat")
    assert found.message == (
        "stat: in the common lead, between xfmr.C and box.COM, and bypassed already, since both "
        "ends reach earth; put it into the hot lead to the call, and run the common straight"
    )
    assert found.seen_at_unit == (
        "The burner runs with stat open as well as closed; only a limit stops it."
    )
    assert found.breaks is Breaks.OPERATION


def test_without_an_earth_it_works_until_one_comes() -> None:
    found = raised(unit(STRAIGHT, common=IN_COMMON, earth=""))
    assert ("call-in-common", "earth-fault", "stat") in found


def test_a_hand_switch_there_cuts_nothing_off() -> None:
    common = "wire xfmr.C to hand to box.COM\n"
    found = only(unit(common=common, parts="part hand is service-switch\n"))
    assert (found.rule, found.span.text) == ("call-in-common", "hand")


SILENT = {
    "the usual way round": (CALL, "wire xfmr.C to box.COM\n"),
    "with a limit it is told of the limit": (
        "wire xfmr.R to rollout to box.TH\n",
        "wire xfmr.C to limit to stat to box.COM\n",
    ),
    "untraced": (CALL, "wire xfmr.C to unknown\nwire unknown to box.COM\n"),
}


@pytest.mark.parametrize(("call", "common"), SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(call: str, common: str) -> None:
    rules = [rule for rule, _fault, _text in raised(unit(call, common=common))]
    assert "call-in-common" not in rules
