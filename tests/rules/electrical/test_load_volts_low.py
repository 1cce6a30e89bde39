"""Too little left at a load with everything on and the line low."""

from __future__ import annotations

import pytest

from tests.rules.raised import findings, only, raised

NAME = "load-volts-low"


def zone(
    lead: str, takes: str = "0.9 A", xfmr: str = "40 VA", line: str = "120 V", back: str = ""
) -> str:
    """A zone valve at the end of a lead."""
    return f"""\
part line is mains: {line}
part xfmr is transformer: {xfmr}
part stat is thermostat
part zone is zone-valve: {takes}
wire line.L1 to xfmr.L1: black
wire line.N to xfmr.N: white
wire line.G to earth: green
wire xfmr.R to stat to zone.M1: red, {lead}
wire zone.M2 to xfmr.C: blue{back}
wire xfmr.C to earth: green
"""


def test_long_thin_leads_are_told_with_the_gauge_that_would_do() -> None:
    found = only(zone("24 AWG, 200 ft"))
    assert (found.rule, found.fault, found.span.text) == (NAME, "leads", "xfmr.R to stat")
    assert found.message == (
        "with everything on and the line 10 % low zone gets 19 V of its 24 V, and needs 20.4 V: "
        "the leads drop 3.7 V of it, most of that xfmr.R to stat.R (24 AWG, 100 ft) at 0.79 A; run "
        "them in 20 AWG"
    )
    assert raised(zone("20 AWG, 200 ft")) == []


@pytest.mark.parametrize(
    "text",
    [
        zone("18 AWG, 100 ft"),
        zone("18 AWG, 300 ft", takes="0.3 A"),
        zone("24 AWG"),  # nobody typed how long it is
        zone("18 AWG, 30 ft", takes="1.6 A"),  # nearly all that it is rated for
        zone("18 AWG, 30 ft", takes="1.6 A", line="115 V"),
        zone("18 AWG, 10 ft", back=", 18 AWG, 10 ft"),
    ],
)
def test_leads_that_do(text: str) -> None:
    assert raised(text) == []


def test_both_ways_count() -> None:
    there = zone("20 AWG, 250 ft")
    assert raised(there) == []
    assert [f.rule for f in findings(zone("20 AWG, 250 ft", back=", 20 AWG, 250 ft"))] == [NAME]


def test_a_line_of_110_volts_and_a_transformer_for_120_loaded_to_the_full() -> None:
    found = only(zone("18 AWG, 5 ft", takes="1.6 A", line="110 V"))
    assert (found.fault, found.span.text) == ("supply", "xfmr")
    assert "xfmr gives 19.8 V under this load" in found.message


def test_a_wrong_tap_explains_it() -> None:
    text = zone("18 AWG, 100 ft", xfmr="primary 240 V, 40 VA")
    assert [rule for rule, _fault, _text in raised(text)] == ["wrong-primary-tap"]


def test_an_overload_explains_it() -> None:
    text = zone("20 AWG, 150 ft", takes="2.2 A")
    assert [rule for rule, _fault, _text in raised(text)] == ["transformer-overloaded"]


def test_a_loose_joint_is_told_by_its_own_rule() -> None:
    text = zone("18 AWG, 20 ft", back=", loose 10 ohm")
    assert [rule for rule, _fault, _text in raised(text)] == ["lead-found-bad"]


def test_a_cable_gives_its_leads_their_length() -> None:
    text = zone("in wall") + "cable wall: 24/5, 150 ft\n"
    found = only(text)
    assert (found.rule, found.fault) == (NAME, "leads")
    assert "(24 AWG, 150 ft)" in found.message


def test_two_units_in_one_file_are_told_apart() -> None:
    """Long leads of one do not count for the other, though they share an earth."""
    one = zone("18 AWG, 20 ft", back=", 18 AWG, 20 ft")
    other = one.replace("line", "line2").replace("xfmr", "x2").replace("stat", "s2")
    other = other.replace("zone", "z2").replace(": blue, 18 AWG, 20 ft", ": blue, 24 AWG, 400 ft")
    other = other.replace("z2-valve", "zone-valve").replace("thermos2", "thermostat")
    found = only(one + other)
    assert found.rule == NAME
    assert "z2 gets" in found.message
