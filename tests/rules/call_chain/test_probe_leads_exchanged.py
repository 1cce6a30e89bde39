"""Low-water probes fed at their output."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import unit
from tests.rules.raised import mended, only, raised
from wirecheck.model.finding import Breaks

PARTS = "part probe is low-water-probe\n"
RIGHT = (
    "wire xfmr.R to limit to rollout to probe.R\nwire probe.OUT to stat to box.TH\n"
    "wire probe.C to xfmr.C\n"
)
EXCHANGED = RIGHT.replace("to probe.R", "to probe.OUT").replace("wire probe.OUT", "wire probe.R")


def test_it_is_told_in_full_and_mended() -> None:
    text = unit(EXCHANGED, parts=PARTS)
    found = only(text)
    assert (found.rule, found.span.text) == ("probe-leads-exchanged", "probe.OUT")
    assert found.message == (
        "the leads on probe.R and probe.OUT are exchanged: probe is fed at its output; swap them"
    )
    assert found.breaks is Breaks.OPERATION
    assert raised(mended(text)) == []


def test_behind_the_thermostat_likewise() -> None:
    call = (
        "wire xfmr.R to limit to rollout to stat to probe.OUT\nwire probe.R to box.TH\n"
        "wire probe.C to xfmr.C\n"
    )
    assert only(unit(call, parts=PARTS)).rule == "probe-leads-exchanged"


SILENT = {
    "fed at its feed": RIGHT,
    "behind the thermostat": (
        "wire xfmr.R to limit to rollout to stat to probe.R\nwire probe.OUT to box.TH\n"
        "wire probe.C to xfmr.C\n"
    ),
    "its feed was not traced": EXCHANGED + "wire probe.R to unknown\n",
    "bypassed, which is worse": RIGHT + "jumper probe.R to probe.OUT\n",
}


@pytest.mark.parametrize("call", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(call: str) -> None:
    found = [rule for rule, _fault, _text in raised(unit(call, parts=PARTS))]
    assert "probe-leads-exchanged" not in found
