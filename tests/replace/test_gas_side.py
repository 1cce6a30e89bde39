"""The gas side of a replacement: what must be done that no lead shows, nothing without cause."""

from __future__ import annotations

import pytest

from tests.replace.units import (
    CONVERSION,
    DIRECT_SYSTEM,
    EXAMPLES,
    MILLIVOLT,
    STANDING,
    diagram,
    example,
    replaced,
)
from wirecheck.model.diagram import Diagram

PLUG = "close its pilot outlet with the plug made for it"
TUBE = "run the pilot tube from its pilot outlet"
OUT = "take the old pilot burner out, with its orifice and the whole pilot tube"
UNPLUG = "take the plug out of its pilot outlet"
MANOMETER = "read its outlet pressure by manometer"
NEW_VALVE = "see that the new valve and its regulator are made for the gas that is there"
SOAP = "leak-test with soap solution"
AIM = "fit the pilot orifice for the gas that is there; aim and set the flame"
EVERY = (AIM, PLUG, TUBE, OUT, UNPLUG, MANOMETER, NEW_VALVE, SOAP)

TO_PILOT = "part box is pilot-ignition-control\npart pilot is pilot-burner\n"
ROOM, HANGAR = example("furnace-room-heater"), example("hangar-heater-direct")
AIR = example("make-up-air-heater")

CASES: dict[str, tuple[str | Diagram, str, set[str]]] = {
    "pilot to direct": (ROOM, DIRECT_SYSTEM, {PLUG, OUT, MANOMETER, SOAP}),
    "pilot to direct on two wires": (
        ROOM,
        f"{DIRECT_SYSTEM}part valve is gas-valve-2-wire\n",
        {OUT, NEW_VALVE, MANOMETER, SOAP},
    ),
    "direct to pilot": (HANGAR, TO_PILOT, {AIM, UNPLUG, TUBE, MANOMETER, SOAP}),
    "standing to pilot": (STANDING, CONVERSION, {AIM, TUBE, NEW_VALVE, MANOMETER, SOAP}),
    "standing to direct": (
        STANDING,
        f"{DIRECT_SYSTEM}part valve is gas-valve-3-wire\n",
        {PLUG, OUT, NEW_VALVE, MANOMETER, SOAP},
    ),
    "another valve": (
        ROOM,
        "part valve is gas-valve-3-wire\n",
        {TUBE, NEW_VALVE, MANOMETER, SOAP},
    ),
    "a valve with a pilot outlet for one without": (
        AIR,
        "part v is gas-valve-3-wire\n",
        {PLUG, NEW_VALVE, MANOMETER, SOAP},
    ),
    "another pilot": (ROOM, "part pilot is pilot-burner\n", {AIM, TUBE, SOAP}),
    "another millivolt valve": (
        MILLIVOLT,
        "part valve is millivolt-gas-valve\n",
        {NEW_VALVE, MANOMETER, SOAP},
    ),
}


@pytest.mark.parametrize("case", CASES)
def test_the_gas_side_of_each_conversion(case: str) -> None:
    old, new, wanted = CASES[case]
    told = " | ".join(replaced(old, new).plan.gas_side)
    assert {words for words in EVERY if words in told} == wanted


@pytest.mark.parametrize(
    "new",
    [
        (EXAMPLES / "replacing" / "other-control.parts").read_text(encoding="utf-8"),
        "part stat is thermostat\n",
        "part xfmr is transformer\n",
    ],
)
def test_nothing_is_said_of_the_gas_where_none_of_its_joints_opens(new: str) -> None:
    assert replaced(ROOM, new).plan.gas_side == ()


def test_the_gas_that_is_typed_is_named() -> None:
    lp = ROOM.source.text.replace("two-rod, trial 90 s", "two-rod, gas lp, retry lockout")
    done = replaced(diagram(lp), "part valve is gas-valve-3-wire\n")
    assert any("(LP gas, as typed for the control)" in line for line in done.plan.gas_side)
