"""Spark lead on the rod, sense lead on the electrode."""

from __future__ import annotations

import pytest

from tests.rules.raised import mended, only, raised
from tests.rules.units import direct, one_rod, two_rod
from wirecheck.model.finding import Breaks

SPARK = "wire box.SPARK to pilot.ROD: ignition-cable\n"
SENSE = "wire box.SENSE to pilot.SPARK\n"


def test_the_exchange_is_told_in_full() -> None:
    found = only(two_rod(spark=SPARK, sense=SENSE))
    assert (found.rule, found.span.text) == ("spark-and-sense-exchanged", "pilot.ROD")
    assert found.message == (
        "the spark and sense leads are exchanged: box.SPARK goes to the rod pilot.ROD and "
        "box.SENSE to the electrode pilot.SPARK; exchange them at the burner"
    )
    assert found.seen_at_unit == (
        "The spark jumps from the rod; the electrode in the flame may prove it. It works by luck, "
        "and stops without warning."
    )
    assert found.breaks is Breaks.SAFETY


@pytest.mark.parametrize(
    "unit", [two_rod(spark=SPARK, sense=SENSE), direct(spark=SPARK, sense=SENSE)]
)
def test_the_edits_mend_it(unit: str) -> None:
    assert raised(mended(unit)) == []


def test_labels_that_swap_the_words_do_not_matter() -> None:
    labels = 'labels pilot: SPARK as "ROD", ROD as "SPARK"\n'
    right = two_rod(
        spark="wire box.SPARK to pilot.ROD: ignition-cable\n",
        sense="wire box.SENSE to pilot.SPARK\n",
        more=labels,
    )
    assert raised(right) == []


SILENT = {
    "each on its own": two_rod(),
    "each on its own, direct": direct(),
    "one rod": one_rod(),
    "a sketch of the burner's leads alone": (
        "part box is pilot-ignition-control\npart pilot is pilot-burner: two-rod\n"
        "wire pilot.SPARK to box.SPARK\nwire pilot.ROD to box.SENSE\nwire pilot.HOOD to box.GND\n"
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert raised(unit) == []
