"""Thermostats that are wired and call for nothing."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import CALL, unit, zones
from tests.rules.raised import only, raised
from wirecheck.model.finding import Breaks

PAST = "wire xfmr.R to limit to rollout to box.TH\nwire rollout.2 to stat.R\n"


def test_a_call_past_the_thermostat_is_told_in_full() -> None:
    found = only(unit(PAST))
    assert (found.rule, found.fault, found.span.text) == (
        "thermostat-not-in-call",
        "past",
        "box.TH",
    )
    assert found.message == (
        "the call reaches box.TH without going through stat: let it go in at stat.R and come out "
        "at stat.W"
    )
    assert found.seen_at_unit == "The burner fires whether stat calls or not."
    assert found.breaks is Breaks.OPERATION


def test_without_any_limit_ahead_it_is_a_matter_of_safety() -> None:
    text = unit(
        "wire xfmr.R to spare to box.TH\nwire spare.2 to stat.R\n", parts="part spare is fuse\n"
    )
    for name in ("limit is high-limit", "rollout is rollout-switch"):
        text = text.replace(f"part {name}\n", "")
    assert only(text).breaks is Breaks.SAFETY


def test_a_second_thermostat_that_runs_nothing() -> None:
    call = CALL + "wire rollout.2 to aid to strip.1\n"
    found = only(unit(call, parts="part aid is thermostat\npart strip is terminal-strip\n"))
    assert (found.fault, found.span.text, found.breaks) == ("runs-nothing", "aid", Breaks.OPERATION)


SILENT = {
    "a thermostat on a fan relay": CALL + "wire xfmr.R to aid to fan to xfmr.C\n",
    "one that was not traced": CALL + "wire xfmr.R to aid to unknown\n",
    "one beside the other": CALL + "wire rollout.2 to aid to box.TH\n",
    "one with its two leads exchanged": CALL + "wire box.TH to aid.R\nwire aid.W to rollout.2\n",
}


@pytest.mark.parametrize("call", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(call: str) -> None:
    parts = "part aid is thermostat\n" + ("part fan is relay\n" if "fan" in call else "")
    assert raised(unit(call, parts=parts)) == []


def test_a_zone_without_its_thermostat_is_told_of_the_valve() -> None:
    motors = (
        "wire xfmr.R to stat-1 to zone-1.M1\nwire xfmr.R to zone-2.M1\nwire xfmr.R to stat-2.R\n"
    )
    assert only(zones(motors)).rule == "zone-motor-always-on"


def test_a_sketch_without_a_burner_is_not_judged() -> None:
    sketch = "part xfmr is transformer\npart stat is thermostat\nwire xfmr.R to stat to open\n"
    assert "thermostat-not-in-call" not in [rule for rule, _fault, _text in raised(sketch)]


def test_a_millivolt_system_has_its_supply_in_the_valve() -> None:
    sketch = (
        "part stat is thermostat: 500 mV\npart valve is millivolt-gas-valve\n"
        "wire valve.GEN to stat to valve.CALL\n"
    )
    assert "thermostat-not-in-call" not in [rule for rule, _fault, _text in raised(sketch)]
