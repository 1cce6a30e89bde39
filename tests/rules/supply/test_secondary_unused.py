"""A transformer that feeds nothing."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FED, changed, without
from tests.rules.raised import findings, only
from wirecheck.model.finding import Breaks

NAME = "secondary-unused"
SPARE = FED + "part spare is transformer\nwire line.L1 to spare.L1\nwire line.N to spare.N\n"


def test_an_unused_secondary_is_told_in_full() -> None:
    found = only(SPARE)
    assert (found.rule, found.breaks, found.span.text) == (NAME, Breaks.OPERATION, "spare")
    assert found.message == (
        "nothing is wired to the secondary of spare: run its leads from spare.R and spare.C, or "
        "take the transformer out"
    )


SILENT = {
    "it feeds a relay": FED,
    "one side alone is an empty terminal": without(
        changed(FED, ("wire fan.B to xfmr.C", "wire fan.B to earth")), "wire xfmr.C to earth: green"
    ),
    "a transformer with no lead at all is a part not wired": FED + "part spare is transformer\n",
    "where the leads go need not be known": SPARE
    + "wire spare.R to unknown\nwire spare.C to unknown\n",
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
