"""The shorting plug out, and no damper."""

from __future__ import annotations

import pytest

from tests.rules.damper.units import unit
from tests.rules.raised import mended, only, raised
from wirecheck.model.finding import Breaks

NO_DAMPER = "part vent is vent-damper\n"


def alone(harness: str = "", control: str = "pilot-ignition-control") -> str:
    """The unit without its damper."""
    return unit(harness, control=control).replace(NO_DAMPER, "")


def test_it_is_told_in_full() -> None:
    found = only(alone(control="pilot-ignition-control: damper-plug removed"))
    assert (found.rule, found.fault, found.span.text) == (
        "damper-plug-removed",
        "nothing-fitted",
        "damper-plug removed",
    )
    assert found.message == (
        "the shorting plug of box is out and no damper is in its place: nothing joins box.D-CALL "
        "to box.D-PROVED; put the plug in"
    )
    assert found.seen_at_unit == "The burner never lights."
    assert found.breaks is Breaks.OPERATION


def test_putting_the_plug_in_mends_it() -> None:
    text = alone(control="pilot-ignition-control: damper-plug removed")
    assert raised(mended(text)) == []


def test_a_jumper_in_its_place_works_and_misleads() -> None:
    found = only(alone("jumper box.D-CALL to box.D-PROVED\n"))
    assert (found.fault, found.breaks) == ("jumpered", Breaks.WORKMANSHIP)
    assert found.message == (
        "the jumper box.D-CALL to box.D-PROVED stands in for the shorting plug of box: fit the "
        "plug itself; if that is the plug, type damper-plug fitted in its place"
    )


SILENT = {
    "the plug is in unless something else is said": alone(),
    "it may be typed": alone(control="pilot-ignition-control: damper-plug fitted"),
    "a damper takes its place": unit(control="pilot-ignition-control: damper-plug removed"),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert raised(text) == []


def test_a_lead_that_was_not_traced_may_be_the_damper_s() -> None:
    text = alone("wire box.D-PROVED to unknown\n")
    assert "damper-plug-removed" not in [rule for rule, _fault, _text in raised(text)]


def test_a_safety_across_the_socket_passes_the_call() -> None:
    text = alone("part spill is spill-switch\nwire box.D-CALL to spill to box.D-PROVED\n")
    assert "damper-plug-removed" not in [rule for rule, _fault, _text in raised(text)]
