"""Two transformers joined on both sides."""

from __future__ import annotations

import pytest

from tests.rules.circuits import changed, without
from tests.rules.raised import findings, mended, only, raised
from wirecheck.model.finding import Breaks

NAME = "transformers-in-parallel"

TWO = """\
part heat is transformer
part cool is transformer
part stat is thermostat: feeds two
part furnace is relay
part fan is relay
wire heat.R to stat.Rh
wire stat.W to furnace to heat.C
wire cool.R to stat.Rc
wire stat.G to fan to cool.C
wire heat.C to earth: green
wire cool.C to earth: green
"""
JUMPER = "jumper stat.Rh to stat.Rc\n"


def test_the_thermostat_jumper_is_told_in_full() -> None:
    found = only(TWO + JUMPER)
    assert (found.rule, found.breaks, found.span.text) == (
        NAME,
        Breaks.SAFETY,
        "stat.Rh to stat.Rc",
    )
    assert found.message == (
        "the jumper stat.Rh to stat.Rc joins the hot sides of heat and cool, whose common sides "
        "are joined too: take it out and let each feed its own circuit"
    )
    assert raised(mended(TWO + JUMPER)) == []


LOUD = {
    "through the contact of a relay": TWO + "wire heat.R to fan.COM..NO to cool.R\n",
    "with the commons joined by a lead": without(TWO, "wire cool.C to earth: green")
    + "wire heat.C to cool.C\n"
    + JUMPER,
    "r on the other's r at a splice": "splice nut\n"
    + changed(TWO, ("heat.R to stat", "heat.R to nut to stat"), ("cool.R to", "cool.R to nut to")),
}


@pytest.mark.parametrize("unit", LOUD.values(), ids=LOUD)
def test_other_ways_of_joining_are_found(unit: str) -> None:
    assert [found.rule for found in findings(unit)] == [NAME]


SILENT = {
    "commons that share the earth are harmless": TWO,
    "commons that share a lead are harmless": TWO + "wire heat.C to cool.C\n",
    "hot sides alone joined are harmless": without(
        TWO, "wire heat.C to earth: green", "wire cool.C to earth: green"
    )
    + JUMPER,
    "the jumper belongs there with one transformer": """\
part xfmr is transformer
part stat is thermostat: feeds two
part furnace is relay
part fan is relay
wire xfmr.R to stat.Rh
jumper stat.Rh to stat.Rc
wire stat.W to furnace to xfmr.C
wire stat.G to fan to xfmr.C
wire xfmr.C to earth: green
""",
    "a change-over contact takes one at a time": TWO
    + "part over is relay\npart lamp is lamp\nwire heat.R to over to heat.C\n"
    + "wire heat.R to over.NO\nwire cool.R to over.NC\nwire over.COM to lamp to heat.C\n",
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]


def test_three_in_parallel_are_one_finding() -> None:
    third = "part aux is transformer\nwire aux.R to heat.R\nwire aux.C to heat.C\n"
    found = [each for each in findings(TWO + JUMPER + third) if each.rule == NAME]
    assert len(found) == 1
    assert "heat, cool and aux" in found[0].message
