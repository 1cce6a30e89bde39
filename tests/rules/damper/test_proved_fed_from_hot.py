"""The proved terminal on constant 24 V."""

from __future__ import annotations

import pytest

from tests.rules.damper.units import CALL, HARNESS, unit
from tests.rules.raised import mended, only, raised
from wirecheck.model.finding import Breaks

FED = HARNESS + "jumper box.D-HOT to box.D-PROVED\n"


def test_it_is_told_in_full() -> None:
    found = only(unit(FED))
    assert (found.rule, found.fault) == ("proved-fed-from-hot", "no-call")
    assert found.span.text == "box.D-HOT to box.D-PROVED"
    assert found.message == (
        "the jumper box.D-HOT to box.D-PROVED puts constant 24 V on box.D-PROVED: take it off, so "
        "that the end switch alone feeds box.D-PROVED"
    )
    assert found.seen_at_unit == (
        "The burner fires as soon as there is power, with no call and the damper shut."
    )
    assert found.breaks is Breaks.SAFETY


def test_taking_it_off_mends_it() -> None:
    assert raised(mended(unit(FED))) == []


def test_a_lead_from_the_transformer_is_named() -> None:
    assert only(unit(HARNESS + "wire xfmr.R to box.D-PROVED\n")).leads == (
        "xfmr.R to box.D-PROVED",
    )


def test_at_the_damper_likewise() -> None:
    found = only(unit(HARNESS + "jumper vent.HOT to vent.PROVED\n"))
    assert found.rule == "proved-fed-from-hot"


def test_where_no_damper_is_drawn_too() -> None:
    text = unit("jumper box.24V to box.D-PROVED\n").replace("part vent is vent-damper\n", "")
    assert "proved-fed-from-hot" in [rule for rule, _fault, _text in raised(text)]


SILENT = {
    "by the end switch": unit(),
    "the plug in, no damper": unit("").replace("part vent is vent-damper\n", ""),
    "a stray lead to a hot terminal that nothing feeds": unit(
        feed="wire xfmr.C to box.COM\nwire box.24V to box.D-PROVED\n"
    ),
    "constant 24 V on a lamp too": unit(
        HARNESS + "wire box.24V to lamp to xfmr.C\n", parts="part lamp is lamp\n"
    ),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert "proved-fed-from-hot" not in [rule for rule, _fault, _text in raised(text)]


def test_with_the_plug_in_it_is_the_call_that_is_straight() -> None:
    text = unit("", call=CALL + "wire xfmr.R to box.TH\n").replace("part vent is vent-damper\n", "")
    assert [rule for rule, _fault, _text in raised(text)] == ["hot-straight-to-call"]
