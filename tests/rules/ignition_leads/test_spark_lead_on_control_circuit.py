"""The ignition voltage on a terminal of another circuit."""

from __future__ import annotations

import pytest

from tests.rules.raised import only, raised
from tests.rules.units import direct, one_rod, two_rod
from wirecheck.model.finding import Breaks


def test_the_valve_is_told_in_full() -> None:
    found = only(one_rod(more="wire pilot.SPARK to valve.MV\n"))
    assert (found.rule, found.span.text) == ("spark-lead-on-control-circuit", "valve.MV")
    assert found.message == (
        "the ignition voltage of box.SPARK is joined to valve.MV: take that lead off; box.SPARK "
        "goes to pilot.SPARK and nowhere else"
    )
    assert found.seen_at_unit == (
        "Spark at the wrong place or none; the ignition voltage gets into the control circuit and "
        "destroys what is on it."
    )
    assert found.breaks is Breaks.SAFETY


RAISING = {
    "instead of the electrode": one_rod(spark="wire box.SPARK to box.MV: ignition-cable\n"),
    "through a switch": two_rod(
        spark="wire box.SPARK to door to pilot.SPARK: ignition-cable\n",
        more="part door is door-switch\n",
    ),
    "on the damper's socket": direct(spark="wire box.SPARK to box.24V: ignition-cable\n"),
}


@pytest.mark.parametrize("unit", RAISING.values(), ids=RAISING)
def test_other_ways_to_it_are_one_finding_each(unit: str) -> None:
    assert only(unit).rule == "spark-lead-on-control-circuit"


SILENT = {
    "one rod": one_rod(),
    "two rods": two_rod(),
    "the word spark on a label": two_rod(
        valve="wire box.PV to valve.PV\nwire box.MV to valve.SPARK\nwire box.VC to valve.C\n",
        more='labels valve: MV as "SPARK"\n',
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert raised(unit) == []
