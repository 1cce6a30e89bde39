"""The search finds the fewest changes, proves them, and does nothing that a repair must not."""

from __future__ import annotations

import random

import pytest

import wirecheck
from tests.benchmarks.brute import every_change, mending
from tests.benchmarks.campaign import example, grave, sample
from tests.benchmarks.mutants import Mistake, Original
from tests.correct.heaters import (
    LIMIT_BRIDGED,
    LINK_FITTED,
    NO_BURNER_GROUND,
    SENSE_ON_SPARK,
    VALVE_SWAPPED,
    heater,
    pilot,
)
from wirecheck.correct.answer import Bound, Correction
from wirecheck.correct.likelihood import joins
from wirecheck.correct.never import bridged, grounds
from wirecheck.correct.proof import lost_safeties
from wirecheck.correct.rewired import (
    Add,
    Change,
    Exchange,
    Fit,
    Move,
    Rewired,
    TakeOut,
)
from wirecheck.correct.search import correct
from wirecheck.model.diagram import EARTH, Terminal

#: Other work on the machine must not decide a test.
PATIENT = Bound(3, 300)
SMALL = ("workshop-heater-one-rod", "hangar-heater-direct")


def fewest(correction: Correction) -> int:
    """With how many edits it is mended; 0 if it is not."""
    return len(correction.answers[0].changes) if correction.answers else 0


@pytest.mark.parametrize("name", [*SMALL, "boiler-with-vent-damper", "two-zone-boiler"])
def test_a_right_diagram_is_left_as_it_is(name: str) -> None:
    found = correct(example(name).diagram)
    assert found.nothing_to_do
    assert not found.answers
    assert not found.tried


@pytest.mark.parametrize(
    ("mistake", "change"),
    [
        (
            SENSE_ON_SPARK,
            Move(9, Terminal("box", "SPARK"), Terminal("box", "SENSE")),
        ),
        (NO_BURNER_GROUND, Add(Terminal("box", "GND"), Terminal("pilot", "HOOD"), "green")),
        (LIMIT_BRIDGED, TakeOut(4)),
        (LINK_FITTED, Fit("box", "sense-link", "cut")),
    ],
    ids=["an end moved", "a lead added", "a lead taken out", "a link cut"],
)
def test_the_likeliest_answer_comes_first(mistake: tuple[str, str], change: Change) -> None:
    assert correct(heater(mistake)).answers[0].changes == (change,)


def test_two_ends_that_were_exchanged_are_exchanged_back() -> None:
    (change,) = correct(heater(VALVE_SWAPPED)).answers[0].changes
    assert isinstance(change, Exchange)
    assert {change.end.name, change.other_end.name} == {"PV", "MV"}


def test_nothing_less_mends_what_is_mended_with_two() -> None:
    """Every single edit, tried one by one by the whole proof, mends it not."""
    found = pilot(SENSE_ON_SPARK, NO_BURNER_GROUND)
    correction = correct(found)
    assert fewest(correction) == 2
    assert correction.proved_fewest
    assert len(every_change(found)) > 100
    assert not list(mending(found))


def test_every_single_edit_that_mends_joins_what_an_answer_joins() -> None:
    """What stands for others in the search loses none of the ways to mend a small mistake."""
    found = pilot(SENSE_ON_SPARK)
    known = {joins(answer.state) for answer in correct(found).answers}
    ways = {joins(after) for after in mending(found)}
    assert ways
    assert known <= ways
    assert joins(Rewired.nothing_changed(pilot())) in known


@pytest.mark.parametrize("name", SMALL)
def test_a_single_mistake_is_mended_with_one_edit(name: str) -> None:
    original = example(name)
    right = joins(Rewired.nothing_changed(original.diagram))
    tried = 0
    for mistake in sample(original, 8):
        found = original.with_mistakes(mistake)
        if grave(wirecheck.check(found).findings):
            correction = correct(found)
            assert fewest(correction) == 1, mistake.name
            assert right in [joins(each.state) for each in correction.answers], mistake.name
            tried += 1
    assert tried > 4


def doubles(original: Original, count: int) -> list[tuple[Mistake, Mistake]]:
    """So many pairs of mistakes at different leads, the same each time."""
    every = list(original.mistakes())
    chance = random.Random(3)  # noqa: S311 - nothing secret
    pairs: list[tuple[Mistake, Mistake]] = []
    while len(pairs) < count:
        one, other = chance.sample(every, 2)
        if not one.changed.keys() & other.changed.keys():
            pairs.append((one, other))
    return pairs


def test_two_mistakes_are_mended_with_no_more_than_two_edits() -> None:
    original = example("workshop-heater-one-rod")
    for pair in doubles(original, 3):
        found = original.with_mistakes(*pair)
        if grave(wirecheck.check(found).findings):
            assert 1 <= fewest(correct(found, PATIENT)) <= 2, [each.name for each in pair]


def test_what_cannot_be_mended_by_leads_is_not() -> None:
    """A transformer with an open winding stays broken, and the answer says how far it got."""
    found = heater(("is transformer", "is transformer: winding open"))
    correction = correct(found, Bound(edits=1, seconds=30))
    assert not correction.nothing_to_do
    assert not correction.answers
    assert [each.edits for each in correction.tried] == [1]


def test_no_time_is_said() -> None:
    correction = correct(heater(SENSE_ON_SPARK, NO_BURNER_GROUND), Bound(edits=2, seconds=0.0))
    assert not correction.in_time
    assert not correction.answers


@pytest.mark.parametrize(
    "mistake", [SENSE_ON_SPARK, VALVE_SWAPPED, NO_BURNER_GROUND, LIMIT_BRIDGED]
)
def test_no_answer_loses_a_safety_or_a_ground(mistake: tuple[str, str]) -> None:
    found = heater(mistake)
    before = Rewired.nothing_changed(found).nets
    for answer in correct(found).answers:
        for state in (answer.state, *answer.as_good):
            assert not lost_safeties(before, state.nets)
            assert grounds(before) <= grounds(state.nets)
            assert bridged(state.nets) <= bridged(before)
            assert not any(
                isinstance(each, TakeOut) and EARTH in (found.leads[each.lead][:2])
                for each in state.changes
            )
