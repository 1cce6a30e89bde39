"""Contacts of relays and end switches that a conductor leads past."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import unit, zones
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
JUMPER = "jumper aid.COM to aid.NO\n"


def test_a_jumpered_contact_is_told_in_full() -> None:
    found = only(unit(BY_STAT + JUMPER, parts=AID))
    assert (found.rule, found.fault) == ("relay-contact-jumpered", "switches-nothing")
    assert found.message == (
        "the jumper aid.COM to aid.NO joins both sides of aid.COM..NO: take it off"
    )
    assert found.seen_at_unit == "What aid.COM..NO is to switch is on all the time."
    assert found.breaks is Breaks.OPERATION


def test_taking_the_jumper_off_mends_it() -> None:
    assert raised(mended(unit(BY_STAT + JUMPER, parts=AID))) == []


def test_a_limit_that_acts_through_it_acts_no_more() -> None:
    found = only(unit(BY_LIMIT + JUMPER, parts=AID))
    assert (found.fault, found.breaks) == ("safety-behind", Breaks.SAFETY)
    assert found.message.endswith(
        "joins both sides of aid.COM..NO, through which limit acts: take it off"
    )
    assert found.seen_at_unit == (
        "With limit open aid drops out and nothing happens: the burner runs on through overheating."
    )


def test_one_jumper_past_end_switches_side_by_side_is_one_mistake() -> None:
    found = only(zones() + "jumper zone-1.E1 to zone-1.E2\n")
    assert "the end switch of zone-1 and the end switch of zone-2" in found.message


SILENT = {
    "poles joined on one side to share a feed": (
        BY_STAT.replace("aid.COM..NO", "aid.1.COM..1.NO") + "wire aid.1.COM to aid.2.COM\n"
    ),
    "poles in parallel": (
        BY_STAT.replace("aid.COM..NO", "aid.1.COM..1.NO")
        + "wire aid.1.COM to aid.2.COM..2.NO to aid.1.NO\n"
    ),
    "a coil fed from its own contact": BY_STAT.replace("aid.COM..NO", "aid.1.COM..1.NO"),
}


@pytest.mark.parametrize("call", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(call: str) -> None:
    rules = [r for r, _f, _t in raised(unit(call, parts="part aid is relay: poles 2\n"))]
    assert "relay-contact-jumpered" not in rules
