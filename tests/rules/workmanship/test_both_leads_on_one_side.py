"""Two leads on one side of a part named alone."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FAN, changed
from tests.rules.raised import findings, mended, only, raised
from tests.rules.units import two_rod
from wirecheck import check, load_text
from wirecheck.model.finding import Breaks

NAME = "both-leads-on-one-side"
RIGHT = "part limit is high-limit\n" + changed(
    FAN, ("xfmr.R to stat.R", "xfmr.R to limit\nwire limit to stat.R")
)
WRONG = changed(RIGHT, ("xfmr.R to limit\n", "limit to xfmr.R\n"))


def test_a_safety_named_alone_twice_at_the_start_is_told_in_full() -> None:
    found = only(WRONG)
    assert (found.rule, found.fault, found.breaks) == (NAME, "safety", Breaks.SAFETY)
    assert found.message == (
        "the leads limit.2 to xfmr.R and limit.2 to stat.R both land on limit.2, and limit.1 is "
        "empty: limit is out of the circuit; land one of them on limit.1"
    )
    assert raised(mended(WRONG)) == []


def test_it_explains_everything_else_that_is_found_there() -> None:
    unit = changed(
        two_rod(), ("xfmr.R to limit to stat", "limit to xfmr.R: red\nwire limit to stat")
    )
    assert [rule for rule, *_ in raised(unit)] == [NAME]


def test_a_lamp_is_an_operating_matter() -> None:
    unit = FAN + "part lamp is lamp\nwire fan.A to lamp\nwire xfmr.C to lamp\n"
    assert NAME in [found.rule for found in findings(unit)]


SILENT = {
    "at the end and at the start": RIGHT,
    "passed through": changed(
        RIGHT, ("xfmr.R to limit\nwire limit to stat.R", "xfmr.R to limit to stat.R")
    ),
    "two leads go on from one side": RIGHT + "part lamp is lamp\nwire limit to lamp to xfmr.C\n",
    "terminals named on purpose": changed(
        RIGHT, ("xfmr.R to limit\nwire limit to", "xfmr.R to limit.1\nwire limit.1 to")
    ),
    "one lead alone leaves an empty terminal": changed(
        RIGHT, ("xfmr.R to limit\nwire limit to", "xfmr.R to limit\nwire xfmr.R to")
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]


def test_a_lead_to_itself_that_could_not_be_read_is_passed_over() -> None:
    built = load_text(FAN + "wire stat to stat.W to stat.G\nwire fan.A to stat.G\n", "unit.wiring")
    assert built.problems
    assert NAME not in [found.rule for found in check(built.diagram).findings]


FUSED = "part fu is fuse: 3 A\n" + changed(
    FAN, ("xfmr.R to stat.R", "xfmr.R to fu.1\nwire fu.2 to stat.R")
)


@pytest.mark.parametrize(("empty", "full"), [("fu.2", "fu.1"), ("fu.1", "fu.2")])
def test_a_fuse_with_all_leads_on_one_side_protects_nothing(empty: str, full: str) -> None:
    found = only(FUSED.replace(empty, full))
    assert (found.rule, found.fault, found.breaks) == (NAME, "fuse", Breaks.SAFETY)
    moved = f"{full} to stat.R" if full == "fu.1" else f"xfmr.R to {full}"
    assert found.message == (
        f"fu protects nothing: the leads xfmr.R to {full} and {full} to stat.R all land on {full}, "
        f"and {empty} is empty; land {moved} on {empty}, so that the current goes through fu"
    )
    assert raised(mended(FUSED.replace(empty, full))) == []


UNUSED = {
    "a spare, fed": FUSED + "part fv is breaker\nwire xfmr.R to fv.1\n",
    "a spare that hands on the feed": changed(
        FUSED, ("part fu", "part fv is fuse\npart fu"), ("xfmr.R to fu.1", "xfmr.R to fv.1 to fu.1")
    ),
    "not fed by what is drawn": FUSED.replace("wire xfmr.R to fu.1\n", "").replace(
        "fu.2 to stat.R", "fu.2 to stat.R\nwire fu.2 to open"
    ),
    "in its place": FUSED,
}


@pytest.mark.parametrize("unit", UNUSED.values(), ids=UNUSED)
def test_a_fuse_that_is_only_unused_is_not_told_so(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
