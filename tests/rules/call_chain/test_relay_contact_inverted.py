"""Relays in the chain on their resting contact."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import unit
from tests.rules.raised import mended, only, raised
from wirecheck.model.finding import Breaks

AID = "part aid is relay\n"
BY_STAT = """\
wire xfmr.R to stat to aid to xfmr.C
wire xfmr.R to limit to rollout to aid.COM..NO to box.TH
"""
BY_LIMIT = """\
wire xfmr.R to limit to aid to xfmr.C
wire xfmr.R to rollout to stat to aid.COM..NO to box.TH
"""


def test_a_call_on_the_resting_contact_is_told_in_full() -> None:
    found = only(unit(BY_STAT.replace("..NO", "..NC"), parts=AID))
    assert (found.rule, found.fault) == ("relay-contact-inverted", "calls-when-off")
    assert found.span.text == "aid.COM..NC"
    assert found.message == (
        "box.TH is fed through aid.COM..NC, closed while nothing calls aid: use its working contact"
    )
    assert found.seen_at_unit == "The burner runs until stat calls, and stops then."
    assert found.breaks is Breaks.SAFETY


def test_moving_the_lead_mends_it() -> None:
    text = unit(BY_STAT.replace("..NO", "..NC"), parts=AID)
    assert raised(mended(text)) == []


def test_a_limit_that_starts_the_burner() -> None:
    found = only(unit(BY_LIMIT.replace("..NO", "..NC"), parts=AID))
    assert (found.rule, found.fault) == ("relay-contact-inverted", "runs-on-trip")
    assert found.seen_at_unit == "The burner runs when limit opens, and only then."


def test_of_several_poles_the_right_one_is_named() -> None:
    text = unit(
        BY_STAT.replace("aid.COM..NO", "aid.2.COM..2.NC"), parts="part aid is relay: poles 2\n"
    )
    assert "aid.2.COM..2.NC" in only(text).message
    assert raised(mended(text)) == []


OVER_ZONES = """\
part aid is relay
part zone is zone-valve
part zone-b is zone-valve
part stat-b is thermostat
"""
BY_END_SWITCHES = """\
wire xfmr.R to stat to zone to xfmr.C
wire xfmr.R to stat-b to zone-b to xfmr.C
wire xfmr.R to zone.E1..E2 to aid to xfmr.C
wire zone.E1 to zone-b.E1..E2 to zone.E2
wire xfmr.R to limit to rollout to aid.COM..NO to box.TH
"""


def test_a_relay_that_end_switches_pull_in() -> None:
    """The thermostats act over the motors; rest is still what starts the burner."""
    text = unit(BY_END_SWITCHES.replace("..NO", "..NC"), parts=OVER_ZONES)
    found = only(text)
    assert (found.rule, found.fault) == ("relay-contact-inverted", "calls-when-off")
    assert (
        found.seen_at_unit == "The burner runs until one of stat and stat-b calls, and stops then."
    )
    assert raised(mended(text)) == []


SILENT = {
    "the working contact, by the thermostat": BY_STAT,
    "the working contact, by the limit": BY_LIMIT,
    "a resting contact that another call opens": (
        "wire xfmr.R to limit to rollout to stat to aid.COM..NC to box.TH\n"
        "wire stat.Y to aid to xfmr.C\n"
    ),
}


def test_the_working_contact_by_end_switches_is_right() -> None:
    assert raised(unit(BY_END_SWITCHES, parts=OVER_ZONES)) == []


@pytest.mark.parametrize("call", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(call: str) -> None:
    assert raised(unit(call, parts=AID)) == []
