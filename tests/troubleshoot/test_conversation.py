"""A conversation: what is asked first, how it narrows down, how it ends."""

from __future__ import annotations

import math

import pytest

from tests.troubleshoot.units import FUSED, dictionary, example, number, talk
from wirecheck.troubleshoot.conversation import Conversation
from wirecheck.troubleshoot.diagnosis import Diagnosis
from wirecheck.troubleshoot.dictionary import Dictionary
from wirecheck.troubleshoot.judge import MOST_READINGS
from wirecheck.troubleshoot.posterior import likelihood
from wirecheck.troubleshoot.reading import Observation

CLASSIC = "pilot lights, spark goes on, no main"
TWO_ROD = ("furnace-room-heater", "laundry-heater-own-labels", "boiler-with-vent-damper")


def modes_of(diagnosis: Diagnosis) -> set[str]:
    return {fault.mode for suspect in diagnosis.groups[0].suspects for fault in suspect.faults}


def seen_of(known: Dictionary, fault: str) -> Conversation:
    values = [(each, known.value((number(known, fault),), each)) for each in known.symptoms]
    return Conversation.begun(
        known, [Observation(each, value, value, each.choices[int(value)]) for each, value in values]
    )


def followed(known: Dictionary, fault: str) -> Conversation:
    """Every question answered as a unit with that fault answers it."""
    conversation = seen_of(known, fault)
    while (advice := conversation.diagnosis.advice) is not None:
        value = known.value((number(known, fault),), advice.reading)
        conversation = conversation.answer(advice.reading, value)
    return conversation


@pytest.mark.parametrize("name", TWO_ROD)
def test_the_classic_call_begins_with_the_ground_jumper_and_the_sense_lead(name: str) -> None:
    begun = talk(CLASSIC, example(name))
    advice = begun.diagnosis.advice
    assert advice is not None
    assert advice.reading.ask.startswith("Jumper from ")
    assert "to the metal of pilot (pilot.HOOD)" in advice.reading.ask
    after = advice.others[0]
    assert "continuity of the lead from its end there to pilot.ROD" in after.ask
    assert {"ground-open", "ground-poor"} <= modes_of(begun.diagnosis)

    lit = begun.answer(advice.reading, 1.0).diagnosis
    assert lit.ending is not None
    assert lit.ending.is_sure
    assert lit.ending.repair[0].startswith("Run a new ground lead ")
    assert "leave it in for good" in lit.ending.repair[0]
    assert any("flame current" in step for step in lit.ending.proof)

    dark = begun.answer(advice.reading, 0.0).diagnosis
    assert dark.advice is not None
    assert dark.advice.reading == after


def test_an_answer_leaves_the_old_conversation_as_it_was() -> None:
    begun = talk(CLASSIC)
    assert begun.diagnosis.advice is not None
    reading = begun.diagnosis.advice.reading
    further = begun.answer(reading, 0.0)
    assert len(begun.observations) == 3
    assert further.observations[-1].words == "the main burner does not light"
    assert further.back().observations == begun.observations
    assert further.back().diagnosis == begun.diagnosis
    assert begun.back() == begun  # what was given at the beginning stays


def test_what_cannot_be_read_is_not_asked_again() -> None:
    conversation = talk(CLASSIC)
    asked = set()
    while (advice := conversation.diagnosis.advice) is not None:
        assert advice.reading.key not in asked
        asked.add(advice.reading.key)
        conversation = conversation.answer(advice.reading, None)
    assert 1 < len(asked) <= MOST_READINGS
    ending = conversation.diagnosis.ending
    assert ending is not None
    assert not ending.is_sure


@pytest.mark.parametrize(
    "fault",
    [
        "limit-open",
        "not-calling",
        "main-output-dead",
        "control-dead",
        "transformer-weak",
        "sense-open",
        "valve-sticks:valve:main operator",
        "coil-open:valve:pilot operator",
        "flame-not-seen",
    ],
)
def test_a_fault_is_found_by_few_readings(fault: str) -> None:
    known = dictionary(FUSED)
    end = followed(known, fault)
    assert number(known, fault) in {
        known.faults.index(each) for s in end.diagnosis.groups[0].suspects for each in s.faults
    }
    assert len(end.observations) - end.given <= 6


def test_what_a_short_took_with_it_is_mended_too() -> None:
    known = dictionary(FUSED)
    ending = followed(known, "coil-shorted:valve:main operator").diagnosis.ending
    assert ending is not None
    assert ending.repair[0].startswith("Renew valve")
    assert ending.repair[-1] == "Then renew or reset what it took with it: fuse"


def test_probabilities_are_shares_and_outcomes_too() -> None:
    diagnosis = talk("no spark").diagnosis
    assert math.isclose(sum(group.probability for group in diagnosis.groups), 1.0, abs_tol=0.02)
    assert diagnosis.advice is not None
    shares = [outcome.probability for outcome in diagnosis.advice.outcomes]
    assert math.isclose(sum(shares), 1.0)
    assert shares == sorted(shares, reverse=True)


def test_two_faults_at_once_are_said_plainly() -> None:
    known = dictionary()
    begun = talk("no spark, no pilot", known)
    both = begun.answer(known.by_key["look:gap:pilot"], 1.0)
    both = both.answer(known.by_key["ohms:coil:valve:1"], math.inf)
    diagnosis = both.diagnosis
    assert any(each.startswith("Two faults at once explain it") for each in diagnosis.remarks)
    assert any(each.startswith("No single fault shows") for each in diagnosis.remarks)
    faults = {fault.key for fault in diagnosis.groups[0].suspects[0].faults}
    assert faults == {"gap-wrong:pilot", "coil-open:valve:main operator"}
    assert diagnosis.ending is not None
    assert len(diagnosis.ending.repair) == 2


def test_what_contradicts_itself_is_named_and_nothing_is_renewed() -> None:
    known = dictionary()
    diagnosis = talk("pilot lights", known).answer(known.by_key["look:gas"], 1.0).diagnosis
    assert "pilot lights" in diagnosis.remarks[0]
    assert "gas cocks" in diagnosis.remarks[0]
    assert "outside this list" in diagnosis.remarks[-1]
    assert diagnosis.groups[0].suspects[0].disagrees
    assert diagnosis.ending is not None
    assert not diagnosis.ending.is_sure
    assert "Renew nothing on a guess" in diagnosis.ending.repair[0]


def test_a_reading_told_twice_in_two_ways_is_a_contradiction() -> None:
    diagnosis = talk("pilot lights, no pilot").diagnosis
    assert "“pilot lights” and “no pilot”" in diagnosis.remarks[0]


def test_a_unit_that_works_is_left_alone() -> None:
    diagnosis = seen_of(dictionary(), "as-drawn").diagnosis
    assert modes_of(diagnosis) == {"as-drawn"}
    assert diagnosis.advice is None
    assert "the unit works" in diagnosis.remarks[0]


def test_with_nothing_told_it_asks_what_is_seen() -> None:
    diagnosis = Conversation.begun(dictionary()).diagnosis
    assert diagnosis.advice is not None
    assert diagnosis.advice.reading.kind == "watch"


def test_a_drawing_that_does_not_work_is_suspected_first() -> None:
    known = example("no-burner-ground")
    assert not known.works_as_drawn
    assert modes_of(talk("pilot lights, main never does", known).diagnosis) == {"as-drawn"}


def test_a_value_beyond_the_tolerance_soon_gets_unlikely() -> None:
    assert likelihood(0.5) == likelihood(1.0) == 1.0
    assert 0.1 < likelihood(2.0) < 0.2
    assert likelihood(5.0) < 0.002
