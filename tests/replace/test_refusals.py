"""Requests that cannot be met are refused, each with its reason."""

from __future__ import annotations

import pytest

from tests.replace.units import (
    DIRECT_SYSTEM,
    MILLIVOLT,
    PILOT_SYSTEM,
    STANDING,
    example,
    refused,
    replaced,
)
from wirecheck.model.diagram import Diagram
from wirecheck.replace.offered import device_typed
from wirecheck.replace.request import CannotReplaceError

TWO_ROD, ONE_ROD = example("furnace-room-heater"), example("workshop-heater-one-rod")
DIRECT, DAMPER = example("hangar-heater-direct"), example("boiler-with-vent-damper")
CONTROL = "part box is pilot-ignition-control"
LP = TWO_ROD.source.text.replace("wait 5 min\n", "retry lockout, gas lp\n")

CASES: tuple[tuple[str | Diagram, str, str], ...] = (
    (TWO_ROD, f"{CONTROL}: one-rod\n", "works with a one-rod pilot, and pilot is two-rod"),
    (ONE_ROD, f"{CONTROL}: two-rod\n", "works with a two-rod pilot, and pilot is one-rod"),
    (
        ONE_ROD,
        "part pilot is pilot-burner: two-rod\n",
        "the new pilot is two-rod, and box is for a one-rod pilot",
    ),
    (DAMPER, f"{CONTROL}: damper-socket no\n", "the new control has no damper socket"),
    (
        TWO_ROD,
        f"{CONTROL}: damper-socket no, damper-plug removed\n",
        "no damper socket, so there is no plug to fit or take out",
    ),
    (LP, f"{CONTROL}: gas natural\n", "burns LP, and the new device is for natural gas"),
    (
        TWO_ROD,
        "part valve is gas-valve-3-wire: single-seat\n",
        "a redundant valve is replaced by a redundant one",
    ),
    (TWO_ROD, "part valve is gas-valve-2-wire\n", "valve has one operator: take a three-wire"),
    (
        TWO_ROD,
        "part valve is millivolt-gas-valve\n",
        "works from a thermopile's millivolts, and this unit runs on 24 V",
    ),
    (STANDING, "part valve is gas-valve-3-wire\n", "needs a control that proves the pilot"),
    (STANDING, "part valve is gas-valve-2-wire\n", "shuts off all gas when its pilot is out"),
    (
        STANDING,
        "part c is pilot-ignition-control\npart pilot is pilot-burner\n",
        "valve is a valve for a standing pilot",
    ),
    (
        STANDING,
        "part c is pilot-ignition-control\npart valve is gas-valve-3-wire\n",
        "pilot has no electrode",
    ),
    (MILLIVOLT, PILOT_SYSTEM, "so there is no 24 V: put a transformer in as well"),
    (MILLIVOLT, "part valve is gas-valve-2-wire\n", "put a control and a pilot in as well"),
    (
        MILLIVOLT.replace("thermostat", "thermostat: 750 mV"),
        f"{PILOT_SYSTEM}part t is transformer\n",
        "stat is made for 750 mV, and 24 V come to it",
    ),
    (
        MILLIVOLT,
        "part c is pilot-ignition-control\npart pilot is pilot-burner\npart t is transformer\n",
        "a millivolt valve is never reused on 24 V",
    ),
    (TWO_ROD, "part box is direct-ignition-control\n", "pilot is a pilot burner: put a direct"),
    (DIRECT, f"{CONTROL}\n", "burner is a burner with direct ignition: put a pilot burner in"),
    (
        TWO_ROD,
        "part valve is standing-pilot-gas-valve\n",
        "box lights its burner on each call: take a valve without a thermocouple",
    ),
    (TWO_ROD, "part g is thermocouple\n", "no valve here has a magnet that a thermocouple holds"),
    (STANDING, "part pilot is pilot-burner\n", "lit by a spark, and no ignition control is drawn"),
    (
        DIRECT,
        "part xfmr is transformer: primary 120 V\n",
        "the primary of xfmr is for 240 V, that of the new transformer for 120 V",
    ),
    (
        example("two-zone-boiler"),
        f"{PILOT_SYSTEM}part t is transformer\n",
        "it is not clear which control transformer goes out: xfmr or zones",
    ),
    (TWO_ROD, f"{CONTROL}\npart tie is valve-adapter\n", "main gas would flow before the pilot"),
    (
        example("make-up-air-heater"),
        "part box is direct-ignition-control\npart tie is valve-adapter\n",
        "valve has one operator: there is nothing to tie together",
    ),
    (TWO_ROD, "part pump is circulator\n", "no circulator is drawn"),
    (
        example("greenhouse-range"),
        "part new is pilot-ignition-control\n",
        "it is not clear which",
    ),
    (
        TWO_ROD,
        "part a is pilot-ignition-control\npart b is pilot-ignition-control\n",
        "two of the new devices would replace box",
    ),
    (
        example("two-zone-boiler"),
        "part stat-1 is thermostat\npart zone-1 is zone-valve-3-wire\n",
        "the new device has no such terminal",
    ),
)


@pytest.mark.parametrize(("old", "new", "reason"), CASES)
def test_what_cannot_be_met_is_refused_with_its_reason(
    old: str | Diagram, new: str, reason: str
) -> None:
    assert reason in refused(old, new)


def test_a_part_that_is_named_must_be_there_and_of_the_same_place() -> None:
    assert "no part is called “bax”" in refused(TWO_ROD, f"{CONTROL}\n", part="bax")
    why = refused(TWO_ROD, "part v is gas-valve-3-wire\n", part="box")
    assert why == "box is a pilot ignition control; a gas valve cannot replace it"
    assert "name each in its file" in refused(TWO_ROD, DIRECT_SYSTEM, part="box")


def test_nothing_named_is_nothing_replaced() -> None:
    assert "no new device is named" in refused(TWO_ROD, "")


def test_every_reason_is_given_at_once() -> None:
    text = DAMPER.source.text.replace("trial 90 s", "retry lockout, gas lp")
    why = refused(text, f"{CONTROL}: one-rod, damper-socket no, gas natural\n")
    assert why.count(" | ") == 2


def test_a_universal_control_suits_either_pilot() -> None:
    for old in (TWO_ROD, ONE_ROD):
        assert replaced(old, f"{CONTROL}\n").proof.holds


def test_a_kind_is_typed_as_behind_is() -> None:
    device = device_typed("gas-valve-2-wire: 0.4 A")
    assert (device.name, device.kind, device.stated) == ("", device.kind, "gas-valve-2-wire: 0.4 A")
    for typed, why in (("gas-valve", "did you mean"), ("gas-valve-2-wire: 3 s", "takes no")):
        with pytest.raises(CannotReplaceError, match=why):
            device_typed(typed)
