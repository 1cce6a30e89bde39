"""Ways through contacts from one side of the secondary to the other."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FAN, changed
from tests.rules.raised import findings, mended, only, raised
from tests.rules.units import two_rod
from wirecheck.model.finding import Breaks

NAME = "secondary-shorted-on-call"


def test_the_call_lead_on_the_common_is_told_in_full() -> None:
    unit = changed(two_rod(), ("stat to box.TH", "stat to xfmr.C"))
    found = only(unit)
    assert (found.rule, found.breaks, found.span.text) == (NAME, Breaks.SAFETY, "stat")
    assert found.message == (
        "xfmr.R reaches xfmr.C through limit and stat at stat.W with no load between: move the "
        "lead on stat.W to box.TH"
    )
    assert found.seen_at_unit == (
        "A dead short with limit and stat closed: the fuse blows, a contact welds or the "
        "transformer burns out."
    )
    assert raised(mended(unit)) == []


def test_leads_exchanged_at_the_control_are_one_finding() -> None:
    unit = changed(
        two_rod(valve="plug box to valve: PV, MV\nwire box.TH to valve.C\n"),
        ("stat to box.TH", "stat to box.VC"),
    )
    assert [rule for rule, *_ in raised(unit)] == [NAME]


def test_a_lead_beyond_the_contacts_is_told_in_full() -> None:
    found = only(two_rod() + "wire valve.PV to xfmr.C\n")
    assert (found.rule, found.fault, found.leads) == (NAME, "joined", ("valve.PV to xfmr.C",))
    assert found.message == (
        "the lead valve.PV to xfmr.C joins what limit, stat and box make hot to xfmr.C, with no "
        "load between: take it off and land it where it belongs"
    )


def test_a_jumper_beyond_the_contacts_is_taken_out() -> None:
    unit = two_rod() + "jumper box.TH to box.VC\n"
    assert only(unit).leads == ("box.TH to box.VC",)
    assert raised(mended(unit)) == []


SILENT = {
    "a coil stands between": FAN,
    "a relay's two throws are never closed together": FAN
    + "part aid is relay\npart lamp is lamp\n"
    + "wire fan.A to aid to xfmr.C\nwire xfmr.R to aid.NO\nwire aid.NC to xfmr.C\n"
    + "wire aid.COM to lamp to xfmr.C\n",
    "a contact that parallels a coil shorts nothing by itself": FAN
    + "part pump is relay\nwire fan.A to pump to xfmr.C\nwire stat.G to pump.A\n",
    "a contact in the common joins nothing to the hot side": changed(
        FAN,
        ("part stat", "part aux is door-switch\npart stat"),
        ("fan.B to xfmr.C", "fan.B to aux to xfmr.C"),
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]


def test_closed_contacts_count_as_well_as_open_ones() -> None:
    unit = FAN + "part limit is high-limit\nwire xfmr.R to limit to fan.B\n"
    assert [found.rule for found in findings(unit)] == [NAME]
