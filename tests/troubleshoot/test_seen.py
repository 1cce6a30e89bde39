"""What is said in plain words, in the words of ``observe``, and typed as an answer."""

from __future__ import annotations

import math

import pytest

from tests.sequence.heater import HEATER
from tests.troubleshoot.units import dictionary, example, talk
from wirecheck import load_text, troubleshoot
from wirecheck.troubleshoot.answers import NotAnAnswerError, read_answer
from wirecheck.troubleshoot.seen import NotUnderstoodError, seen

Choices = tuple[tuple[str, int, int], ...]


def said(words: str, name: str = "") -> Choices:
    found = seen(example(name) if name else dictionary(), words)
    return tuple((each.reading.about, int(each.low), int(each.high)) for each in found)


@pytest.mark.parametrize(
    ("words", "choices"),
    [
        ("pilot lights, main never does", (("pilot", 1, 1), ("main", 0, 0))),
        ("no spark and no pilot", (("spark", 0, 0), ("pilot", 0, 0))),
        ("Pilot won\u2019t light", (("pilot", 0, 0),)),
        ("it keeps sparking, the pilot lights", (("spark", 2, 2), ("pilot", 1, 1))),
        ("the main lights and goes out", (("main", 2, 2),)),
        ("burner burns all the time", (("main", 3, 3),)),
        ("main burner burns with the thermostat off", (("main", 3, 3),)),
        ("main burner burns, thermostat off", (("main", 3, 3),)),
        ("with the stat off, main burns", (("main", 3, 3),)),
        ("main never goes out", (("main", 3, 3),)),
        ("pilot lights, main burns with no call", (("pilot", 1, 2), ("main", 3, 3))),
        ("main burner lights, then goes out", (("main", 2, 2),)),
        ("short cycles", (("main", 2, 2),)),
        ("no heat", (("main", 0, 0),)),
        ("spark stops when the pilot lights, no main", (("spark", 1, 1), ("main", 0, 0))),
        ("pilot lights, spark stops", (("pilot", 1, 1), ("spark", 1, 1))),
        ("spark stops after a minute", (("spark", 1, 2),)),
        ("spark but no gas", (("spark", 1, 2), ("pilot", 0, 0))),
        ("pilot lights, then goes out", (("pilot", 1, 1), ("ending", 2, 5))),
        ("it locks out", (("ending", 2, 3),)),  # people say so of a control that waits
        ("burner goes into lockout", (("ending", 2, 3),)),
        ("spark with no call", (("ending", 6, 6),)),
        ("flame signal is 2 uA", (("signal", 2, 2),)),
        ("nothing happens", (("ending", 0, 0),)),
        ("tries and tries again", (("ending", 2, 2),)),
        ("pilot-flame on, spark on", (("pilot", 1, 2), ("spark", 1, 2))),
        ("main-flame off", (("main", 0, 0),)),
        ("main-flame off during trial", (("", 1, 1),)),  # so it is in a good unit
        ("24 V across box.PV and box.VC during trial", (("", 1, 1),)),
    ],
)
def test_words(words: str, choices: Choices) -> None:
    assert said(words) == choices


def test_parts_are_named_or_meant_by_their_kind() -> None:
    damper = "boiler-with-vent-damper"
    assert said("the damper stays shut, nothing happens", damper)[1:] == (("ending", 0, 0),)
    assert said("vent never opens", damper) == (("blade", 0, 0),)
    assert said("it lights before the damper is open", damper) == (("start vent", 2, 2),)


@pytest.mark.parametrize(
    ("words", "name", "message"),
    [
        ("the moon is blue", "", "“the moon is blue” is not understood"),
        ("main burns when the limit is open", "", "“when limit” was not read"),
        ("pilot lights on Sundays", "", "“sundays” was not read"),
        ("gas at the pilot with no call", "", "shut the gas cock now"),
        ("main does not burn with no call", "", "“not” was not read"),
        ("main goes out after the call", "", "“out” was not read"),
        ("no spark with no call", "", "“no” was not read"),
        ("main stays on", "", "with a call, or with none"),
        ("thermostat off", "", "say what is seen then"),
        ("I smell gas", "", "leave now, with everybody; touch no switch"),
        ("there is a gas leak, no spark", "", "shut the gas off from outside"),
        ("the flame rolls out", "", "shut the gas cock and the power now"),
        ("hot transformer", "", "it carries too much"),
        ("no spark", "greenhouse-range", "say of which control: … of box or heater"),
        ("the pump does not run", "greenhouse-range", "say which, pump-1 or pump-2"),
        ("  ", "", "nothing is said of what was seen"),
    ],
)
def test_what_is_not_understood_is_said(words: str, name: str, message: str) -> None:
    with pytest.raises(NotUnderstoodError, match=message):
        said(words, name)


def test_a_lockout_of_a_control_that_has_none_is_taken_for_its_wait() -> None:
    told = talk("it locks out").diagnosis.observations[0]
    assert "has no lockout as drawn: taken for its wait" in told.words


def test_nothing_else_is_neither_spark_nor_flame() -> None:
    found = said("damper opens, nothing else", "boiler-with-vent-damper")
    assert found == (("blade", 1, 1), ("spark", 0, 0), ("pilot", 0, 0), ("main", 0, 0))


def test_a_spark_that_stops_says_that_the_pilot_was_proved() -> None:
    whats = suspects("spark stops when the pilot lights, no main")
    assert any("valve.MV" in what for what in whats)
    assert not any("ground" in what or "sense lead" in what for what in whats)


def test_gas_without_a_spark_is_a_matter_of_the_spark() -> None:
    assert suspects("no spark but gas at the pilot") <= {
        "box makes no spark",
        "the ignition cable box.SPARK to pilot.SPARK is off or broken",
        "the ignition cable box.SPARK to pilot.SPARK sparks over to metal on its way",
        "the spark gap of pilot is too wide, bridged, or its insulator cracked",
    }


@pytest.mark.parametrize("words", ["0.3 uA through pilot", "flame signal 1.5 uA, pilot lights"])
def test_a_weak_flame_signal_is_a_poor_path_or_a_dirty_rod(words: str) -> None:
    whats = suspects(words)
    assert "the flame rod of pilot is dirty" in whats
    assert any("conducts poorly" in what for what in whats)
    assert not any("ignition cable" in what for what in whats)


def suspects(words: str) -> set[str]:
    """What may be wrong with the heater that shows this."""
    groups = talk(words).diagnosis.groups
    return {each.what for group in groups for each in group.suspects}


def test_of_several_controls_one_is_named() -> None:
    found = seen(example("greenhouse-range"), "no spark of heater, no pilot")
    assert [(each.reading.part, each.reading.about) for each in found] == [
        ("heater", "spark"),
        ("box", "pilot"),
    ]


def test_observe_statements_count() -> None:
    text = f"{HEATER}observe pilot-flame on, spark on, main-valve off during trial\n"
    text += "observe 0 V across box.MV and box.VC during trial\n"
    text += "observe no-continuity across box.SENSE and pilot.HOOD\n"
    conversation = troubleshoot(load_text(text).diagram)
    assert [each.span is not None for each in conversation.observations] == [True] * 5
    what = conversation.diagnosis.groups[0].suspects[0].what
    assert what == "the burner ground box.GND to pilot.HOOD is off, broken or was never run"


def test_a_statement_with_a_condition_is_tried_on_each_faulty_unit() -> None:
    told = talk("main-valve on when limit open")
    suspects = [suspect for group in told.diagnosis.groups for suspect in group.suspects]
    whats = [fault.what for each in suspects for fault in each.faults]
    assert whats
    assert all("has landed on limit." in what for what in whats)


ANSWERS = [
    ("volts:limit.2:xfmr.c:idle", "24", 24.0),
    ("volts:limit.2:xfmr.c:idle", "0 V", 0.0),
    ("volts:limit.2:xfmr.c:idle", "500 mV", 0.5),
    ("volts:limit.2:xfmr.c:idle", "?", None),
    ("ohms:coil:valve:0", "OL", math.inf),
    ("ohms:coil:valve:0", "1.2 kohm", 1200.0),
    ("ohms:coil:valve:0", "continuity", 0.0),
    ("microamps:box", "2.5", 2.5),
    ("microamps:box", "2.5 uA", 2.5),
    ("trial:ground-jumper:box", "yes", 1.0),
    ("trial:ground-jumper:box", "n", 0.0),
    ("watch:box:pilot", "2", 1.0),
    ("watch:box:pilot", "the pilot lights", 1.0),
    ("look:gas", "there is none", 1.0),
]


@pytest.mark.parametrize(("reading", "text", "value"), ANSWERS)
def test_answers(reading: str, text: str, value: float | None) -> None:
    assert read_answer(dictionary().by_key[reading], text) == value


@pytest.mark.parametrize(
    ("reading", "text", "message"),
    [
        ("volts:limit.2:xfmr.c:idle", "lots", "“lots” is no reading in V; write it like 24 V"),
        ("volts:limit.2:xfmr.c:idle", "3 ohm", "no reading in V"),
        ("watch:box:pilot", "9", "answer with a number: 1 the pilot does not light, 2 the pilot"),
    ],
)
def test_what_is_no_answer_is_said(reading: str, text: str, message: str) -> None:
    with pytest.raises(NotAnAnswerError, match=message):
        read_answer(dictionary().by_key[reading], text)
