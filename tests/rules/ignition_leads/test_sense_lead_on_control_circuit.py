"""The flame signal's circuit on a terminal of another one."""

from __future__ import annotations

import pytest

from tests.rules.raised import only, raised
from tests.rules.units import direct, one_rod, two_rod


def test_a_rod_on_the_wrong_blade_is_told_in_full() -> None:
    found = only(two_rod(sense="wire box.24V to pilot.ROD\n"))
    assert (found.rule, found.span.text) == ("sense-lead-on-control-circuit", "box.24V")
    assert found.message == (
        "the flame signal's circuit is joined to box.24V: take that lead off; the sense lead runs "
        "from box.SENSE to pilot.ROD alone"
    )
    assert found.seen_at_unit == (
        "The pilot lights and is not proved; the flame amplifier may be destroyed."
    )


RAISING = {
    "beside the rod": two_rod(more="wire box.SENSE to valve.PV\n"),
    "instead of the rod": direct(sense="wire box.SENSE to box.TH\n"),
    "through a switch": two_rod(
        sense="wire box.SENSE to door to pilot.ROD\n", more="part door is door-switch\n"
    ),
    "one rod": one_rod(sense="wire box.SENSE to box.PV\n"),
}


@pytest.mark.parametrize("unit", RAISING.values(), ids=RAISING)
def test_other_ways_to_it_are_one_finding_each(unit: str) -> None:
    assert only(unit).rule == "sense-lead-on-control-circuit"


SILENT = {
    "two rods": two_rod(),
    "one rod with nothing on sense": one_rod(),
    "a strip in the sense lead": two_rod(
        sense="wire box.SENSE to tb.3 to pilot.ROD\n", more="part tb is terminal-strip\n"
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert raised(unit) == []
