"""End switches of different zones one behind the other."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import zones
from tests.rules.raised import only, raised
from wirecheck.model.finding import Breaks

SERIES = "wire boiler.1 to zone-1.E1..E2 to zone-2.E1..E2 to boiler.2\n"


def test_the_series_is_told_in_full() -> None:
    found = only(zones(ends=SERIES))
    assert (found.rule, found.fault, found.span.text) == (
        "end-switches-in-series",
        "series",
        "zone-1.E1..E2",
    )
    assert found.message == (
        "the end switches of zone-1 and zone-2 stand in series in the call to boiler: wire them "
        "side by side, so that each zone calls"
    )
    assert found.seen_at_unit == (
        "The boiler fires only while zone-1 and zone-2 are all open; a zone alone gets no heat."
    )
    assert found.breaks is Breaks.OPERATION


def test_ahead_of_a_relay_likewise() -> None:
    ends = (
        "wire xfmr.R to zone-1.E1..E2 to zone-2.E1..E2 to aid to xfmr.C\n"
        "wire boiler.1 to aid.COM..NO to boiler.2\n"
    )
    found = only(zones(ends=ends, parts="part aid is relay\n"))
    assert (found.rule, "in the call to aid" in found.message) == ("end-switches-in-series", True)


SILENT = {
    "side by side": (
        "wire boiler.1 to zone-1.E1..E2 to boiler.2\nwire boiler.1 to zone-2.E1..E2 to boiler.2\n"
    ),
    "one zone calls, the other does not": "wire boiler.1 to zone-1.E1..E2 to boiler.2\n",
    "through relays of their own": (
        "wire xfmr.R to zone-1.E1..E2 to aid.A\nwire xfmr.R to zone-2.E1..E2 to aid.A\n"
        "wire aid.B to xfmr.C\nwire boiler.1 to aid.COM..NO to boiler.2\n"
    ),
}


@pytest.mark.parametrize("ends", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(ends: str) -> None:
    parts = "part aid is relay\n" if "aid" in ends else ""
    assert raised(zones(ends=ends, parts=parts)) == []


def test_two_valves_that_one_thermostat_opens_may_stand_in_series() -> None:
    motors = "wire xfmr.R to stat-1 to zone-1.M1\nwire zone-1.M1 to zone-2.M1\n"
    text = zones(motors, ends=SERIES).replace("part stat-2 is thermostat\n", "")
    assert raised(text) == []
