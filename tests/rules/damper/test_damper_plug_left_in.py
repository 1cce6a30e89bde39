"""The shorting plug left in beside a damper."""

from __future__ import annotations

import pytest

from tests.rules.damper.units import HARNESS, unit
from tests.rules.raised import mended, only, raised
from wirecheck.model.finding import Breaks

FITTED = "pilot-ignition-control: damper-plug fitted"


def test_it_is_told_in_full() -> None:
    found = only(unit(control=FITTED))
    assert (found.rule, found.fault, found.span.text) == (
        "damper-plug-left-in",
        "fitted",
        "damper-plug fitted",
    )
    assert found.message == (
        "vent is wired to box and the shorting plug is still in: it joins box.D-CALL to "
        "box.D-PROVED past the end switch; take the plug out"
    )
    assert found.seen_at_unit == (
        "The burner lights at once while the damper opens, and burns on if the damper sticks."
    )
    assert found.breaks is Breaks.SAFETY
    assert "ANSI Z21.66 (from memory)" in found.source


def test_taking_the_plug_out_mends_it() -> None:
    assert raised(mended(unit(control=FITTED))) == []


def test_a_damper_on_the_call_terminal_leaves_the_plug_in() -> None:
    harness = (
        "wire box.24V to vent.HOT\nwire box.TH to vent.CALL\nwire vent.PROVED to box.TH\n"
        "wire box.COM to vent.COM\n"
    )
    found = only(unit(harness))
    assert (found.rule, found.span.text) == ("damper-plug-left-in", "vent.CALL")


def test_its_lead_back_may_even_be_missing() -> None:
    harness = "wire box.24V to vent.HOT\nwire box.TH to vent.CALL\nwire box.COM to vent.COM\n"
    assert only(unit(harness)).rule == "damper-plug-left-in"


SILENT = {
    "leads on the socket mean that the plug is out": unit(),
    "a damper ahead of the control needs the plug": unit(
        "wire xfmr.R to vent.HOT\nwire xfmr.C to vent.COM\nwire vent.PROVED to box.TH\n",
        control=FITTED,
        call="wire xfmr.R to limit to stat to vent.CALL\n",
        feed="wire xfmr.C to box.COM\n",
    ),
    "no damper, the plug in": unit("", control=FITTED).replace("part vent is vent-damper\n", ""),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert raised(text) == []


def test_a_damper_that_is_not_wired_at_all_is_told_as_that() -> None:
    text = unit(HARNESS.replace(HARNESS, ""), control=FITTED)
    assert [rule for rule, _fault, _text in raised(text)] == ["part-not-wired"]
