"""COM on the hot side."""

from __future__ import annotations

import pytest

from tests.rules.circuits import changed, without
from tests.rules.raised import findings, mended, only, raised
from tests.rules.units import beside, direct, one_rod, two_rod
from wirecheck.model.finding import Breaks

NAME = "hot-and-common-exchanged"
AT_TRANSFORMER = (
    ("wire xfmr.R to limit", "wire xfmr.C to limit"),
    ("wire xfmr.C to box.COM", "wire xfmr.R to box.COM"),
)
AT_CONTROL = (("stat to box.TH", "stat to box.COM"), ("xfmr.C to box.COM", "xfmr.C to box.TH"))
INSULATED = "pilot-burner: two-rod, bond none"
EARTH = "wire xfmr.C to earth: green"


def test_exchanged_at_the_transformer_is_told_in_full() -> None:
    found = only(changed(two_rod(), *AT_TRANSFORMER))
    assert (found.rule, found.fault, found.breaks) == (NAME, "short", Breaks.SAFETY)
    assert found.span.text == "box.COM"
    assert found.message == (
        "box.COM is on xfmr.R and the call at box.TH comes from xfmr.C: hot and common are "
        "exchanged; exchange the two leads at the transformer"
    )
    assert found.seen_at_unit == (
        "A dead short through burner ground, hood and earth: the fuse blows or the "
        "transformer burns out."
    )


@pytest.mark.parametrize("unit", [two_rod(), one_rod(), direct()])
@pytest.mark.parametrize("exchange", [AT_TRANSFORMER, AT_CONTROL])
def test_the_edits_mend_it(unit: str, exchange: tuple[tuple[str, str], ...]) -> None:
    wrong = changed(unit, *exchange)
    assert only(wrong).breaks is Breaks.SAFETY
    assert raised(mended(wrong)) == []


@pytest.mark.parametrize(
    ("unit", "fault", "breaks"),
    [
        (changed(two_rod(burner=INSULATED), *AT_TRANSFORMER), "earthed-call", Breaks.SAFETY),
        (without(changed(two_rod(), *AT_TRANSFORMER), EARTH), "floating", Breaks.WORKMANSHIP),
        (changed(two_rod(), *AT_CONTROL), "call-lead-short", Breaks.SAFETY),
        (without(changed(two_rod(), *AT_CONTROL), EARTH), "call-lead-floating", Breaks.WORKMANSHIP),
        (changed(two_rod(), AT_TRANSFORMER[1]), "com-on-hot-short", Breaks.SAFETY),
        (
            changed(two_rod(burner=INSULATED), AT_TRANSFORMER[1]),
            "com-on-hot-dead",
            Breaks.OPERATION,
        ),
    ],
)
def test_what_is_earthed_decides(unit: str, fault: str, breaks: Breaks) -> None:
    found = only(unit)
    assert (found.rule, found.fault, found.breaks) == (NAME, fault, breaks)


LOUD = {
    "with the hood on earth by a lead": changed(
        two_rod(more="wire pilot.HOOD to earth: green\n"), *AT_TRANSFORMER
    ),
    "over splices": changed(
        two_rod(more="splice nut\n"),
        AT_TRANSFORMER[0],
        ("wire xfmr.C to box.COM", "wire xfmr.R to nut to box.COM"),
    ),
    "typed backwards": changed(
        two_rod(), AT_TRANSFORMER[0], ("wire xfmr.C to box.COM", "wire box.COM to xfmr.R")
    ),
    "in the one of two units that is wrong": changed(two_rod(), *AT_CONTROL) + beside(),
}


@pytest.mark.parametrize("unit", LOUD.values(), ids=LOUD)
def test_other_ways_of_typing_it_are_found(unit: str) -> None:
    assert [found.rule for found in findings(unit)] == [NAME]


SILENT = {
    "right": two_rod(),
    "right, with nothing earthed": without(two_rod(burner=INSULATED), EARTH),
    "no common lead at all is another mistake": without(two_rod(), "wire xfmr.C to box.COM: blue"),
    "both sides on com is a short": two_rod(more="wire xfmr.R to box.COM\n"),
    "a limit in the common is another mistake": changed(
        two_rod(more="part aux is high-limit\n"), ("xfmr.C to box.COM", "xfmr.C to aux to box.COM")
    ),
    "two units on one earth": two_rod(more=beside()),
    "a sketch without a supply": (
        "part box is pilot-ignition-control\npart pilot is pilot-burner: one-rod\n"
        "wire box.SPARK to pilot.SPARK: ignition-cable\nwire box.GND to pilot.HOOD\n"
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]


def test_the_burner_s_metal_is_hot_only_where_a_lead_brings_com_to_it() -> None:
    on_hot = changed(
        two_rod(burner="pilot-burner: two-rod, bond none"),
        ("xfmr.C to box.COM", "xfmr.R to box.COM"),
    )
    (with_ground,) = (f for f in findings(on_hot) if f.fault == "com-on-hot-dead")
    assert with_ground.seen_at_unit.endswith("Its burner's metal is on the hot side.")
    without_ground = changed(on_hot, ("wire box.GND to pilot.HOOD: green\n", ""))
    (dead,) = (f for f in findings(without_ground) if f.fault == "com-on-hot-dead")
    assert dead.seen_at_unit == "Dead: no volts across the control."
