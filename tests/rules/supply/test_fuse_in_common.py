"""The fuse in the wrong side."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FAN, changed, without
from tests.rules.raised import findings, only
from wirecheck.model.finding import Breaks

NAME = "fuse-in-common"
FUSED = "part fu is fuse: 3 A\n" + changed(FAN, ("xfmr.R to stat.R", "xfmr.R to fu to stat.R"))
WRONG = "part fu is fuse: 3 A\n" + changed(FAN, ("fan.B to xfmr.C", "fan.B to fu to xfmr.C"))


def test_a_fuse_in_the_earthed_side_is_told_in_full() -> None:
    found = only(WRONG)
    assert (found.rule, found.breaks, found.span.text) == (NAME, Breaks.SAFETY, "fu")
    assert found.message == (
        "fu stands in the common side of xfmr, which is earthed: put it in the lead from xfmr.R "
        "and run the common straight through"
    )


def test_with_nothing_earthed_it_is_workmanship() -> None:
    found = only(without(WRONG, "wire xfmr.C to earth: green"))
    assert (found.fault, found.breaks) == ("floating", Breaks.WORKMANSHIP)


SILENT = {
    "in the hot side": FUSED,
    "in both sides": changed(
        FUSED, ("part fu", "part fv is fuse\npart fu"), ("fan.B to", "fan.B to fv to")
    ),
    "a breaker in the hot side, behind a limit": changed(
        FUSED, ("fuse: 3 A", "breaker"), ("xfmr.R to fu", "xfmr.R to limit to fu")
    )
    + "part limit is high-limit\n",
    "a fuse of one branch of two": FUSED + "part lamp is lamp\nwire fu.2 to lamp to xfmr.C\n",
    "a fuse that one lead reaches": FAN
    + "part fu is fuse\nwire fu.1 to xfmr.C\nwire fu.2 to unknown\n",
    "no fuse at all is not asked for": FAN,
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]


def test_a_breaker_counts_as_a_fuse() -> None:
    assert only(changed(WRONG, ("fuse: 3 A", "breaker"))).rule == NAME
