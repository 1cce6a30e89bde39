"""Joints on the ignition voltage."""

from __future__ import annotations

import pytest

from tests.rules.raised import only, raised
from tests.rules.units import one_rod, two_rod
from wirecheck.model.finding import Breaks


def test_a_wire_nut_is_told_in_full() -> None:
    found = only(
        one_rod(spark="wire box.SPARK to nut to pilot.SPARK: ignition-cable\n", more="splice nut\n")
    )
    assert (found.rule, found.span.text) == ("ignition-lead-spliced", "nut")
    assert found.message == (
        "the spark lead from box.SPARK to pilot.SPARK goes through nut: replace it by one piece of "
        "ignition cable"
    )
    assert found.seen_at_unit == "The spark leaks away at the joint, first in damp weather."
    assert found.breaks is Breaks.WORKMANSHIP


def test_a_strip_is_a_joint_too() -> None:
    found = only(
        two_rod(
            spark="wire box.SPARK to tb.4 to pilot.SPARK: ignition-cable\n",
            more="part tb is terminal-strip\n",
        )
    )
    assert (found.rule, found.span.text) == ("ignition-lead-spliced", "tb.4")


SILENT = {
    "a spliced sense lead": two_rod(
        sense="wire box.SENSE to nut to pilot.ROD\n", more="splice nut\n"
    ),
    "a spliced ground lead": one_rod(
        ground="wire box.GND to nut to pilot.HOOD: green\n", more="splice nut\n"
    ),
    "one piece": one_rod(),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert raised(unit) == []
