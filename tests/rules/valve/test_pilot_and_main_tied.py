"""Pilot and main operator fed as one on a pilot system."""

from __future__ import annotations

import pytest

from tests.rules.raised import mended, only, raised
from tests.rules.units import direct, one_rod, two_rod
from wirecheck.model.finding import Breaks

ADAPTER = "wire box.PV to ad.V\nwire box.VC to ad.VC\nplug ad to valve: PV, MV, C\n"


def test_a_jumper_is_told_in_full() -> None:
    found = only(two_rod(more="jumper valve.PV to valve.MV\n"))
    assert (found.rule, found.fault, found.span.text) == (
        "pilot-and-main-tied",
        "tied",
        "valve.PV to valve.MV",
    )
    assert found.message == (
        "box.PV and box.MV are tied together on a pilot system: take the tie off, so that box.PV "
        "feeds the pilot operator and box.MV the main operator"
    )
    assert found.seen_at_unit == "Main gas flows in the pilot trial, before the pilot is proved."
    assert found.breaks is Breaks.SAFETY


@pytest.mark.parametrize(
    "valve",
    [
        "plug box to valve: PV, VC to C\nwire box.PV to valve.MV\n",
        "wire box.PV to valve.MV\nplug box to valve: VC to C, PV\n",
    ],
)
def test_the_main_s_own_lead_on_the_pilot_output_goes_to_the_empty_main_output(valve: str) -> None:
    found = only(two_rod(valve=valve))
    assert (found.fault, found.breaks) == ("main-on-pilot-output", Breaks.SAFETY)
    assert found.message == (
        "the lead box.PV to valve.MV brings box.PV to the main operator, valve.MV, as well, and "
        "box.MV is empty: land it on box.MV"
    )
    assert raised(mended(two_rod(valve=valve))) == []


def test_an_adapter_left_on_is_named() -> None:
    found = only(one_rod(valve=ADAPTER, more="part ad is valve-adapter\n"))
    assert (found.fault, found.span.text) == ("adapter-left", "ad")
    assert found.message.startswith("ad ties valve.PV to valve.MV and is left on a pilot system")


@pytest.mark.parametrize("ends", ["box.PV to box.MV", "valve.PV to valve.MV", "box.PV to valve.MV"])
def test_taking_the_jumper_off_mends_it(ends: str) -> None:
    assert raised(mended(two_rod(more=f"jumper {ends}\n"))) == []


def test_both_operators_on_the_pilot_output() -> None:
    unit = two_rod(valve="plug box to valve: PV, VC to C\nwire valve.PV to valve.MV\n")
    assert (only(unit).fault, only(unit).breaks) == ("tied", Breaks.SAFETY)


def test_both_operators_on_the_main_output_never_light() -> None:
    unit = two_rod(valve="plug box to valve: MV, VC to C\nwire valve.PV to valve.MV\n")
    assert (only(unit).fault, only(unit).breaks) == ("both-on-main", Breaks.OPERATION)


def test_which_way_round_the_coils_are_does_not_matter() -> None:
    unit = two_rod(valve="plug box to valve: PV to C, VC to PV\nwire valve.PV to valve.MV\n")
    assert (only(unit).fault, only(unit).breaks) == ("tied", Breaks.SAFETY)


def test_a_contact_between_the_outputs_ties_them_too() -> None:
    unit = two_rod(more="part pb is service-switch\nwire box.PV to pb to box.MV\n")
    assert "pilot-and-main-tied" in [rule for rule, _fault, _text in raised(unit)]


SILENT = {
    "each on its own": two_rod(),
    "an adapter on a direct system": direct(
        valve_is="gas-valve-3-wire",
        valve="wire box.V to ad.V\nwire box.VC to ad.VC\nplug ad to valve: PV, MV, C\n",
        more="part ad is valve-adapter\n",
    ),
    "tied on a direct system": direct(
        valve_is="gas-valve-3-wire", valve="plug box to valve: V to PV, V to MV, VC to C\n"
    ),
    "a two-wire valve as pilot valve": two_rod(
        valve_is="gas-valve-2-wire",
        valve="wire box.PV to valve.1\nwire box.VC to valve.C\n",
        more="part main is gas-valve-2-wire\nwire box.MV to main.1\nwire box.VC to main.C\n",
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert raised(unit) == []


def test_a_short_of_the_pilot_output_is_no_tie() -> None:
    unit = two_rod(more="wire box.PV to box.COM\nwire box.MV to box.COM\n")
    assert "pilot-and-main-tied" not in [rule for rule, _fault, _text in raised(unit)]
