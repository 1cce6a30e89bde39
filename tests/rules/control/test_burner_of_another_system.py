"""A pilot control on a main burner, a direct control on a pilot."""

from __future__ import annotations

import pytest

from tests.rules.raised import only, raised
from tests.rules.units import beside, direct, one_rod, two_rod
from wirecheck.model.finding import Breaks


def test_a_direct_control_on_a_pilot_is_told_in_full() -> None:
    unit = direct().replace("direct-burner", "pilot-burner: two-rod")
    found = only(unit)
    assert (found.rule, found.fault, found.span.text) == (
        "burner-of-another-system",
        "direct-on-pilot",
        "box",
    )
    assert found.message == (
        "box is a direct ignition control and pilot is a pilot: use a pilot ignition control, "
        "which opens the main gas only once the pilot is proved"
    )
    assert found.seen_at_unit == "Main gas opens with the spark, before the pilot is proved."
    assert found.breaks is Breaks.SAFETY


def test_a_pilot_control_on_a_main_burner() -> None:
    found = only(two_rod(burner="direct-burner"))
    assert (found.fault, found.breaks) == ("pilot-on-direct", Breaks.SAFETY)


SILENT = {
    "two rods": two_rod(),
    "one rod": one_rod(),
    "direct": direct(),
    "one of each side by side": direct(more=beside()),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert raised(text) == []
