"""Safeties that are wired and stop no burner."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import CALL, unit
from tests.rules.raised import only, raised
from wirecheck.model.finding import Breaks

PAST = "wire xfmr.R to rollout to stat to box.TH\n"


def test_a_limit_in_the_circuit_of_a_fan_is_told_in_full() -> None:
    found = only(
        unit(PAST + "wire xfmr.R to limit to fan to xfmr.C\n", parts="part fan is relay\n")
    )
    assert (found.rule, found.fault, found.span.text) == (
        "safety-not-in-chain",
        "elsewhere",
        "limit",
    )
    assert found.message == (
        "limit stands in no path of the burner: its opening takes nothing away from box.TH, "
        "which the lead xfmr.R to rollout.1 feeds past it; move it into that call lead"
    )
    assert found.seen_at_unit == "With limit open the burner runs on through overheating."
    assert found.breaks is Breaks.SAFETY
    assert found.terminals == ("limit.1", "limit.2")


def test_one_side_without_a_lead_is_told_once() -> None:
    found = only(unit(PAST + "wire xfmr.R to limit.1\n"))
    assert (found.fault, found.span.text) == ("one-side", "limit.1")
    assert found.message.startswith("limit.2 has no lead, so limit stands in no path")


def test_ahead_of_the_damper_s_supply_it_stops_nothing() -> None:
    assert only(unit(PAST + "wire xfmr.R to limit to box.24V\n")).fault == "elsewhere"


def test_a_probe_whose_output_ends_loose_stops_nothing() -> None:
    call = CALL + "wire xfmr.R to probe.R\nwire probe.C to xfmr.C\nwire probe.OUT to open\n"
    found = only(unit(call, parts="part probe is low-water-probe\n"))
    assert (found.rule, found.fault) == ("safety-not-in-chain", "elsewhere")
    assert found.seen_at_unit.endswith("through low water.")


def test_the_burner_it_should_stop_is_the_one_of_its_supply() -> None:
    second = (
        "part xfmr-2 is transformer\npart stat-2 is thermostat\npart limit-2 is high-limit\n"
        "part box-2 is direct-ignition-control\npart burner-2 is direct-burner\n"
        "wire xfmr-2.R to stat-2 to box-2.TH\nwire xfmr-2.R to limit-2 to box-2.24V\n"
        "wire xfmr-2.C to box-2.COM\nwire line.L1 to xfmr-2.L1: black\n"
        "wire line.N to xfmr-2.N: white\nwire box-2.GND to burner-2.FRAME: green\n"
        "wire box-2.SENSE to burner-2.ROD\nwire box-2.SPARK to burner-2.SPARK: ignition-cable\n"
    )
    found = [f for f in raised(unit() + second) if f[0] == "safety-not-in-chain"]
    assert found == [("safety-not-in-chain", "elsewhere", "limit-2")]


def test_an_air_switch_in_the_lead_of_the_motor_it_proves_stops_no_burner() -> None:
    text = unit(
        PAST + "wire line.L1 to limit to inducer to line.N\n", parts="part inducer is inducer\n"
    )
    assert only(text.replace("limit is high-limit", "limit is air-switch")).fault == "elsewhere"


SILENT = {
    "an air switch that starts something else": "wire xfmr.R to limit to fan to xfmr.C\n",
    "a lead that was not traced": "wire xfmr.R to limit to unknown\n",
    "no lead at all is told of the part": "",
}


@pytest.mark.parametrize("more", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(more: str) -> None:
    parts = "part fan is relay\n" if "fan" in more else ""
    text = unit(PAST + more, parts=parts).replace("limit is high-limit", "limit is air-switch")
    assert "safety-not-in-chain" not in [rule for rule, _fault, _text in raised(text)]


def test_the_unused_limit_of_a_fan_control_is_none() -> None:
    call = PAST + "wire line.L1 to limit.FAN-1..FAN-2 to blower.HI: black\n"
    call += "wire line.N to blower.N: white\n"
    text = unit(call, parts="part blower is blower\n")
    assert raised(text.replace("is high-limit", "is fan-limit-control")) == []


def test_a_short_through_a_limit_is_told_as_a_short_only() -> None:
    found = only(unit(PAST + "wire xfmr.R to limit to xfmr.C\n"))
    assert found.rule == "secondary-shorted-on-call"


def test_nothing_is_said_where_no_burner_is_fed() -> None:
    sketch = "part limit is high-limit\npart xfmr is transformer\nwire xfmr.R to limit to unknown\n"
    assert "safety-not-in-chain" not in [rule for rule, _fault, _text in raised(sketch)]


def test_a_broken_lead_ahead_of_it_does_not_take_it_out_of_the_call() -> None:
    broken = CALL.replace("limit to rollout", "limit to rollout (broken)")
    assert [rule for rule, _fault, _text in raised(unit(broken))] == ["lead-found-bad"]


DRAFT = """\
wire stat.W to draft to start to xfmr.C
wire line.L1 to start.COM..NO to inducer to line.N
"""
DRAFT_PARTS = "part draft is pressure-switch\npart start is relay\npart inducer is inducer\n"


def test_a_draft_switch_in_the_relay_that_starts_its_own_inducer() -> None:
    """The inducer waits for its own draft for ever, and the burner waits for nothing."""
    found = only(unit(CALL + DRAFT, parts=DRAFT_PARTS))
    assert (found.rule, found.fault, found.span.text) == (
        "safety-not-in-chain",
        "elsewhere",
        "draft",
    )


def test_a_flow_switch_in_the_relay_of_its_own_pump() -> None:
    own = DRAFT.replace("inducer", "pump").replace("draft", "flow")
    parts = "part flow is flow-switch\npart start is relay\npart pump is circulator\n"
    assert only(unit(CALL + own, parts=parts)).rule == "safety-not-in-chain"


OF_ANOTHER = {
    "the air of one fan starts another": DRAFT.replace("draft", "sail"),
    "a relay whose motor is not drawn": "wire stat.W to sail to start to xfmr.C\n",
}


@pytest.mark.parametrize("lines", OF_ANOTHER.values(), ids=OF_ANOTHER)
def test_an_interlock_of_other_equipment_is_meant(lines: str) -> None:
    parts = "part sail is air-switch\npart start is relay\n"
    if "inducer" in lines:
        parts += "part inducer is inducer\npart exhaust is blower\n"
        lines += "wire line.L1 to exhaust.HI\nwire line.N to exhaust.N\n"
    found = raised(unit(CALL + lines, parts=parts))
    assert "safety-not-in-chain" not in [rule for rule, _fault, _text in found]


def test_two_in_one_row_are_told_together() -> None:
    text = unit("wire xfmr.R to limit to rollout.1\nwire xfmr.R to stat to box.TH\n")
    found = only(text)
    assert (found.rule, found.fault) == ("safety-not-in-chain", "row-open")
    assert found.message == (
        "rollout.2 has no lead, so limit and rollout stand in no path of the burner: let the call "
        "to box.TH go through all of them"
    )
    found = only(
        unit(
            "wire xfmr.R to limit to rollout to fan to xfmr.C\nwire xfmr.R to stat to box.TH\n",
            parts="part fan is relay\n",
        )
    )
    assert (found.fault, found.leads[-1]) == ("row", "xfmr.R to stat.R")
    assert found.message == (
        "limit and rollout stand in no path of the burner: their opening takes nothing away from "
        "box.TH, which the lead xfmr.R to stat.R feeds past them; move them into that call lead"
    )


def test_a_limit_with_both_leads_on_one_side() -> None:
    text = unit(
        "wire xfmr.R to stat to hot.LIMIT-2 to box.TH\n",
        parts="part hot is fan-limit-control: link removed\n",
    )
    assert "safety-not-in-chain" in [rule for rule, _fault, _text in raised(text)]


def test_fan_and_limit_contacts_exchanged_are_told_as_that() -> None:
    call = (
        "wire xfmr.R to limit.FAN-1..FAN-2 to rollout to stat to box.TH\n"
        "wire line.L1 to limit.LIMIT-1..LIMIT-2 to blower.HI: black\n"
        "wire line.N to blower.N: white\n"
    )
    text = unit(call, parts="part blower is blower\n")
    found = only(text.replace("is high-limit", "is fan-limit-control: link removed"))
    assert (found.rule, found.fault) == ("safety-not-in-chain", "fan-and-limit-exchanged")
    assert found.message == (
        "the fan contact of limit is in the call to box.TH, and its limit contact is not: exchange "
        "the two pairs of leads"
    )
