"""The ground lead that only a contact completes."""

from __future__ import annotations

import pytest

from tests.rules.raised import only, raised
from tests.rules.units import two_rod


def test_a_fuse_is_told_in_full() -> None:
    found = only(
        two_rod(ground="wire box.GND to f1 to pilot.HOOD: green\n", more="part f1 is fuse\n")
    )
    assert (found.rule, found.span.text) == ("burner-ground-through-contact", "f1")
    assert found.message == (
        "the burner ground from box.GND to pilot.HOOD goes through f1: run a green lead straight "
        "from box.GND to pilot.HOOD"
    )
    assert found.seen_at_unit == (
        "It works while f1 is closed and clean; else the pilot lights and is not proved."
    )


SILENT = {
    "a plug and socket is one conductor": two_rod(
        ground="wire box.GND to pl.1 to pilot.HOOD: green\n", more="part pl is plug\n"
    ),
    "so is a strip": two_rod(
        ground="wire box.GND to tb.1 to pilot.HOOD: green\n", more="part tb is terminal-strip\n"
    ),
    "and a wire-nut": two_rod(
        ground="wire box.GND to nut to pilot.HOOD: green\n", more="splice nut\n"
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert raised(unit) == []
