"""Legs of the line joined, or on earth."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FED, PUMP, changed
from tests.rules.raised import findings, only
from wirecheck.model.finding import Breaks

NAME = "line-shorted"


def test_hot_on_neutral_is_told_in_full() -> None:
    found = only(changed(PUMP, ("line.N to pump.N", "line.N to pump.L")))
    assert (found.rule, found.fault, found.breaks) == (NAME, "joined", Breaks.SAFETY)
    assert found.message == (
        "the lead line.N to pump.L joins line.L1 to line.N with no load between: take it off and "
        "land it where it belongs"
    )
    assert found.seen_at_unit == "The breaker trips once disc closes."


@pytest.mark.parametrize(
    ("unit", "fault", "when"),
    [
        (PUMP + "jumper line.L1 to line.N\n", "joined", "as soon as power is on"),
        (PUMP + "wire pump.L to earth\n", "earthed", "once disc closes"),
        (
            changed(PUMP, ("to disc to", "to disc (touches earth) to")),
            "earthed",
            "as soon as power is on",
        ),
        (
            changed(PUMP, ("mains: 120 V", "mains: 240 V")) + "wire line.L1 to line.L2\n",
            "joined",
            "as soon as power is on",
        ),
    ],
)
def test_when_the_breaker_trips(unit: str, fault: str, when: str) -> None:
    found = only(unit)
    assert (found.rule, found.fault) == (NAME, fault)
    assert when in found.seen_at_unit


@pytest.mark.parametrize(
    "unit",
    [
        PUMP + "wire line.N to earth\n",
        PUMP + "wire pump.N to line.G\n",
        changed(PUMP, ("line.N to pump.N", "earth to pump.N")),
        changed(PUMP, ("line.N to pump.N", "line.G to pump.N")),
        FED + "wire xfmr.N to earth\n",
    ],
)
def test_a_neutral_on_earth_carries_its_current_there(unit: str) -> None:
    found = only(unit)
    assert (found.rule, found.fault, found.breaks) == (NAME, "neutral-earthed", Breaks.SAFETY)
    assert "land it on the neutral of the supply" in found.message


SILENT = {
    "a load between": PUMP,
    "a lead found broken": PUMP + "wire line.L1 to line.N: broken\n",
    "the ground on earth twice": PUMP + "wire line.G to earth\n",
    "a change-over contact": PUMP + "part over is relay: 120 V\npart lit is lamp: 120 V\n"
    "wire disc.2 to over to line.N\nwire line.L1 to over.NO\nwire line.N to over.NC\n"
    "wire over.COM to lit to line.N\n",
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
