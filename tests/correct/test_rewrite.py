"""An answer as text: only what it changes changes, and read again it is right."""

import pytest

import wirecheck
from tests.correct.heaters import (
    HEATER,
    LIMIT_BRIDGED,
    LINK_FITTED,
    NO_BURNER_GROUND,
    SENSE_ON_SPARK,
    VALVE_SWAPPED,
    heater,
)
from wirecheck.correct.rewrite import Mended, mended
from wirecheck.correct.search import correct


def first(*mistakes: tuple[str, str]) -> Mended:
    answer = correct(heater(*mistakes)).answers[0]
    return mended(answer.state, answer.proof)


@pytest.mark.parametrize(
    "mistakes",
    [(SENSE_ON_SPARK,), (NO_BURNER_GROUND,), (LIMIT_BRIDGED,), (SENSE_ON_SPARK, NO_BURNER_GROUND)],
)
def test_the_text_becomes_what_it_was_before_the_mistake(
    mistakes: tuple[tuple[str, str], ...],
) -> None:
    assert first(*mistakes).text == HEATER


def test_what_was_exchanged_in_a_plug_reads_right_again() -> None:
    text = first(VALVE_SWAPPED).text
    assert text is not None
    assert "# the call" in text
    assert not wirecheck.check(wirecheck.load_text(text).diagram).findings


def test_a_link_is_cut_in_the_text() -> None:
    assert first(LINK_FITTED).text == HEATER.replace("two-rod\n", "two-rod, sense-link cut\n", 1)


def test_the_words_are_for_the_person_with_the_screwdriver() -> None:
    assert first(SENSE_ON_SPARK).words == (
        "take the yellow lead from pilot.ROD off box.SPARK and land it on box.SENSE",
    )
    assert first(LIMIT_BRIDGED).words == (
        "take out the lead from limit.1 to limit.2, and cap what stays in place",
    )
    assert first(LINK_FITTED).words == ("cut the sense link of box",)


def test_correcting_twice_changes_nothing_more() -> None:
    text = first(SENSE_ON_SPARK, VALVE_SWAPPED).text
    assert text is not None
    assert correct(wirecheck.load_text(text, "again").diagram).nothing_to_do
