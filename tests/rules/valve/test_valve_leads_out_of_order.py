"""Three leads, six ways, two valves: what each does, for coils of 120 and 60 ohm."""

from __future__ import annotations

import pytest

from tests.rules.raised import mended, only, raised
from tests.rules.units import direct, one_rod, two_rod
from wirecheck.model.finding import Breaks

#: Where PV, MV and VC of the control land; volts of pilot and main in trial and run, worked by
#: hand: 24 V across two ends that are held, nothing where an end is held by nothing, and across
#: both coils in series 24 x 120/180 = 16 V at the pilot's 120 ohm and 8 V at the main's 60 ohm.
WAYS = {
    "PV and MV exchanged": ("MV", "PV", "C", "0 V and 24 V in the trial, 24 V and 24 V in the run"),
    "PV and C exchanged": ("C", "MV", "PV", "24 V and 0 V in the trial, 24 V and 0 V in the run"),
    "MV and C exchanged": ("PV", "C", "MV", "16 V and 8 V in the trial, 0 V and 24 V in the run"),
    "one round": ("MV", "C", "PV", "16 V and 8 V in the trial, 24 V and 0 V in the run"),
    "the other round": ("C", "PV", "MV", "0 V and 24 V in the trial, 0 V and 24 V in the run"),
}
OUTCOMES = {
    "redundant": {
        "PV and MV exchanged": "no-pilot-gas",
        "PV and C exchanged": "no-main-gas",
        "MV and C exchanged": "no-main-gas",
        "one round": "no-main-gas",
        "the other round": "no-pilot-gas",
    },
    "single-seat": {
        "PV and MV exchanged": "main-gas-unproved",
        "PV and C exchanged": "no-main-gas",
        "MV and C exchanged": "main-gas-without-pilot",
        "one round": "no-main-gas",
        "the other round": "main-gas-unproved",
    },
}
SAFETY = {"main-gas-unproved", "main-gas-without-pilot", "gas-at-pilot-outlet"}


def unit(pv: str, mv: str, vc: str, seats: str = "redundant") -> str:
    return two_rod(
        valve_is=f"gas-valve-3-wire: pilot 120 ohm, main 60 ohm, {seats}",
        valve=f"wire box.PV to valve.{pv}\nwire box.MV to valve.{mv}\nwire box.VC to valve.{vc}\n",
    )


def test_an_exchange_is_told_in_full() -> None:
    found = only(unit("PV", "C", "MV", "single-seat"))
    assert (found.rule, found.span.text) == ("valve-leads-out-of-order", "valve.MV")
    assert found.message == (
        "the valve leads are out of order: box.VC is on valve.MV and box.MV on valve.C; land "
        "box.MV on valve.MV and box.VC on valve.C"
    )
    assert found.seen_at_unit == (
        "The pilot and main operator get 16 V and 8 V in the trial, 0 V and 24 V in the run. The "
        "main gas comes on as the pilot goes out, and may not light."
    )


@pytest.mark.parametrize("seats", OUTCOMES)
@pytest.mark.parametrize("way", WAYS)
def test_what_each_way_does_follows_from_the_coils(way: str, seats: str) -> None:
    pv, mv, vc, volts = WAYS[way]
    found = only(unit(pv, mv, vc, seats))
    fault = OUTCOMES[seats][way]
    assert found.fault == fault
    assert found.breaks is (Breaks.SAFETY if fault in SAFETY else Breaks.OPERATION)
    assert found.seen_at_unit.startswith(f"The pilot and main operator get {volts}.")


@pytest.mark.parametrize("way", WAYS)
def test_the_edits_mend_each_way(way: str) -> None:
    pv, mv, vc, _volts = WAYS[way]
    assert raised(mended(unit(pv, mv, vc))) == []
    plug = one_rod(valve=f"plug box to valve: PV to {pv}, MV to {mv}, VC to {vc}\n")
    assert raised(mended(plug)) == []


def test_weaker_coils_change_what_may_open() -> None:
    """In series 24 V fall as 10.8 V (45 %) and 13.2 V (55 %): both may open, the main too early."""
    unit = two_rod(
        valve_is="gas-valve-3-wire: pilot 90 ohm, main 110 ohm",
        valve="plug box to valve: PV, MV to C, VC to MV\n",
    )
    assert (only(unit).fault, only(unit).breaks) == ("main-gas-unproved", Breaks.SAFETY)


def test_a_common_on_the_hot_side_keeps_the_valve_dead() -> None:
    found = only(two_rod(valve="plug box to valve: PV, MV\nwire valve.C to box.TH\n"))
    assert (found.rule, found.fault) == ("valve-leads-out-of-order", "no-pilot-gas")
    assert "the hot side is on valve.C" in found.message


def test_the_hot_side_comes_off_before_the_common_is_landed() -> None:
    """Landed beside it, the common would short the transformer."""
    hot_on_common = two_rod(valve="plug box to valve: PV, MV\nwire valve.C to xfmr.R\n")
    assert only(hot_on_common).message.endswith(
        "take the lead of valve.C off xfmr.R and land it on box.VC"
    )
    assert raised(mended(hot_on_common)) == []
    from_elsewhere = "wire box.PV to valve.PV\nwire xfmr.C to valve.MV\nwire box.MV to valve.C\n"
    found = only(two_rod(valve=from_elsewhere))
    assert found.message.endswith(
        "take what comes from xfmr.C off valve.MV; then land box.MV on valve.MV and box.VC on "
        "valve.C"
    )
    assert found.edits == ()


def test_direct_operators_in_series_let_gas_out_at_the_pilot_outlet() -> None:
    valve = "plug box to valve: V to PV, VC to MV\n"
    single = direct(valve_is="gas-valve-3-wire: single-seat", valve=valve)
    assert (only(single).fault, only(single).breaks) == ("gas-at-pilot-outlet", Breaks.SAFETY)
    assert only(direct(valve_is="gas-valve-3-wire", valve=valve)).fault == "no-main-gas"


def test_leads_off_by_one_are_one_finding() -> None:
    found = only(two_rod(valve="plug box to valve: PV to MV, VC to C\n"))
    assert (found.rule, found.fault) == ("valve-leads-out-of-order", "no-pilot-gas")


SILENT = {
    "in order": unit("PV", "MV", "C"),
    "the common on the control's common": two_rod(
        valve="plug box to valve: PV, MV\nwire box.COM to valve.C\n"
    ),
    "the common on the transformer's": two_rod(
        valve="plug box to valve: PV, MV\nwire xfmr.C to valve.C\n"
    ),
    "a coil does not care which way round": direct(
        valve="wire box.V to valve.C\nwire box.VC to valve.1\n"
    ),
    "printed labels that go another way": two_rod(
        valve="wire box.PV to valve.MV\nwire box.MV to valve.PV\nwire box.VC to valve.C\n",
        more='labels valve: PV as "MV", MV as "PV"\n',
    ),
    "over a strip": two_rod(
        valve="wire box.PV to tb.1 to valve.PV\nwire box.MV to tb.2 to valve.MV\n"
        "wire box.VC to tb.3 to valve.C\n",
        more="part tb is terminal-strip\n",
    ),
    "a valve of the user's own kind": "kind old-valve is gas-valve-3-wire: single-seat\n"
    + two_rod(valve_is="old-valve"),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert raised(text) == []
