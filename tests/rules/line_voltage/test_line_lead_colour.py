"""White and green at line voltage."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FED, PUMP, changed
from tests.rules.raised import findings, only
from wirecheck.model.finding import Breaks

NAME = "line-lead-colour"
SKETCH = (
    "part disc is door-switch\npart xfmr is transformer\npart fan is relay\n"
    "wire xfmr.R to fan to xfmr.C\nwire xfmr.C to earth\n"
)


def test_a_green_hot_lead_is_told_in_full() -> None:
    found = only(changed(PUMP, ("pump.L: black", "pump.L: green/yellow")))
    assert (found.rule, found.fault, found.breaks) == (NAME, "green-hot", Breaks.WORKMANSHIP)
    assert found.span.text == "line.L1 to disc"
    assert found.message == (
        "the green/yellow lead line.L1 to disc.1 is hot at line voltage: green is for the ground "
        "alone; run a lead of another colour"
    )


@pytest.mark.parametrize(
    ("unit", "fault"),
    [
        (changed(PUMP, ("pump.L: black", "pump.L (white): black")), "white-hot"),
        (changed(PUMP, ("pump.N: white", "pump.N: green")), "green-neutral"),
        (
            SKETCH + "wire disc.2 to xfmr.L1: white\nwire disc.1 to unknown\n",
            "white-hot",
        ),
    ],
)
def test_each_wrong_use(unit: str, fault: str) -> None:
    assert (only(unit).rule, only(unit).fault) == (NAME, fault)


SILENT = {
    "black and white": PUMP,
    "white W and green G are normal at 24 V": changed(
        FED, ("stat.R\n", "stat.R: red\n"), ("stat.W to fan.A", "stat.W to fan.A: white")
    )
    + "part lamp is lamp\nwire stat.G to lamp.L: green\nwire lamp.N to xfmr.C\n",
    "white with a tracer is another colour": changed(
        PUMP, ("pump.L: black", "pump.L: white/black")
    ),
    "green to earth": PUMP + "wire line.G to earth: green/yellow\n",
    "leads landed wrong way round may have the right colours": changed(
        FED, ("to xfmr.L1", "to xfmr.x"), ("to xfmr.N", "to xfmr.L1"), ("xfmr.x", "xfmr.N")
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
