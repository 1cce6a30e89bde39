"""The spark lead's make."""

from __future__ import annotations

import pytest

from tests.rules.raised import mended, only, raised
from tests.rules.units import direct, one_rod, two_rod
from wirecheck.model.finding import Breaks

PLAIN = "wire box.SPARK to pilot.SPARK: red, 18 AWG\n"


def test_a_control_lead_is_told_in_full() -> None:
    found = only(one_rod(spark=PLAIN))
    assert (found.rule, found.span.text) == (
        "ordinary-wire-as-ignition-cable",
        "box.SPARK to pilot.SPARK",
    )
    assert found.message == (
        "the spark lead box.SPARK to pilot.SPARK is given as 18 AWG, red, not as ignition cable: "
        "use ignition cable, or say so if it is"
    )
    assert found.seen_at_unit == (
        "The spark leaks away through the insulation: it lights badly, and later not at all."
    )
    assert found.breaks is Breaks.WORKMANSHIP


@pytest.mark.parametrize("unit", [one_rod(spark=PLAIN), direct(spark=PLAIN)])
def test_the_edit_mends_it(unit: str) -> None:
    assert raised(mended(unit)) == []


def test_a_core_of_the_thermostat_cable_is_ordinary_wire() -> None:
    unit = two_rod(spark="wire box.SPARK to pilot.SPARK: in tc\n", more="cable tc: 18/5, 10 ft\n")
    assert "ordinary-wire-as-ignition-cable" in [rule for rule, _fault, _text in raised(unit)]


SILENT = {
    "ignition cable": one_rod(),
    "nothing said of it": one_rod(spark="wire box.SPARK to pilot.SPARK\n"),
    "only its colour, as ignition cable has one too": one_rod(
        spark="wire box.SPARK to pilot.SPARK: orange, 30 in\n"
    ),
    "only its length": one_rod(spark="wire box.SPARK to pilot.SPARK: 24 in\n"),
    "ignition cable of a colour": two_rod(
        spark="wire box.SPARK to pilot.SPARK: orange, ignition-cable\n"
    ),
    "a sense lead of ordinary wire": two_rod(sense="wire box.SENSE to pilot.ROD: yellow, 18 AWG\n"),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert raised(unit) == []


def test_leads_exchanged_are_not_told_twice() -> None:
    unit = two_rod(
        spark="wire box.SPARK to pilot.ROD: red, 18 AWG\n", sense="wire box.SENSE to pilot.SPARK\n"
    )
    assert only(unit).rule == "spark-and-sense-exchanged"
