"""Where the drawing itself is wrong, its mistake is the cause that is named."""

from __future__ import annotations

import pytest

from tests.troubleshoot.units import example, talk

CLASSIC = "pilot lights, spark goes on, no main"


@pytest.mark.parametrize("name", ["no-burner-ground", "common-exchanged"])
def test_nothing_is_broken_is_never_said_of_it(name: str) -> None:
    wrong = example(name)
    assert wrong.mistakes
    assert "nothing is broken" not in wrong.faults[0].what
    assert wrong.mistakes[0].message in wrong.faults[0].what


def test_the_mistake_is_mended_as_soon_as_it_explains_all() -> None:
    begun = talk(CLASSIC, example("no-burner-ground"))
    assert "The drawing itself has 1 finding" in begun.diagnosis.remarks[0]
    jumper = next(each for each in begun.dictionary.readings if each.about == "ground-jumper")
    diagnosis = begun.answer(jumper, 1).diagnosis
    assert "no lead runs from box.GND to pilot.HOOD" in diagnosis.groups[0].suspects[0].what
    assert diagnosis.ending is not None
    assert diagnosis.ending.is_sure
    assert diagnosis.ending.repair == ("Run a lead from box.GND to pilot.HOOD: green",)


def test_on_a_right_drawing_nothing_is_said_of_mistakes() -> None:
    heater = example("furnace-room-heater")
    assert heater.mistakes == ()
    assert heater.faults[0].what.startswith("nothing is broken")
