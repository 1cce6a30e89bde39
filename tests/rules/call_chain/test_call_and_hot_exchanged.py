"""The leads on the call and on the hot terminal exchanged."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import CALL, unit
from tests.rules.raised import mended, only, raised
from wirecheck.model.finding import Breaks

EXCHANGED = "wire xfmr.R to limit to rollout to stat to box.24V\nwire xfmr.R to box.TH\n"


def test_the_exchange_is_told_in_full() -> None:
    found = only(unit(EXCHANGED))
    assert (found.rule, found.fault) == ("call-and-hot-exchanged", "exchanged")
    assert found.span.text == "box.TH"
    assert found.message == (
        "box.TH is fed with no call and box.24V through limit, rollout and stat: the two leads "
        "are exchanged; swap them"
    )
    assert found.breaks is Breaks.SAFETY
    assert found.terminals == ("box.TH", "box.24V")


def test_swapping_the_leads_mends_it() -> None:
    assert raised(mended(unit(EXCHANGED))) == []


def test_with_the_limits_ahead_of_both_the_burner_cycles_on_them() -> None:
    call = "wire xfmr.R to limit to rollout to box.TH\nwire rollout.2 to stat to box.24V\n"
    found = only(unit(call))
    assert (found.rule, found.breaks) == ("call-and-hot-exchanged", Breaks.OPERATION)
    assert "through stat:" in found.message


def test_on_a_direct_control_likewise() -> None:
    text = unit(EXCHANGED, valve="wire box.V to valve.1\nwire box.VC to valve.C\n")
    text = text.replace("pilot-ignition-control", "direct-ignition-control")
    text = text.replace("gas-valve-3-wire", "gas-valve-2-wire").replace(
        "pilot-burner", "direct-burner"
    )
    assert only(text).rule == "call-and-hot-exchanged"


SILENT = {
    "both right": CALL + "wire xfmr.R to box.24V\n",
    "the hot terminal on the call too": CALL + "wire stat.W to box.24V\n",
    "the hot terminal not used": CALL,
    "the hot terminal behind the limit": CALL + "wire limit.2 to box.24V\n",
}


@pytest.mark.parametrize("call", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(call: str) -> None:
    assert raised(unit(call)) == []
