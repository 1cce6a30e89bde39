"""Which tracks get a row, in which order, and what is quiet on them."""

from __future__ import annotations

from tests.sequence.heater import DAMPERED, HEATER, INDUCED, changed, ran
from wirecheck.drawing.timeline.rows import rows
from wirecheck.sequence.run import Run
from wirecheck.sequence.script import Opening, heat_call


def names(run: Run) -> list[str]:
    return [row.name for row in rows(run)]


def test_causes_come_first_then_the_control_and_the_flame() -> None:
    assert names(ran(DAMPERED)) == [
        "call", "box", "spark", "pilot flame", "flame signal", "main flame",
        "valve pilot operator", "valve main operator", "vent", "vent motor",
    ]  # fmt: skip


def test_what_never_does_anything_gets_no_row() -> None:
    assert "main flame" not in names(ran(HEATER, heat_call(gas=False)))


def test_power_and_gas_are_shown_while_they_are_off() -> None:
    run = ran(HEATER, heat_call(gas=False, power_lost_s=5, power_back_s=9))
    by_name = {row.name: row for row in rows(run)}
    assert [bar.quiet for bar in by_name["power"].bars] == [True, False, True]
    assert [bar.quiet for bar in by_name["gas supply"].bars] == [False]


def test_a_contact_is_shown_while_it_is_made_or_held_open_from_outside() -> None:
    by_name = {row.name: row for row in rows(ran(INDUCED))}
    assert [(bar.state, bar.quiet) for bar in by_name["air"].bars] == [
        ("open", True), ("closed", False), ("open", True),
    ]  # fmt: skip
    forced = {row.name: row for row in rows(ran(HEATER, heat_call(opened=(Opening("limit"),))))}
    assert [(bar.state, bar.quiet) for bar in forced["limit"].bars] == [("open", False)]


def test_a_flame_that_gives_no_signal_is_shown_as_such() -> None:
    run = ran(changed(HEATER, ("wire box.GND to pilot.HOOD\n", "")), heat_call(length_s=60))
    signal = next(row for row in rows(run) if row.name == "flame signal")
    assert [(bar.state, bar.quiet) for bar in signal.bars] == [
        ("0 uA", True), ("no signal", False), ("0 uA", True),
    ]  # fmt: skip
