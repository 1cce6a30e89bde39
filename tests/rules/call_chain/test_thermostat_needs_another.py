"""Thermostats that call only together with another one."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import CALL, unit, zones
from tests.rules.raised import findings, only
from wirecheck.model.finding import Breaks

NAME = "thermostat-needs-another"
FIRST = "wire xfmr.R to stat-1 to zone-1.M1\n"


def test_one_fed_from_behind_another_is_told_in_full() -> None:
    found = only(zones(FIRST + "wire stat-1.W to stat-2 to zone-2.M1\n"))
    assert (found.rule, found.fault, found.breaks) == (NAME, "with-another", Breaks.OPERATION)
    assert found.message == (
        "stat-2 calls boiler only while stat-1 calls too: feed stat-2.R from the supply itself, "
        "and let stat-2.W make its own call"
    )
    assert found.seen_at_unit == "stat-2 alone gets no heat."


def test_one_fed_from_behind_the_other_s_end_switch() -> None:
    ends = (
        "wire xfmr.R to zone-1.E1..E2 to aid.A\nwire xfmr.R to zone-2.E1..E2 to aid.A\n"
        "wire aid.B to xfmr.C\nwire boiler.1 to aid.COM..NO to boiler.2\n"
    )
    found = only(
        zones(
            FIRST + "wire zone-1.E2 to stat-2 to zone-2.M1\n",
            ends=ends,
            parts="part aid is relay\n",
        )
    )
    assert found.rule == NAME


SILENT = {
    "a zone each": zones(),
    "one thermostat": unit(),
    "two in the one call, both needed": unit(
        CALL.replace("stat to box", "stat to second to box"), parts="part second is thermostat\n"
    ),
    "two side by side": unit(
        CALL + "wire stat.R to second to box.TH\n", parts="part second is thermostat\n"
    ),
    "two zones with an operating control in the call of one": zones(
        FIRST + "wire xfmr.R to warm to stat-2 to zone-2.M1\n",
        parts="part warm is operating-control\n",
    ),
    "two valves on one thermostat": zones(FIRST + "wire stat-1.W to zone-2.M1\n"),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert NAME not in [found.rule for found in findings(text)]
