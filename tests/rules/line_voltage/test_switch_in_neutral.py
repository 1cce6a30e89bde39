"""Switches and fuses in the neutral."""

from __future__ import annotations

import pytest

from tests.rules.circuits import PUMP, changed
from tests.rules.raised import findings, only
from wirecheck.model.finding import Breaks

NAME = "switch-in-neutral"
WRONG = changed(
    PUMP, ("line.L1 to disc to pump.L", "line.L1 to pump.L"), ("line.N to", "line.N to disc to")
)


def test_a_switch_in_the_neutral_is_told_in_full() -> None:
    found = only(WRONG)
    assert (found.rule, found.fault, found.breaks) == (NAME, "switch", Breaks.SAFETY)
    assert found.message == (
        "disc stands in the neutral: put it in the hot lead and run the neutral straight through"
    )
    assert found.seen_at_unit == "When disc opens, what lies beyond it stops and stays hot."


def test_a_fuse_in_the_neutral() -> None:
    assert only(changed(WRONG, ("service-switch", "fuse: 5 A"))).fault == "fuse"


def test_a_fuse_in_both_leads_still_opens_the_neutral_alone() -> None:
    unit = "part fu is fuse\n" + changed(
        PUMP, ("service-switch", "fuse"), ("line.N to pump.N", "line.N to fu to pump.N")
    )
    assert only(unit).fault == "fuse"


def test_a_relay_contact_in_the_neutral() -> None:
    unit = changed(
        WRONG,
        ("part disc is service-switch", "part disc is relay: 120 V"),
        ("to disc to", "to disc.COM..NO to"),
    )
    assert only(unit + "wire line.L1 to disc to line.N\n").rule == NAME


SILENT = {
    "in the hot lead": PUMP,
    "a contactor that opens both leads together": changed(
        PUMP,
        ("disc is service-switch", "disc is contactor: 120 V"),
        ("line.L1 to disc to", "line.L1 to disc.1.COM..1.NO to"),
        ("line.N to", "line.N to disc.2.COM..2.NO to"),
    )
    + "wire line.L1 to disc to line.N\n",
    "in the second hot leg": changed(
        WRONG,
        ("mains: 120 V", "mains: 240 V"),
        ("pump is circulator", "pump is circulator: 240 V"),
        ("line.N to disc", "line.L2 to disc"),
        ("white", "red"),
    ),
    "reversed at the supply is told as reversed": changed(
        PUMP,
        ("line.L1 to disc", "line.x to disc"),
        ("line.N to", "line.L1 to"),
        ("line.x", "line.N"),
    ),
    "a contact with one lead": PUMP + "part aux is relay: 120 V\nwire line.N to aux.COM\n"
    "wire aux.NO to unknown\nwire line.L1 to aux to line.N\n",
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
