"""Calls whose chain hangs on nothing."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import CALL, unit
from tests.rules.raised import findings, only
from wirecheck.model.finding import Breaks

NAME = "call-not-fed"
HOT = "wire xfmr.R to box.24V\n"


def test_a_chain_closed_upon_itself_is_told_in_full() -> None:
    bad = unit(HOT + CALL.replace("xfmr.R to", "rollout.2 to"))
    found = only(bad)
    assert (found.rule, found.fault, found.breaks) == (NAME, "open-ended", Breaks.OPERATION)
    assert found.message == (
        "no lead brings the hot side to the call of box.TH: its chain, as far as limit.2, hangs "
        "on nothing; bring xfmr.R to the head of it, ahead of every safety"
    )
    assert found.seen_at_unit == "Dead: nothing happens on a call."


def test_a_call_lead_that_comes_from_an_unused_terminal() -> None:
    found = only(unit(HOT + CALL.replace("xfmr.R to", "stat.Y to")))
    assert (found.rule, found.breaks) == (NAME, Breaks.OPERATION)
    assert "stat.Y" in found.terminals


SILENT = {
    "a chain fed from R": unit(HOT),
    "a chain with an end not traced": unit(HOT + CALL.replace("xfmr.R to", "unknown to")),
    "an empty terminal is told as that": unit(HOT + CALL.replace("xfmr.R to ", "")),
    "a sketch without the supply": (
        "part limit is high-limit\npart box is pilot-ignition-control\n"
        "wire limit.2 to box.TH\nwire limit.1 to plug.1\npart plug is plug\n"
    ),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert NAME not in [found.rule for found in findings(text)]
