"""Relays in a call whose coil is on the supply itself."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import CALL, unit
from tests.rules.circuits import changed
from tests.rules.raised import findings, only
from wirecheck.model.finding import Breaks

NAME = "call-relay-always-in"
PARTS = """\
part boiler is boiler-control
part zone is zone-valve
part zones is transformer
"""
CALLED = """\
wire xfmr.R to limit to rollout to boiler.BURNER-1
wire boiler.BURNER-2 to box.TH
wire line.L1 to boiler.L1 to zones.L1
wire line.N to boiler.N to zones.N
wire zones.R to stat to zone.M1
wire zone.M2 to zones.C to earth
wire boiler.R to zone.E1..E2 to boiler.W
"""


def test_the_coil_of_a_boiler_control_on_its_own_supply_is_told_in_full() -> None:
    found = only(unit(CALLED + "wire boiler.R to boiler.W\n", parts=PARTS))
    assert (found.rule, found.breaks) in {
        (NAME, Breaks.SAFETY),
        ("relay-contact-jumpered", Breaks.OPERATION),
    }
    text = unit(
        changed(CALLED, ("boiler.R to zone.E1..E2 to boiler.W", "boiler.R to boiler.W")),
        parts=PARTS,
    )
    (found,) = (each for each in findings(text) if each.rule == NAME)
    assert found.message == (
        "boiler.W is fed from boiler.R with nothing between that calls, and so box.TH is called "
        "for good: bring boiler.W to what is to call"
    )
    assert found.leads == ("boiler.R to boiler.W",)


DRAFT = """\
part draw is contactor: poles 1
part fan is inducer
part draft is pressure-switch
"""
FAN = "wire line.L1 to draw.COM..NO to fan.L: black\nwire line.N to fan.N: white\n"
PROVED = CALL.replace("stat to box", "stat to draft to box")


@pytest.mark.parametrize("end", ["xfmr.R", "limit.2", "rollout.2"])
def test_the_starter_of_an_inducer_ahead_of_the_thermostat(end: str) -> None:
    (found,) = (
        each
        for each in findings(unit(PROVED + FAN + f"wire {end} to draw to xfmr.C\n", parts=DRAFT))
        if each.rule == NAME
    )
    assert (found.fault, found.breaks) == ("inducer", Breaks.OPERATION)
    assert found.message == (
        "draw.A is fed from xfmr.R with nothing between that calls, and so fan runs for good: "
        "bring draw.A to the call"
    )


SILENT = {
    "an inducer that the call starts": unit(
        PROVED + FAN + "wire stat.W to draw to xfmr.C\n", parts=DRAFT
    ),
    "an inducer started by hand": unit(
        PROVED + FAN + "wire xfmr.R to hand to draw to xfmr.C\n",
        parts=DRAFT + "part hand is service-switch\n",
    ),
    "a ventilator that always runs": unit(
        CALL + FAN + "wire xfmr.R to draw to xfmr.C\n",
        parts=DRAFT.replace("inducer", "blower: one-speed"),
    ),
    "an inducer straight on the line": unit(
        PROVED + "wire line.L1 to fan.L: black\nwire line.N to fan.N: white\n", parts=DRAFT
    ),
    "called by a zone": unit(CALLED, parts=PARTS),
    "called by a thermostat": unit(
        changed(CALLED, ("boiler.R to zone.E1..E2 to boiler.W", "boiler.R to second to boiler.W")),
        parts=PARTS + "part second is thermostat\n",
    ),
    "a relay that proves power, and a thermostat in the call": unit(
        CALL.replace("stat to box", "stat to power.COM..NO to box")
        + "wire xfmr.R to power to xfmr.C\n",
        parts="part power is relay\n",
    ),
    "by hand": unit(
        changed(CALLED, ("boiler.R to zone.E1..E2 to boiler.W", "boiler.R to hand to boiler.W")),
        parts=PARTS + "part hand is service-switch\n",
    ),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert NAME not in [found.rule for found in findings(text)]
