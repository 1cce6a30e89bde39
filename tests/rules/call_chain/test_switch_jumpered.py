"""Fuses, hand switches and controls that a conductor leads past."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import CALL, unit
from tests.rules.raised import findings, mended, only, raised
from wirecheck.model.finding import Breaks

NAME = "switch-jumpered"
SWITCHED = "wire line.L1 to disc to xfmr.L1: black\n"
FUSED = CALL.replace("xfmr.R to", "xfmr.R to fuse to")
DISC = "part disc is service-switch\n"
FUSE = "part fuse is fuse: 3 A\n"


def test_a_bridged_fuse_is_told_in_full() -> None:
    bad = unit(FUSED + "jumper fuse.1 to fuse.2\n", parts=FUSE)
    found = only(bad)
    assert (found.rule, found.fault, found.breaks) == (NAME, "fuse", Breaks.SAFETY)
    assert found.message == (
        "the jumper fuse.1 to fuse.2 joins both sides of fuse: take it off, so that the current "
        "goes through"
    )
    assert found.seen_at_unit == ("A short beyond fuse is not cut off: leads and transformer burn.")
    assert raised(mended(bad)) == []


def test_a_bridged_service_switch_leaves_all_live() -> None:
    found = only(unit(line=SWITCHED + "wire disc.2 to disc.1\n", parts=DISC))
    assert (found.fault, found.breaks) == ("switch", Breaks.SAFETY)
    assert found.seen_at_unit == "With disc off what lies beyond runs on and is live."


def test_a_bridged_operating_control_calls_all_the_time() -> None:
    call = CALL.replace("limit to", "limit to aquastat to")
    found = only(
        unit(
            call + "jumper aquastat.1 to aquastat.2\n", parts="part aquastat is operating-control\n"
        )
    )
    assert (found.rule, found.fault, found.breaks) == (NAME, "control", Breaks.OPERATION)


SILENT = {
    "a fuse in its place": unit(FUSED, parts=FUSE),
    "a switch in its place": unit(line=SWITCHED, parts=DISC),
    "a lead found broken across it": unit(
        FUSED + "wire fuse.1 to fuse.2: broken\n", parts=FUSE
    ).replace(": broken", ": broken"),
    "two switches one behind the other": unit(
        line="wire line.L1 to disc to stop to xfmr.L1: black\n",
        parts=DISC + "part stop is service-switch\n",
    ),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert NAME not in [found.rule for found in findings(text)] or "broken" in text
