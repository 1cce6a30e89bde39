"""Rubrics: the one that comes along, and what is wrong with others, at its line."""

import pytest

from wirecheck.compare.circuits import Circuit
from wirecheck.grade.rubric import RubricError, default_rubric, default_text, read_rubric


def test_the_rubric_that_comes_along_weighs_every_circuit() -> None:
    rubric = default_rubric()
    assert all(rubric.weights.of(circuit) > 0 for circuit in Circuit)
    assert rubric.unsafe.cap < rubric.out_of


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("chain = 30", "chian = 30", "weights.chian is not known here; did you mean chain?"),
        ("chain = 30", "chain = -1", "the weight of chain has to be 0 or more"),
        ("chain = 30", "chain = nan", "the weight of chain has to be 0 or more"),
        ("each = 0.25", 'each = "much"', "workmanship.each has to be a number"),
        ("each = 0.25", "each = 2", "each is a share, from 0 to 1"),
        ("cap = 40", "cap = 400", "cap is a mark, from 0 to 100"),
        ("out_of = 100", "out_of = true", "out_of has to be a number"),
        ("cap = 40", "cap = ", "this is not TOML: invalid value"),
    ],
)
def test_what_is_wrong_is_told_at_its_line(old: str, new: str, told: str) -> None:
    text = default_text()
    assert old in text
    with pytest.raises(RubricError) as raised:
        read_rubric(text.replace(old, new), "mine.toml")
    line = text[: text.index(old)].count("\n") + 1
    assert [each.span.line for each in raised.value.problems if each.message == told] == [line]


def test_what_is_missing_is_told() -> None:
    with pytest.raises(RubricError) as raised:
        read_rubric("out_of = 10\n", "mine.toml")
    told = {each.message for each in raised.value.problems}
    assert told == {"weights is missing", "workmanship is missing", "unsafe is missing"}
