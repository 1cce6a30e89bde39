"""Loads across other volts than they are made for."""

from __future__ import annotations

import pytest

from tests.rules.raised import only, raised

NAME = "load-on-other-volts"


def pump(line: str, pump: str, hot: str = "L1", other: str = "N") -> str:
    """A circulator between two leads of a line."""
    return (
        f"part line is mains: {line}\npart pump is circulator{pump}\npart disc is service-switch\n"
        f"wire line.{hot} to disc to pump.L: black\nwire line.{other} to pump.N\n"
        "wire line.G to earth: green\n"
    )


def test_half_the_volts_are_told_with_both_ends() -> None:
    found = only(pump("240 V", ": 240 V"))
    assert (found.rule, found.fault, found.span.text) == (NAME, "too-little", "240 V")
    assert found.message == (
        "pump is made for 240 V and lies across line.L1 and line.N, which have 120 V: feed it from "
        "240 V, or put in one for 120 V"
    )


def test_twice_the_volts() -> None:
    found = only(pump("240 V", ": 120 V", other="L2"))
    assert (found.fault, found.span.text) == ("too-much", "120 V")


@pytest.mark.parametrize(
    "text",
    [
        pump("120 V", ": 120 V"),
        pump("120 V", ": 115 V"),
        pump("240 V", ": 240 V", other="L2"),
        pump("208 V", ": 230 V", other="L2"),  # 90 % of it
        pump("240 V", ": 120 V"),  # one leg
        pump("240 V", "", other="L2"),  # what the pump is made for is not typed
    ],
)
def test_volts_that_suit(text: str) -> None:
    assert raised(text) == []


def test_a_line_whose_volts_are_not_typed_is_not_judged() -> None:
    text = pump("120 V", ": 240 V").replace("mains: 120 V", "mains")
    assert raised(text) == []


@pytest.mark.parametrize(("lamp", "fault"), [("12 V", "too-much"), ("30 V", "too-little")])
def test_on_the_24_volt_side(lamp: str, fault: str) -> None:
    text = (
        f"part xfmr is transformer\npart stat is thermostat\npart glow is lamp: {lamp}\n"
        "wire xfmr.R to stat to glow to xfmr.C\nwire xfmr.C to earth: green\n"
    )
    assert raised(text) == [(NAME, fault, lamp)]


def test_a_coil_for_the_line_on_24_volts_is_the_other_rules_business() -> None:
    text = (
        "part xfmr is transformer\npart stat is thermostat\npart k is relay: 120 V\n"
        "wire xfmr.R to stat to k to xfmr.C\nwire xfmr.C to earth: green\n"
    )
    assert [rule for rule, _fault, _text in raised(text)] == ["line-and-24-volts-joined"]
