"""A secondary of too many volts."""

from __future__ import annotations

import pytest

from tests.rules.raised import only, raised

NAME = "secondary-volts-high"


def fan(xfmr: str, relay: str = "relay: 24 V", more: str = "") -> str:
    """A relay on a transformer."""
    return (
        f"part xfmr is transformer: {xfmr}\npart stat is thermostat\npart fan is {relay}\n"
        f"wire xfmr.R to stat to fan to xfmr.C\nwire xfmr.C to earth: green\n{more}"
    )


def test_a_nameplate_above_that_of_its_loads() -> None:
    found = only(fan("secondary 28 V, 40 VA"))
    assert (found.rule, found.fault, found.span.text) == (NAME, "nameplate", "secondary 28 V")
    assert found.message == (
        "xfmr gives 28 V by its nameplate, and fan is made for 24 V: put in a transformer of 24 V"
    )


def test_more_than_30_volts_with_nothing_on() -> None:
    found = only(fan("secondary 26 V, regulation 20 %"))
    assert found.message == (
        "xfmr gives 31.2 V with nothing on: more than the 30 V a 24 V circuit may have; put in one "
        "of lower secondary volts or of less rise"
    )


@pytest.mark.parametrize(
    "text",
    [
        fan("secondary 24 V"),
        fan("secondary 25 V"),
        fan("secondary 26 V"),  # 28.6 V unloaded
        fan("40 VA"),  # the usual secondary
        fan("secondary 27 V", "relay: 27 V"),
        fan("secondary 24 V, regulation 20 %"),  # 28.8 V unloaded
        fan("secondary 27 V", "relay"),  # what the relay is made for is not typed
    ],
)
def test_volts_that_suit(text: str) -> None:
    assert raised(text) == []


def test_a_control_is_made_for_24_volts_without_saying_so() -> None:
    text = """\
part xfmr is transformer: secondary 27 V
part stat is thermostat
part box is pilot-ignition-control: two-rod
wire xfmr.R to stat to box.TH
wire xfmr.C to box.COM
wire xfmr.C to earth: green
"""
    assert (NAME, "nameplate", "secondary 27 V") in raised(text)
