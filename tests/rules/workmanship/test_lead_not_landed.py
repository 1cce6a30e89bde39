"""Leads of a chain that end loose, with the one terminal they can be meant for."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FAN, PUMP, changed
from tests.rules.raised import findings, mended, only, raised
from wirecheck.model.finding import Breaks

NAME = "lead-not-landed"

BASE = """\
part x is transformer
part s is thermostat
part c is pilot-ignition-control
wire x.R to s to open
wire x.C to c.COM to earth
wire c.GND to earth
"""


def test_a_call_lead_that_ends_loose_is_one_finding_in_full() -> None:
    found = only(BASE)
    assert (found.rule, found.fault, found.breaks) == (NAME, "loose", Breaks.OPERATION)
    assert (found.span.text, found.terminals) == ("open", ("s.W", "c.TH"))
    assert found.message == "the lead from s.W ends loose, and c.TH has no lead: land it on c.TH"
    assert found.seen_at_unit == "The circuit ends there: what hangs on c.TH does not work."
    assert findings(mended(BASE)) == ()


@pytest.mark.parametrize(
    "unit",
    [
        changed(FAN, ("stat.W to fan.A", "open to fan.A")),
        changed(PUMP, ("disc to pump.L", "disc to open")),
        changed(BASE, ("x.R to s to open", "open to s to x.R")),
    ],
)
def test_it_is_found_from_either_end_and_at_line_voltage(unit: str) -> None:
    assert only(unit).rule == NAME
    assert findings(mended(unit)) == ()


SILENT = {
    "a limit hangs unwired, and may belong between": "part lim is high-limit\n" + BASE,
    "the lead comes from the supply itself": changed(
        BASE, ("wire x.R to s to open", "wire x.R to open\nwire s.R to x.R")
    ),
    "two leads end loose": BASE + "wire s.R to open\n",
    "two terminals wait": "part fan is relay\n" + BASE + "wire fan.B to x.C\n",
    "capped, as it is meant": changed(BASE, ("s to open", "s to open: capped")),
    "of a common it is not known": changed(FAN, ("fan.B to xfmr.C", "open to xfmr.C")),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_where_a_lead_belongs_is_not_guessed(unit: str) -> None:
    assert NAME not in [rule for rule, _fault, _text in raised(unit)]
    assert not any("land" in edit.words for found in findings(unit) for edit in found.edits)
