"""Both sides of the secondary on one conductor."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FAN, changed
from tests.rules.raised import findings, mended, only
from tests.rules.units import two_rod
from wirecheck.model.finding import Breaks

NAME = "secondary-shorted"


def test_a_jumper_is_told_in_full() -> None:
    found = only(FAN + "jumper xfmr.R to xfmr.C\n")
    assert (found.rule, found.breaks) == (NAME, Breaks.SAFETY)
    assert found.span.text == "xfmr.R to xfmr.C"
    assert found.message == (
        "the jumper xfmr.R to xfmr.C joins xfmr.R to xfmr.C: both sides of xfmr are one conductor; "
        "take it out"
    )


LOUD = {
    "the lead from hot to common is named, though typed first": (
        changed(
            FAN,
            ("wire xfmr.R to stat.R", "splice nut\nwire xfmr.R to xfmr.C\nwire xfmr.R to stat.R"),
        ),
        "xfmr.R to xfmr.C",
    ),
    "com has both": (two_rod(more="wire xfmr.R to box.COM\n"), "xfmr.R to box.COM"),
    "24V and com are joined at the control": (
        two_rod(more="wire xfmr.R to box.24V\njumper box.24V to box.COM\n"),
        "box.24V to box.COM",
    ),
    "at the thermostat": (
        changed(FAN, ("thermostat", "thermostat: power common"))
        + "wire xfmr.C to stat.R\nwire xfmr.C to stat.C\n",
        "xfmr.C to stat.R",
    ),
    "of several leads on a strip the last one typed": (
        "part strip is terminal-strip\n"
        + FAN
        + "wire strip.1 to xfmr.R\nwire strip.2 to xfmr.C\nwire strip.1 to strip.2\n",
        "strip.1 to strip.2",
    ),
}


@pytest.mark.parametrize(("unit", "text"), LOUD.values(), ids=LOUD)
def test_the_likeliest_lead_is_named(unit: str, text: str) -> None:
    assert [(found.rule, found.span.text) for found in findings(unit)] == [(NAME, text)]


SILENT = {
    "a load stands between": FAN,
    "both sides on earth is told as the hot side earthed": FAN + "wire xfmr.R to earth\n",
    "contacts between have a rule of their own": changed(
        FAN, ("stat.W to fan.A", "stat.W to fan.B")
    )
    + "wire fan.A to xfmr.R\n",
    "one transformer's r on the other's c is a series, not a short": FAN
    + "part aux is transformer\npart aid is relay\n"
    + "wire aux.R to aid to xfmr.C\nwire aux.C to xfmr.R\n",
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]


GUARDED = changed(
    FAN, ("part fan", "part f is fuse: 3 A\npart fan"), ("xfmr.R to", "xfmr.R to f to")
)


def test_a_jumper_behind_a_fuse_is_the_mistake_and_not_the_lead_of_the_fuse() -> None:
    found = only(GUARDED + "jumper f.2 to fan.B\n")
    assert (found.rule, found.fault, found.span.text) == (NAME, "behind-fuse", "f.2 to fan.B")
    assert found.message == (
        "the jumper f.2 to fan.B joins xfmr.R to xfmr.C, with nothing but f between: take it out"
    )
    assert found.seen_at_unit == "A dead short: f opens as soon as power is on."
    assert mended(GUARDED + "jumper f.2 to fan.B\n").strip() == GUARDED.strip()


def test_a_fuse_in_its_place_is_no_short() -> None:
    assert findings(GUARDED) == ()
