"""Thermostats with their leads joined, or with another way beside them."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import CALL, unit, zones
from tests.rules.raised import mended, only, raised
from wirecheck.model.finding import Breaks

JOINED = CALL + "jumper stat.R to stat.W\n"


def test_joined_leads_are_told_in_full() -> None:
    found = only(unit(JOINED))
    assert (found.rule, found.fault) == ("thermostat-bypassed", "joined")
    assert found.span.text == "stat.R to stat.W"
    assert found.message == (
        "the jumper stat.R to stat.W joins the leads of stat: take it off, so that the call goes "
        "through stat"
    )
    assert found.seen_at_unit == (
        "stat calls all the time: what it runs stops only when a limit opens."
    )
    assert found.breaks is Breaks.OPERATION


def test_taking_the_jumper_off_mends_it() -> None:
    assert raised(mended(unit(JOINED))) == []


def test_a_lead_round_it_is_named() -> None:
    found = only(unit(CALL + "wire rollout.2 to box.TH\n"))
    assert (found.rule, found.leads) == ("thermostat-bypassed", ("rollout.2 to box.TH",))


def test_both_its_leads_under_one_nut() -> None:
    call = (
        "wire xfmr.R to limit to rollout to nut to box.TH\nwire nut to stat.R\nwire nut to stat.W\n"
    )
    found = only(unit(call, parts="splice nut\n"))
    assert (found.rule, found.fault, found.edits) == ("thermostat-bypassed", "one-place", ())


def test_two_thermostats_past_which_one_jumper_leads_are_one_mistake() -> None:
    call = JOINED + "wire stat.R to aid to stat.W\n"
    found = only(unit(call, parts="part aid is thermostat\n"))
    assert "joins the leads of stat and aid" in found.message


def test_in_a_zone_likewise() -> None:
    assert only(zones() + "jumper stat-2.R to stat-2.W\n").rule == "thermostat-bypassed"


def test_other_contacts_beside_it_are_named() -> None:
    call = CALL + "wire rollout.2 to spare to box.TH\n"
    found = only(unit(call, parts="part spare is fuse\n"))
    assert found.message == ("current gets to box.TH past stat by way of spare: open that way")


SILENT = {
    "a switch to run it by hand": CALL + "wire rollout.2 to hand to box.TH\n",
    "a second thermostat": CALL + "wire rollout.2 to aid to box.TH\n",
    "an aquastat beside it": CALL + "wire rollout.2 to tank to box.TH\n",
    "a relay moved from elsewhere": (
        CALL + "wire rollout.2 to far.COM..NO to box.TH\nwire unknown to far to unknown\n"
    ),
}


@pytest.mark.parametrize("call", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(call: str) -> None:
    kinds = {
        "hand": "service-switch",
        "aid": "thermostat",
        "tank": "operating-control",
        "far": "relay",
    }
    parts = "".join(f"part {n} is {k}\n" for n, k in kinds.items() if f" {n}" in call)
    assert raised(unit(call, parts=parts)) == []


def test_past_the_limit_as_well_it_is_told_as_one_of_the_limit() -> None:
    text = unit(CALL + "wire limit.2 to stat.W\n")
    assert [rule for rule, _fault, _text in raised(text)] == ["safety-jumpered"]
