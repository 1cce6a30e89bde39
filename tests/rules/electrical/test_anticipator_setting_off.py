"""An anticipator set to another current than the call's."""

from __future__ import annotations

import pytest

from tests.rules.raised import mended, only, raised
from tests.rules.units import two_rod

NAME = "anticipator-setting-off"


def heater(setting: str, valve: str = ": pilot 0.2 A, main 0.4 A", control: str = "") -> str:
    """A two-rod unit with 0.75 A through its thermostat in run."""
    text = two_rod(valve_is=f"gas-valve-3-wire{valve}", control=f"pilot-ignition-control{control}")
    return text.replace("stat is thermostat", f"stat is thermostat{setting}")


def test_the_current_is_told_load_by_load_and_set() -> None:
    text = heater(": anticipator 0.4 A", control=": supply 0.15 A")
    found = only(text)
    assert (found.rule, found.fault, found.span.text) == (NAME, "too-low", "anticipator 0.4 A")
    assert found.message == (
        "the anticipator of stat is set to 0.4 A, and 0.75 A run through it (valve (main operator) "
        "0.4 A, valve (pilot operator) 0.2 A and box 0.15 A): set it to 0.75 A"
    )
    assert found.seen_at_unit.startswith("Short cycles")
    assert raised(mended(text)) == []


def test_too_high_a_setting_overshoots() -> None:
    found = only(heater(": anticipator 1.2 A"))
    assert found.fault == "too-high"
    assert "warmer than the setting" in found.seen_at_unit


@pytest.mark.parametrize(
    "text",
    [
        heater(": anticipator 0.75 A"),
        heater(": anticipator 0.7 A"),
        heater(": anticipator 0.65 A"),
        heater(": anticipator 0.9 A"),
        heater(""),  # no setting typed
        heater(": anticipator 0.6 A", valve=""),  # what the valve takes is not typed
        # a relay past the thermostat does not run through it
        heater(": anticipator 0.75 A") + "part aid is relay\nwire xfmr.R to aid to xfmr.C\n",
        # a zone valve whose end switch calls the burner: only the valve runs through it
        """\
part xfmr is transformer
part stat is thermostat: anticipator 0.9 A
part zone is zone-valve: 0.9 A
part boiler is boiler-call
wire xfmr.R to stat to zone to xfmr.C
wire zone.E1 to boiler.1
wire zone.E2 to boiler.2
wire xfmr.C to earth: green
""",
    ],
)
def test_settings_that_suit(text: str) -> None:
    assert raised(text) == []


def test_two_thermostats_have_a_current_each() -> None:
    text = """\
part xfmr is transformer: 75 VA
part one is thermostat: anticipator 0.9 A
part two is thermostat: anticipator 0.3 A
part a is zone-valve: 0.9 A
part b is zone-valve: 0.9 A
wire xfmr.R to one to a to xfmr.C
wire xfmr.R to two to b to xfmr.C
wire xfmr.C to earth: green
"""
    assert raised(text) == [(NAME, "too-low", "anticipator 0.3 A")]


def test_a_sketch_without_the_valve_is_not_judged_by_its_control_alone() -> None:
    """With no valve drawn nobody knows what runs through the thermostat."""
    text = """\
part xfmr is transformer
part stat is thermostat: anticipator 0.75 A
part box is pilot-ignition-control: two-rod
wire xfmr.R to stat to box.TH
wire xfmr.C to box.COM
wire xfmr.C to earth: green
"""
    assert NAME not in [rule for rule, _fault, _text in raised(text)]
