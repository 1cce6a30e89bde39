"""Thin leads and cable on a large transformer."""

from __future__ import annotations

import pytest

from tests.rules.raised import only, raised

NAME = "class-2-exceeded"


def fan(xfmr: str, lead: str, more: str = "") -> str:
    """A relay on a transformer."""
    return f"""\
{more}part xfmr is transformer: {xfmr}
part stat is thermostat
part fan is relay
wire xfmr.R to stat to fan.A: red{lead}
wire fan.B to xfmr.C: blue
wire xfmr.C to earth: green
"""


CABLE = "cable wall: 18/2, 30 ft\n"


def test_cable_on_a_large_transformer() -> None:
    found = only(fan("150 VA", ", in wall", CABLE))
    assert (found.rule, found.fault, found.span.text) == (NAME, "cable", "150 VA")
    assert found.message == (
        "xfmr is rated 150 VA: above 100 VA it is no Class 2 source, and the leads xfmr.R to "
        "stat.R and stat.W to fan.A in the cable wall may not hang on it; use a transformer of up "
        "to 100 VA, or wire them as a Class 1 circuit"
    )


def test_leads_under_18_awg() -> None:
    assert raised(fan("150 VA", ", 22 AWG")) == [(NAME, "thin", "150 VA")]


@pytest.mark.parametrize(
    "text",
    [
        fan("100 VA", ", in wall", CABLE),
        fan("75 VA", ", 22 AWG"),
        fan("150 VA", ", 18 AWG"),
        fan("150 VA", ", 14 AWG"),
        fan("150 VA", ""),
        fan("150 VA", ", 0.75 mm2"),
        fan("150 VA", "")
        + fan("40 VA", ", in wall", CABLE)
        .replace("xfmr", "x2")
        .replace("stat.", "s2.")
        .replace(" stat ", " s2 ")
        .replace("fan", "f2"),
    ],
)
def test_what_may_hang_on_it(text: str) -> None:
    assert raised(text) == []
