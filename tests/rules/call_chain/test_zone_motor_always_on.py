"""Zone valves fed whether their zone calls or not."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import zones
from tests.rules.raised import only, raised
from wirecheck.model.finding import Breaks

ON_HOT = "wire xfmr.R to stat-1 to zone-1.M1\nwire xfmr.R to zone-2.M1\nwire xfmr.R to stat-2.R\n"


def test_a_motor_on_the_hot_side_is_told_in_full() -> None:
    found = only(zones(ON_HOT))
    assert (found.rule, found.fault, found.span.text) == (
        "zone-motor-always-on",
        "constant",
        "zone-2.M1",
    )
    assert found.message == (
        "zone-2.M1 is on xfmr.R with no thermostat between: feed it through the thermostat of its "
        "zone"
    )
    assert found.seen_at_unit == "zone-2 is always open, and its end switch calls all the time."
    assert found.breaks is Breaks.OPERATION


def test_the_motor_may_be_wired_either_way_round() -> None:
    turned = ON_HOT.replace("xfmr.R to zone-2.M1", "xfmr.C to zone-2.M1")
    text = (
        zones(turned).replace("zone-1.M2 to zone-2.M2", "zone-1.M2") + "wire xfmr.R to zone-2.M2\n"
    )
    found = [f for f in raised(text) if f[0] == "zone-motor-always-on"]
    assert found == [("zone-motor-always-on", "constant", "zone-2.M2")]


SILENT = {
    "each behind its thermostat": (
        "wire xfmr.R to stat-1 to zone-1.M1\nwire xfmr.R to stat-2 to zone-2.M1\n"
    ),
    "a fuse ahead of the thermostat": (
        "wire xfmr.R to spare to stat-1 to zone-1.M1\nwire xfmr.R to stat-2 to zone-2.M1\n"
    ),
    "a relay that a thermostat pulls in": (
        "wire xfmr.R to stat-1 to aid to xfmr.C\nwire xfmr.R to aid.COM..NO to zone-1.M1\n"
        "wire xfmr.R to stat-2 to zone-2.M1\n"
    ),
    "a switch to open it by hand": (
        "wire xfmr.R to hand to zone-1.M1\nwire stat-1.W to zone-1.M1\nwire xfmr.R to stat-1.R\n"
        "wire xfmr.R to stat-2 to zone-2.M1\n"
    ),
}


@pytest.mark.parametrize("motors", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(motors: str) -> None:
    kinds = {"spare": "fuse", "aid": "relay", "hand": "service-switch"}
    parts = "".join(f"part {n} is {k}\n" for n, k in kinds.items() if f" {n}" in motors)
    assert raised(zones(motors, parts=parts)) == []


def test_a_bypassed_thermostat_is_told_as_that() -> None:
    text = zones() + "jumper stat-1.R to stat-1.W\n"
    assert [rule for rule, _fault, _text in raised(text)] == ["thermostat-bypassed"]
