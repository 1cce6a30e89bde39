"""The ground of the line."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FED, PUMP, changed, without
from tests.rules.raised import findings, mended, only, raised
from wirecheck.model.finding import Breaks

NAME = "mains-ground-not-earthed"
LOST = "splice nut\n" + changed(PUMP, ("line.G to earth", "line.G to nut"))


def test_a_ground_lead_that_ends_short_is_told_in_full() -> None:
    found = only(LOST)
    assert (found.rule, found.breaks, found.span.text) == (NAME, Breaks.SAFETY, "line.G")
    assert found.message == (
        "the ground lead from line.G does not reach the unit's earth: land it on the unit's "
        "ground screw"
    )
    assert raised(mended(LOST)) == []


def test_a_broken_ground_lead_is_this_finding_alone() -> None:
    assert only(changed(PUMP, ("earth: green", "earth: green, broken"))).rule == NAME


SILENT = {
    "on earth": PUMP,
    "over a splice": LOST + "wire nut to earth\n",
    "not drawn at all": without(PUMP, "wire line.G to earth: green"),
    "not traced": changed(PUMP, ("line.G to earth", "line.G to unknown")),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]


def test_a_ground_lead_left_out_where_earth_is_drawn() -> None:
    unit = without(FED, "wire line.G to earth: green")
    found = only(unit)
    assert (found.fault, found.span.text, found.terminals) == ("no-lead", "line", ("line.G",))
    assert found.message == (
        "no ground lead runs from line.G to the unit's earth: run one to the unit's ground screw"
    )
    assert raised(mended(unit)) == []
