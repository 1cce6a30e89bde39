"""Terminals that have to be wired and are not."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FAN, FED, PUMP, changed, without
from tests.rules.raised import findings, mended, only, raised
from tests.rules.units import beside, direct, one_rod, two_rod
from wirecheck.model.finding import Breaks

NAME = "needed-terminal-empty"


def test_one_empty_terminal_is_told_in_full() -> None:
    found = only(without(FAN, "wire fan.B to xfmr.C"))
    assert (found.rule, found.fault, found.breaks) == (NAME, "empty", Breaks.OPERATION)
    assert found.span.text == "fan"
    assert found.message == "fan.B (coil) has no lead, and fan cannot do without it: run it"
    assert found.seen_at_unit == ("The circuit ends there: what hangs on fan.B does not work.")


def test_a_lead_missing_in_the_chain_is_one_finding_with_its_mend() -> None:
    unit = without(FAN, "wire stat.W to fan.A")
    found = only(unit)
    assert (found.fault, found.terminals) == ("no-lead-between", ("stat.W", "fan.A"))
    assert found.message == "no lead runs from stat.W to fan.A: run one"
    assert raised(mended(unit)) == []


def test_a_lead_missing_at_line_voltage() -> None:
    unit = changed(PUMP, ("wire line.L1 to disc to pump.L", "wire line.L1 to disc.1"))
    assert only(unit).terminals == ("disc.2", "pump.L")


def test_a_contact_wired_at_one_side_alone() -> None:
    found = only(FED + "wire xfmr.R to fan.COM\n")
    assert (found.fault, found.terminals) == ("contact-one-side", ("fan.NO",))
    assert found.message == (
        "a contact of fan is wired at one side alone: fan.NO (joined to COM while the coil is "
        "energised) has no lead; run it, or take the other one off and cap it"
    )


SILENT = {
    "everything wired": two_rod(),
    "a sketch of the ignition circuit alone": (
        "part box is pilot-ignition-control\npart pilot is pilot-burner: one-rod\n"
        "wire box.SPARK to pilot.SPARK: ignition-cable\nwire box.GND to pilot.HOOD: green\n"
    ),
    "a lead that was not traced may land there": changed(
        FAN, ("fan.B to xfmr.C", "unknown to xfmr.C")
    ),
    "a thermostat's unused calls": FAN,
    "the unused contacts of a relay": FAN,
    "one throw of a relay": FED
    + "part lamp is lamp\nwire xfmr.R to fan.COM..NC to lamp to xfmr.C\n",
    "the sense terminal of a one-rod pilot": one_rod(),
    "damper terminals with the plug in": direct(),
    "a burner ground landed elsewhere has rules of its own": two_rod(
        ground="wire box.GND to earth\n"
    ),
    "a common brought to the valve first": changed(
        two_rod(valve="plug box to valve: PV, MV\n"),
        ("xfmr.C to box.COM", "xfmr.C to valve.C\nwire xfmr.C to box.COM"),
    ),
    "what no lead reaches at all": FAN + "part spare is relay\n",
    "a broken lead lands all the same": changed(
        FAN, ("stat.W to fan.A", "stat.W to fan.A: broken")
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]


def test_two_missing_leads_are_two_findings() -> None:
    unit = without(FED, "wire line.N to xfmr.N: white", "wire fan.B to xfmr.C")
    assert [found.terminals for found in findings(unit)] == [("xfmr.N",), ("fan.B",)]


def test_a_second_unit_is_judged_by_itself() -> None:
    unit = two_rod(more=beside()).replace(
        "wire xfmr.R to limit2", "wire xfmr.R to limit2.1\nwire limit2.2"
    )
    assert findings(unit) == ()
    assert only(unit.replace("wire xfmr.R to limit2.1\n", "")).terminals == ("limit2.1",)


_BASE = """\
part x is transformer
part s is thermostat
part lim is high-limit
part c is pilot-ignition-control
wire x.C to c.COM to earth
wire c.GND to earth
"""


def test_the_hot_side_is_never_led_to_the_call_past_switches_that_hang_unwired() -> None:
    found = only(_BASE)
    assert (found.rule, found.fault, found.edits) == (NAME, "not-in-chain", ())
    assert found.message == (
        "no lead runs from x.R to c.TH, and none to s and lim: run the chain from x.R through s "
        "and lim to c.TH"
    )


def test_nor_past_a_limit_alone_that_hangs_unwired() -> None:
    found = only(_BASE + "wire x.R to s\n")
    assert (found.fault, found.terminals, found.edits) == ("not-in-chain", ("s.W", "c.TH"), ())


def test_nor_where_the_switches_have_leads_that_end_loose() -> None:
    text = _BASE.replace("part lim is high-limit\n", "")
    loose = text + "wire s.R to open: capped\nwire s.W to open: capped\n"
    assert [edit for found in findings(loose) for edit in found.edits] == []


def test_a_lead_missing_between_switches_is_still_offered() -> None:
    found = only(_BASE + "wire x.R to s\nwire lim.2 to c.TH\n")
    assert found.fault == "no-lead-between"
    assert [edit.words for edit in found.edits] == ["run a lead from s.W to lim.1"]


@pytest.mark.parametrize("kind", ["pilot-ignition-control", "direct-ignition-control"])
def test_with_no_burner_drawn_a_control_needs_no_burner_ground(kind: str) -> None:
    sketch = _BASE.replace("wire c.GND to earth\n", "").replace("pilot-ignition-control", kind)
    assert findings(sketch + "wire x.R to lim to s to c.TH\n") == ()
