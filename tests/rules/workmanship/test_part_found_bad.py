"""Parts recorded as stuck, burnt out or dirty."""

from __future__ import annotations

import pytest

from tests.rules.circuits import FAN, changed
from tests.rules.raised import findings, only
from tests.rules.units import direct, one_rod, two_rod
from wirecheck.model.finding import Breaks
from wirecheck.parts.library import kind, kind_names

NAME = "part-found-bad"


def test_a_dirty_rod_is_told_in_full() -> None:
    found = only(two_rod(burner="pilot-burner: two-rod, dirty"))
    assert (found.rule, found.fault, found.breaks) == (NAME, "dirty", Breaks.OPERATION)
    assert found.message == (
        "pilot is recorded with its rod dirty: clean it gently with fine steel wool or a soft "
        "scouring cloth, no sandpaper, whose grit insulates"
    )


@pytest.mark.parametrize(
    ("unit", "words", "breaks"),
    [
        (
            changed(FAN, ("fan is relay", "fan is relay: stuck closed")),
            "as stuck closed",
            Breaks.OPERATION,
        ),
        (
            changed(FAN, ("fan is relay", "fan is relay: coil open")),
            "with its coil open",
            Breaks.OPERATION,
        ),
        (
            changed(FAN, ("transformer", "transformer: winding shorted")),
            "with its winding shorted",
            Breaks.OPERATION,
        ),
        (
            two_rod(control="pilot-ignition-control: pilot-contact stuck-closed"),
            "with its pilot contact stuck closed",
            Breaks.SAFETY,
        ),
        (
            two_rod(valve_is="gas-valve-3-wire: main-coil open"),
            "with its main coil open",
            Breaks.OPERATION,
        ),
    ],
)
def test_each_record(unit: str, words: str, breaks: Breaks) -> None:
    found = only(unit)
    assert (found.rule, found.breaks) == (NAME, breaks)
    assert f"is recorded {words}" in found.message


@pytest.mark.parametrize(
    ("unit", "gas", "breaks"),
    [
        (two_rod(control="pilot-ignition-control: spark-coil dead"), "pilot gas", Breaks.SAFETY),
        (one_rod(control="pilot-ignition-control: spark-coil dead"), "pilot gas", Breaks.OPERATION),
        (direct(control="direct-ignition-control: spark-coil dead"), "main gas", Breaks.SAFETY),
    ],
)
def test_a_dead_spark_coil_opens_the_gas_all_the_same(unit: str, gas: str, breaks: Breaks) -> None:
    found = only(unit)
    assert (found.fault, found.breaks) == ("no-spark", breaks)
    assert found.seen_at_unit == (
        f"It opens the gas with no spark: unlit {gas} until the trial ends."
    )


def test_every_record_the_library_knows_has_words() -> None:
    for name in kind_names():
        for attribute, spec in kind(name).attributes.items():
            for value in spec.found_wrong:
                typed = attribute if value == "yes" else f"{attribute} {value}"
                unit = FAN + f"part bad is {name}: {typed}\nwire bad to fan.A\n"
                if kind(name).through:
                    found = [each.rule for each in findings(unit)]
                    assert {NAME, "safety-stuck-closed", "damper-found-bad"} & set(found), typed


SILENT = {
    "nothing recorded": two_rod(),
    "a clean rod": two_rod(burner="pilot-burner: two-rod, rod clean"),
    "a safety stuck closed is told as that": changed(
        two_rod(), ("high-limit", "high-limit: stuck closed")
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
