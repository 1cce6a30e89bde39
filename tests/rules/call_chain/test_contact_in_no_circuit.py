"""Contacts of zone valves and relays that close no circuit."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import zones
from tests.rules.circuits import FED, changed
from tests.rules.raised import findings, only
from wirecheck.model.finding import Breaks

NAME = "contact-in-no-circuit"
ENDS = "wire boiler.1 to zone-1.E1..E2 to boiler.2\nwire boiler.1 to zone-2.E1..E2 to boiler.2\n"


@pytest.mark.parametrize(
    ("lead", "end", "right"),
    [
        ("boiler.1 to zone-2.E1", "stat-1.W", "boiler.1"),
        ("zone-2.E1..E2 to boiler.2", "stat-1.W", "boiler.2"),
    ],
)
def test_an_end_switch_on_another_zone_s_lead_is_told_in_full(
    lead: str, end: str, right: str
) -> None:
    wrong = lead.replace(right, end)
    found = only(zones(ends=changed(ENDS, (lead, wrong))))
    assert (found.rule, found.fault, found.breaks) == (NAME, "calls-nothing", Breaks.OPERATION)
    side, there = ("E1", "boiler.2") if right == "boiler.1" else ("E2", "boiler.1")
    at = (end, there) if side == "E1" else (there, end)
    assert found.message == (
        f"the end switch of zone-2 is in no circuit: one side of it is at {at[0]} and the other at "
        f"{at[1]}, and no supply feeds anything from the one over the other; land zone-2.{side} on "
        f"{right}"
    )
    assert found.seen_at_unit == "the end switch of zone-2 closes, and nothing happens."


PUMP = (
    FED
    + """\
part pump is circulator
wire line.L1 to fan.COM..NO to pump.L: black
wire line.N to pump.N: white
"""
)


def test_a_boiler_control_whose_own_common_has_no_lead() -> None:
    boiler = zones(ends=changed(ENDS, ("boiler.1 to zone-2.E1", "stat-1.W to zone-2.E1")))
    text = changed(
        boiler.replace("boiler.1", "boiler.R").replace("boiler.2", "boiler.W"),
        ("boiler-call", "boiler-control"),
        ("line.L1 to xfmr.L1", "line.L1 to boiler.L1 to xfmr.L1"),
        ("line.N to xfmr.N", "line.N to boiler.N to xfmr.N"),
    )
    assert [found.rule for found in findings(text)] == [NAME]


SILENT = {
    "end switches on the call": zones(),
    "over a nut and a limit": zones(
        ends="wire boiler.1 to nut\nwire nut to zone-1.E1..E2 to limit to boiler.2\n"
        "wire nut to zone-2.E1..E2 to limit.1\n",
        parts="part limit is high-limit\nsplice nut\n",
    ),
    "a relay of the zone transformer between": zones(
        ends="wire xfmr.R to zone-1.E1..E2 to aid.A\nwire xfmr.R to zone-2.E1..E2 to aid.A\n"
        "wire aid.B to xfmr.C\nwire boiler.1 to aid.COM..NO to boiler.2\n",
        parts="part aid is relay\n",
    ),
    "a lead that was not traced": zones(
        ends=changed(ENDS, ("boiler.1 to zone-2", "unknown to zone-2"))
    ),
    "a strip that goes on elsewhere": zones(
        ends=changed(ENDS, ("boiler.1 to zone-2", "strip.1 to zone-2")),
        parts="part strip is terminal-strip\n",
    ),
    "a contact for what is not drawn": FED
    + "part strip is terminal-strip\nwire xfmr.R to fan.COM..NO to strip.3\n",
    "a pump behind a relay": PUMP,
    "two contacts in line": PUMP.replace(
        "fan.COM..NO to pump.L", "fan.COM..NO to aid.COM..NO to pump.L"
    )
    + "part aid is relay\nwire stat.W to aid to xfmr.C\n",
    "a sketch without the supply": "part a is relay\npart p is circulator\n"
    "wire plug.1 to a.COM..NO to p.L\npart plug is plug\n",
    "a lamp that the neutral is not drawn for": FED
    + "part shine is lamp: 120 V\nwire line.L1 to fan.COM..NO to shine.1\n",
    "a contact in the neutral": PUMP.replace(
        "line.N to pump.N", "line.N to fan.NC\nwire fan.COM to pump.N"
    ).replace("line.L1 to fan.COM..NO to pump.L", "line.L1 to pump.L"),
    "a contact across a coil": FED + "part aid is relay\nwire stat.W to aid to xfmr.C\n"
    "wire stat.W to fan.COM\nwire fan.NO to aid.A\n",
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
