"""A standing-pilot valve behind an ignition control."""

from __future__ import annotations

import pytest

from tests.rules.raised import only, raised
from tests.rules.units import two_rod

KEPT = two_rod(
    valve_is="standing-pilot-gas-valve", valve="wire box.MV to valve.1\nwire box.VC to valve.C\n"
)


def test_it_is_told_in_full() -> None:
    found = only(KEPT)
    assert (found.rule, found.span.text) == ("standing-pilot-valve-kept", "valve.1")
    assert found.message == (
        "valve passes no gas without the thermocouple of a standing pilot, and box.MV drives it: "
        "fit a valve with a pilot and a main operator"
    )
    assert found.seen_at_unit == ("No pilot gas on a call: the spark goes on and nothing lights.")


STANDING = """\
part xfmr is transformer
part stat is thermostat
part valve is standing-pilot-gas-valve
part tc is thermocouple
wire xfmr.R to stat to valve to xfmr.C
wire tc.PLUS to valve.TC
wire tc.MINUS to valve.TC-C
"""
SILENT = {
    "on a thermostat": STANDING,
    "a valve made for the control": two_rod(),
    "a three-wire valve of the user's own": "kind mine is gas-valve-3-wire\n"
    + two_rod(valve_is="mine"),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    found = [rule for rule, _fault, _text in raised(unit)]
    assert "standing-pilot-valve-kept" not in found
