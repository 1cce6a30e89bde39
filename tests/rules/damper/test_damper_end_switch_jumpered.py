"""The damper's end switch bypassed."""

from __future__ import annotations

import pytest

from tests.rules.damper.units import HARNESS, unit
from tests.rules.raised import mended, only, raised
from wirecheck.model.finding import Breaks

AT_CONTROL = HARNESS + "jumper box.D-CALL to box.D-PROVED\n"
AT_DAMPER = HARNESS + "jumper vent.CALL to vent.PROVED\n"


def test_a_jumper_at_the_control_is_told_in_full() -> None:
    found = only(unit(AT_CONTROL))
    assert (found.rule, found.fault) == ("damper-end-switch-jumpered", "joined")
    assert found.span.text == "box.D-CALL to box.D-PROVED"
    assert found.message == (
        "the jumper box.D-CALL to box.D-PROVED joins vent.CALL to vent.PROVED past the end switch "
        "of vent: take it off"
    )
    assert found.seen_at_unit == (
        "The burner lights at once while the damper opens, and burns on if the damper sticks."
    )
    assert found.breaks is Breaks.SAFETY


@pytest.mark.parametrize("harness", [AT_CONTROL, AT_DAMPER])
def test_taking_it_off_mends_it(harness: str) -> None:
    assert raised(mended(unit(harness))) == []


def test_a_damper_in_the_call_lead_can_be_jumpered_too() -> None:
    harness = (
        "wire xfmr.R to vent.HOT\nwire xfmr.C to vent.COM\nwire vent.PROVED to box.TH\n"
        "jumper vent.CALL to vent.PROVED\n"
    )
    text = unit(
        harness, call="wire xfmr.R to limit to stat to vent.CALL\n", feed="wire xfmr.C to box.COM\n"
    )
    rules = [rule for rule, _fault, _text in raised(text)]
    assert rules in (["damper-end-switch-jumpered"], ["damper-plug-left-in"])


SILENT = {
    "not jumpered": unit(),
    "a lamp on the proved lead": unit(
        HARNESS + "wire box.D-PROVED to lamp to xfmr.C\n", parts="part lamp is lamp\n"
    ),
    "a jumper between two of its own grounds": unit(HARNESS + "jumper box.D-COM to box.VC\n"),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    rules = [rule for rule, _fault, _text in raised(text)]
    assert "damper-end-switch-jumpered" not in rules
