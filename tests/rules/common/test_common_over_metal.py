"""Commons that come back through sheet metal."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FAN, changed, without
from tests.rules.raised import mended, only, raised
from tests.rules.units import two_rod
from wirecheck.model.finding import Breaks

NAME = "common-over-metal"
ON_CABINET = two_rod(valve="plug box to valve: PV, MV\nwire valve.C to earth\n")


def test_a_valve_common_on_the_cabinet_is_told_in_full() -> None:
    found = only(ON_CABINET)
    assert (found.rule, found.fault, found.span.text) == (NAME, "no-lead-back", "earth")
    assert found.message == (
        "valve.C goes back to xfmr.C only by way of earth: run a lead from it to box.VC"
    )
    assert found.breaks is Breaks.WORKMANSHIP
    assert raised(mended(ON_CABINET)) == []


def test_a_relay_coil_goes_back_to_the_transformer() -> None:
    unit = changed(FAN, ("fan.B to xfmr.C", "fan.B to earth"))
    assert only(unit).message.endswith("run a lead from it to xfmr.C")
    assert raised(mended(unit)) == []


def test_two_coils_on_one_lead_to_earth_are_one_mistake() -> None:
    more = "part aux is relay\nwire stat.W to aux.A\nwire aux.B to fan.B\n"
    unit = changed(FAN, ("fan.B to xfmr.C", "fan.B to earth")) + more
    assert [rule for rule, _fault, _text in raised(unit)] == [NAME]


SILENT = {
    "a lead back, and earth besides": two_rod(more="wire valve.C to earth\n"),
    "a lead back over a strip": two_rod(
        valve="plug box to valve: PV, MV\nwire valve.C to tb.1 to xfmr.C\n",
        more="part tb is terminal-strip\n",
    ),
    "a lead that was not traced": two_rod(
        valve="plug box to valve: PV, MV\nwire valve.C to earth\nwire valve.C to unknown\n"
    ),
    "the secondary is earthed nowhere, which is another matter": without(
        changed(FAN, ("fan.B to xfmr.C", "fan.B to earth")), "wire xfmr.C to earth: green"
    ),
    "a switched lead on earth is a short": two_rod(more="wire box.PV to earth\n"),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [rule for rule, _fault, _text in raised(unit)]
