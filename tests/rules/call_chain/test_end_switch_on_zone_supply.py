"""End switches between a boiler's call and the zone transformer."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import zones
from tests.rules.raised import mended, only, raised
from wirecheck.model.finding import Breaks

FIRST = "wire boiler.1 to zone-1.E1..E2 to boiler.2\n"
FROM_R = FIRST + "wire xfmr.R to zone-2.E1..E2 to boiler.2\n"
TO_C = FIRST + "wire boiler.1 to zone-2.E1..E2 to xfmr.C\n"


def test_one_fed_from_the_zone_transformer_is_told_in_full() -> None:
    found = only(zones(ends=FROM_R))
    assert (found.rule, found.span.text) == ("end-switch-on-zone-supply", "zone-2.E1..E2")
    assert found.message == (
        "the end switch of zone-2 is on boiler.2 at one side and, at zone-2.E1, on xfmr.R of xfmr: "
        "boiler has 24 V of its own for the call; land zone-2.E1 on boiler.1 instead"
    )
    assert found.breaks is Breaks.OPERATION


@pytest.mark.parametrize("ends", [FROM_R, TO_C])
def test_the_edit_mends_it(ends: str) -> None:
    assert only(zones(ends=ends)).rule == "end-switch-on-zone-supply"
    assert raised(mended(zones(ends=ends))) == []


def test_both_zones_alike_are_two_leads_to_move() -> None:
    ends = "wire xfmr.R to zone-1.E1..E2 to boiler.2\nwire xfmr.R to zone-2.E1..E2 to boiler.2\n"
    found = {rule for rule, _fault, _text in raised(zones(ends=ends))}
    assert found == {"end-switch-on-zone-supply"}


SILENT = {
    "both sides on the call": zones(),
    "a zone transformer's relay between": zones(
        ends="wire xfmr.R to zone-1.E1..E2 to aid.A\nwire xfmr.R to zone-2.E1..E2 to aid.A\n"
        "wire aid.B to xfmr.C\nwire boiler.1 to aid.COM..NO to boiler.2\n",
        parts="part aid is relay\n",
    ),
    "over a nut and a limit": zones(
        ends="wire boiler.1 to nut\nwire nut to zone-1.E1..E2 to limit to boiler.2\n"
        "wire nut to zone-2.E1..E2 to limit.1\n",
        parts="part limit is high-limit\nsplice nut\n",
    ),
    "tied on both sides, which is worse": zones(
        ends="wire xfmr.R to zone-1.E1\nwire zone-1.E2 to boiler.1\nwire xfmr.C to boiler.2\n"
    ),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    found = [rule for rule, _fault, _text in raised(text)]
    assert "end-switch-on-zone-supply" not in found
