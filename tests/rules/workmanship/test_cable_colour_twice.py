"""One colour twice in one cable."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FAN, changed
from tests.rules.raised import findings, only
from wirecheck.model.finding import Breaks

NAME = "cable-colour-twice"
RUN = "cable run: 18/5, 40 ft\n" + changed(
    FAN,
    ("xfmr.R to stat.R", "xfmr.R to stat.R: red, in run"),
    ("stat.W to fan.A", "stat.W to fan.A: white, in run"),
)
TWICE = changed(RUN, ("white, in run", "red, in run"))


def test_it_is_told_in_full() -> None:
    found = only(TWICE)
    assert (found.rule, found.breaks, found.span.text) == (
        NAME,
        Breaks.WORKMANSHIP,
        "stat.W to fan.A",
    )
    assert found.message == (
        "the leads stat.W to fan.A and xfmr.R to stat.R are both red in cable run, which has each "
        "colour once: look again which conductor it is"
    )


SILENT = {
    "each colour once": RUN,
    "one wire through a switch was typed with one colour": changed(
        RUN,
        ("wire xfmr.R to stat.R: red, in run", "wire xfmr.R to stat to fan.A: red, in run"),
        ("wire stat.W to fan.A: white, in run\n", ""),
    ),
    "two cables": changed(TWICE, ("stat.W to fan.A: red, in run", "stat.W to fan.A: red, in other"))
    + "cable other: 18/2\n",
    "the conductors are numbered": changed(
        TWICE,
        ("red, in run\nwire fan", 'red, number "7", in run\nwire fan'),
        ("stat.R: red,", 'stat.R: red, number "6",'),
    ),
    "a conductor that goes on at a splice": changed(
        RUN,
        (
            "xfmr.R to stat.R: red, in run",
            "xfmr.R to nut: red, in run\nwire nut to stat.R: red, in run",
        ),
    )
    + "splice nut\n",
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
