"""Cables with more leads than conductors."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FAN, changed
from tests.rules.raised import findings, only
from wirecheck.model.finding import Breaks

NAME = "cable-overfilled"
RUN = "cable run: 18/2, 40 ft\n" + changed(
    FAN,
    ("xfmr.R to stat.R", "xfmr.R to stat.R: red, in run"),
    ("stat.W to fan.A", "stat.W to fan.A: white, in run"),
)


def test_a_third_lead_in_two_conductors_is_told_in_full() -> None:
    found = only(changed(RUN, ("fan.B to xfmr.C", "fan.B to xfmr.C: blue, in run")))
    assert (found.rule, found.breaks, found.span.text) == (NAME, Breaks.WORKMANSHIP, "run")
    assert found.message == (
        "3 leads are typed in cable run, which has 2 conductors: correct the cable, or say where "
        "fan.B to xfmr.C really runs"
    )


SILENT = {
    "as many as there are": RUN,
    "spares": changed(RUN, ("18/2", "18/5")),
    "a conductor that goes on at a splice is one": changed(
        RUN, ("xfmr.R to stat.R: red, in run", "xfmr.R to nut to stat.R: red, in run")
    )
    + "splice nut\n",
    "another cable": changed(RUN, ("fan.B to xfmr.C", "fan.B to xfmr.C: blue, in other"))
    + "cable other: 18/2\n",
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
