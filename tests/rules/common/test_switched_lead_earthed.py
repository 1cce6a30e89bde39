"""Leads past a switch on earth."""

from __future__ import annotations

import pytest

from tests.rules.circuits import changed, without
from tests.rules.raised import findings, only
from tests.rules.units import direct, two_rod
from wirecheck.model.finding import Breaks

NAME = "switched-lead-earthed"
EARTH = "wire xfmr.C to earth: green"
INSULATED = "pilot-burner: two-rod, bond none"


def test_an_earthed_pilot_lead_is_told_in_full() -> None:
    found = only(two_rod(more="wire box.PV to earth\n"))
    assert (found.rule, found.fault, found.breaks) == (NAME, "short", Breaks.OPERATION)
    assert found.span.text == "earth"
    assert found.message == (
        "the lead box.PV to earth is on earth, and its other side leads back to xfmr.C: free it, "
        "renew it where it is chafed, and land it where it belongs"
    )
    assert found.seen_at_unit == (
        "The fuse blows or the transformer burns out as soon as K1 in box closes."
    )


@pytest.mark.parametrize(
    ("unit", "moment"),
    [
        (two_rod(more="wire box.MV to earth\n"), "K2 in box closes"),
        (two_rod(more="wire valve.MV to pilot.HOOD\n"), "K2 in box closes"),
        (two_rod(more="wire box.TH to earth\n"), "stat calls"),
        (two_rod(more="wire stat.R to earth\n"), "there is power"),  # a limit is closed at rest
        (changed(two_rod(), ("stat to box.TH", "stat to box.TH (touches earth)")), "stat calls"),
        (direct(more="wire valve.1 to earth\n"), "K1 in box closes"),
    ],
)
def test_the_step_is_named(unit: str, moment: str) -> None:
    found = only(unit)
    assert (found.rule, found.fault) == (NAME, "short")
    assert found.seen_at_unit.endswith(f"as soon as {moment}.")


def test_a_limit_behind_the_thermostat_is_closed_already() -> None:
    unit = changed(
        two_rod(more="part ro is rollout-switch\n"),
        ("stat to box.TH", "stat to ro to box.TH (touches earth)"),
    )
    assert only(unit).seen_at_unit.endswith("as soon as stat calls.")


def test_with_nothing_else_earthed_it_waits() -> None:
    unit = without(two_rod(burner=INSULATED, more="wire box.PV to earth\n"), EARTH)
    found = next(each for each in findings(unit) if each.rule == NAME)
    assert (found.fault, found.breaks) == ("floating", Breaks.WORKMANSHIP)


SILENT = {
    "the common may be on earth wherever it likes": two_rod(more="wire valve.C to earth\n"),
    "the burner ground is on the hood": two_rod(),
    "r on earth has a rule of its own": two_rod(more="wire limit.1 to earth\n"),
    "exchanged leads put com on a switched lead": changed(
        two_rod(), ("stat to box.TH", "stat to box.COM"), ("xfmr.C to box.COM", "xfmr.C to box.TH")
    ),
    "the sense lead has rules of its own": two_rod(
        sense="wire box.SENSE to pilot.ROD: touches earth\n"
    ),
    "on an insulated hood that nothing else is on": two_rod(
        more="part torch is pilot-burner: one-rod, bond none\nwire valve.PV to torch.HOOD\n"
        "wire torch.SPARK to unknown\n"
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
