"""What no lead is the cause of: gas that does not come through, contacts that open with heat."""

from __future__ import annotations

from tests.troubleshoot.units import example, talk

HEATER = "furnace-room-heater"


def modes(words: str) -> set[str]:
    groups = talk(words, example(HEATER)).diagnosis.groups
    return {f.mode for group in groups for each in group.suspects for f in each.faults}


def test_a_burner_that_goes_out_when_warm_has_a_contact_that_opens_with_heat() -> None:
    begun = talk("main burner lights, goes out after a few minutes", example(HEATER))
    assert modes("main burner lights, then goes out") == {"opens-warm"}
    reading = begun.dictionary.by_key["volts:limit.1:limit.2:warm"]
    found = begun.answer(reading, 26.0).diagnosis.groups[0].suspects[0].what
    assert found.startswith("limit opens once the unit is warm")


def test_gas_that_does_not_come_through_is_thought_of() -> None:
    assert "pilot-starved" in modes("spark, pilot does not light")
    assert {"main-starved", "valve-sticks"} <= modes("pilot lights, spark stops, no main")


def test_a_manometer_tells_a_valve_that_sticks_from_an_orifice_that_is_stopped_up() -> None:
    begun = talk("spark, pilot does not light", example(HEATER))
    flow = begun.dictionary.by_key["look:flow:valve:0"]
    through, none = (begun.answer(flow, value).diagnosis.groups for value in (0, 1))
    assert {f.mode for g in through for s in g.suspects for f in s.faults} == {"pilot-starved"}
    assert "valve-sticks" in {f.mode for g in none for s in g.suspects for f in s.faults}
