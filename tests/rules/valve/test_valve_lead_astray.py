"""A lead of the gas valve that ends on another circuit."""

from __future__ import annotations

import pytest

from tests.rules.raised import mended, only, raised
from tests.rules.units import direct, two_rod


def test_an_output_on_the_call_is_told_in_full() -> None:
    found = only(two_rod(valve="plug box to valve: PV, VC to C\nwire box.MV to box.TH\n"))
    assert (found.rule, found.fault, found.span.text) == (
        "valve-lead-astray",
        "main-off",
        "box.TH",
    )
    assert found.message == (
        "the lead of box.MV lands on box.TH: take it off there and land it on valve.MV"
    )
    assert found.seen_at_unit == "The pilot lights and is proved; the main never opens."


@pytest.mark.parametrize(
    "unit",
    [
        two_rod(valve="plug box to valve: PV, VC to C\nwire box.MV to box.TH\n"),
        two_rod(valve="plug box to valve: MV, VC to C\nwire box.PV to stat.W\n"),
        direct(valve="wire box.V to box.TH\nwire box.VC to valve.C\n"),
    ],
)
def test_the_edit_mends_it(unit: str) -> None:
    assert raised(mended(unit)) == []


STOOD_BACK = {
    "switched-lead-earthed": "wire box.PV to earth\n",
    "spark-lead-on-control-circuit": "wire valve.PV to pilot.SPARK\n",
    "sense-lead-on-control-circuit": "wire box.PV to box.SENSE\n",
}


@pytest.mark.parametrize(("rule", "lead"), STOOD_BACK.items(), ids=STOOD_BACK)
def test_what_the_lead_does_there_comes_first(rule: str, lead: str) -> None:
    unit = two_rod(valve="plug box to valve: MV, VC to C\n" + lead)
    assert only(unit).rule == rule


SILENT = {
    "a relay on the main output": two_rod(more="part cr is relay\nwire box.MV to cr to box.VC\n"),
    "a lamp on the pilot output": two_rod(
        more="part lamp is lamp: 24 V\nwire box.PV to lamp to box.VC\n"
    ),
    "the damper's common on VC": two_rod(more="part cr is relay\nwire stat.W to cr to box.VC\n"),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert raised(unit) == []
