"""The chart is the conversation followed into every outcome."""

from functools import cache

import pytest

from tests.contract.source import ROOT
from wirecheck import load
from wirecheck.troubleshoot.chart import Step, chart
from wirecheck.troubleshoot.conversation import Conversation
from wirecheck.troubleshoot.dictionary import Dictionary

HEATER = ROOT / "examples" / "workshop-heater-one-rod.wiring"


@cache
def begun() -> Conversation:
    """The pilot lights and the main burner does not."""
    conversation = Conversation.begun(Dictionary(load(HEATER).diagram))
    for symptom in conversation.dictionary.symptoms:
        for words in ("the pilot lights", "the main burner does not light"):
            if words in symptom.choices:
                number = symptom.choices.index(words)
                conversation = conversation.answer(symptom, number, words)
    assert len(conversation.observations) == 2
    return conversation


@cache
def whole() -> Step:
    return chart(begun())


def test_every_step_is_what_the_conversation_asks_next() -> None:
    def follow(step: Step, conversation: Conversation) -> None:
        advice = conversation.diagnosis.advice
        if step.reading is None:
            assert step.ending == conversation.diagnosis.ending
            return
        assert advice is not None
        assert advice.reading is step.reading
        assert [way.words for way in step.branches] == [each.words for each in advice.outcomes]
        for way, outcome in zip(step.branches, advice.outcomes, strict=True):
            follow(way.step, conversation.answer(step.reading, outcome.value, outcome.words))

    follow(chart(begun(), least=0.0), begun())


def test_the_ways_out_of_a_step_share_its_probability() -> None:
    for step in whole().readings:
        assert sum(way.probability for way in step.branches) == pytest.approx(1.0)
        for way in step.branches:
            assert way.step.probability == pytest.approx(step.probability * way.probability)


def test_steps_are_numbered_as_a_reader_comes_to_them() -> None:
    numbers = [step.number for step in whole().readings]
    assert len(numbers) > 3
    assert numbers == list(range(1, len(numbers) + 1))


def test_what_is_rare_is_not_followed() -> None:
    short = chart(begun(), least=0.2)
    assert len(list(short.steps)) < len(list(whole().steps))
    stopped = [step for step in short.steps if step.reading is None and step.ending is None]
    assert stopped
    assert all(step.probability < 0.2 and step.groups for step in stopped)


def test_the_same_diagram_gives_the_same_chart() -> None:
    again = Conversation.begun(Dictionary(load(HEATER).diagram), begun().observations)
    told = [(step.number, step.probability) for step in chart(again).steps]
    assert told == [(step.number, step.probability) for step in whole().steps]
