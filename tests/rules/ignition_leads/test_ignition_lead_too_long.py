"""The spark lead's length."""

from __future__ import annotations

import pytest

from tests.rules.raised import only, raised
from tests.rules.units import one_rod, two_rod
from wirecheck.model.finding import Breaks


def spark(length: str) -> str:
    return f"wire box.SPARK to pilot.SPARK: ignition-cable, {length}\n"


def test_six_feet_are_told_in_full() -> None:
    found = only(one_rod(spark=spark("6 ft")))
    assert (found.rule, found.span.text) == ("ignition-lead-too-long", "box.SPARK to pilot.SPARK")
    assert found.message == (
        "the spark lead from box.SPARK to pilot.SPARK is 6 ft long; keep it to about 3 ft: mount "
        "the control nearer, or take a shorter way"
    )
    assert found.seen_at_unit == "The spark is weak; it lights late or not at all."
    assert found.breaks is Breaks.WORKMANSHIP


@pytest.mark.parametrize("length", ["40 in", "1.2 m", "1100 mm", "4-5 ft"])
def test_every_unit_of_length_counts(length: str) -> None:
    assert only(two_rod(spark=spark(length))).rule == "ignition-lead-too-long"


@pytest.mark.parametrize("length", ["24 in", "36 in", "3 ft", "1 m", "900 mm", "2-6 ft"])
def test_about_three_feet_are_silent(length: str) -> None:
    assert raised(two_rod(spark=spark(length))) == []


def test_a_long_sense_lead_is_silent() -> None:
    assert raised(two_rod(sense="wire box.SENSE to pilot.ROD: 10 ft\n")) == []


def test_a_run_is_as_long_as_it_says_whatever_it_is_made_of() -> None:
    run = "wire box.SPARK to nut to pilot.SPARK: ignition-cable, {}\n"
    short, long = (
        one_rod(spark=run.format(length), more="splice nut\n") for length in ("2 ft", "6 ft")
    )
    assert "ignition-lead-too-long" not in [rule for rule, _fault, _text in raised(short)]
    assert "ignition-lead-too-long" in [rule for rule, _fault, _text in raised(long)]
