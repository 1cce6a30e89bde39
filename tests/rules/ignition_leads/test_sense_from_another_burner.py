"""A flame proved that another control lit."""

from __future__ import annotations

import pytest

from tests.rules.raised import only, raised
from tests.rules.units import beside, two_rod
from wirecheck.model.finding import Breaks

SECOND = beside().replace("one-rod", "two-rod")


def test_the_neighbours_rod_is_told_in_full() -> None:
    unit = two_rod(
        sense="wire box.SENSE to pilot2.ROD\n", more=SECOND + "wire box2.SENSE to pilot.ROD\n"
    )
    found = only(unit)
    assert (found.rule, found.span.text) == ("sense-from-another-burner", "pilot2.ROD")
    (other,) = found.related
    assert other.span.text == "pilot.ROD"
    assert other.label.startswith("the same mistake: box2.SENSE senses pilot.ROD")


def test_message() -> None:
    found = only(
        two_rod(
            sense="wire box.SENSE to pilot2.SPARK\n",
            more=beside(spark="wire box2.SPARK to pilot2.SPARK: ignition-cable\n"),
        )
    )
    assert found.message == (
        "box.SENSE senses pilot2.SPARK, while box.SPARK lights pilot: land the sense lead on "
        "pilot.ROD"
    )
    assert found.breaks is Breaks.SAFETY


SILENT = {
    "two units side by side": two_rod(more=SECOND + "wire box2.SENSE to pilot2.ROD\n"),
    "of two kinds": two_rod(more=beside()),
    "the second not traced": two_rod(
        more=SECOND + "wire box2.SENSE to unknown\n",
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert raised(unit) == []
