"""Green leads of another use on the burner ground."""

from __future__ import annotations

import pytest

from tests.rules.raised import findings, only
from tests.rules.units import GROUND, two_rod
from wirecheck.model.finding import Breaks

NAME = "green-lead-misused"


def test_it_is_told_in_full() -> None:
    found = only(two_rod(valve="plug box to valve: PV, MV\nwire valve.C to box.GND: green\n"))
    assert (found.rule, found.breaks) == (NAME, Breaks.WORKMANSHIP)
    assert found.message == (
        "the green lead valve.C to box.GND is on the burner ground and serves valve.C: run a lead "
        "of another colour from the terminal meant for it"
    )


SILENT = {
    "to the burner": two_rod(),
    "to earth as well": two_rod(ground=GROUND + "wire box.GND to earth: green/yellow\n"),
    "to the burner over a splice": two_rod(
        ground="wire box.GND to nut to pilot.HOOD: green\n", more="splice nut\n"
    ),
    "another colour": two_rod(valve="plug box to valve: PV, MV\nwire valve.C to box.GND: blue\n"),
    "a green call lead": two_rod(
        more="part fan is relay\nwire stat.G to fan.A: green\nwire fan.B to xfmr.C\n"
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
