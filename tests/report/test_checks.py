"""What the checks of a run come to."""

import pytest

from wirecheck.model.finding import Breaks
from wirecheck.report.checks import Tally, counted

NOTHING = dict.fromkeys(sorted(Breaks, reverse=True), 0)


@pytest.mark.parametrize(
    ("found", "problems", "code"),
    [({}, 0, 0), ({Breaks.WORKMANSHIP: 1}, 0, 1), ({}, 1, 2), ({Breaks.SAFETY: 1}, 1, 2)],
)
def test_the_exit_code_tells_the_worst(found: dict[Breaks, int], problems: int, code: int) -> None:
    assert Tally(1, 5, 3, {**NOTHING, **found}, problems).exit_code() == code


@pytest.mark.parametrize(
    ("found", "fail_on", "code"),
    [
        (Breaks.WORKMANSHIP, Breaks.OPERATION, 0),
        (Breaks.OPERATION, Breaks.OPERATION, 1),
        (Breaks.SAFETY, Breaks.OPERATION, 1),
        (Breaks.OPERATION, Breaks.SAFETY, 0),
        (Breaks.SAFETY, Breaks.SAFETY, 1),
    ],
)
def test_a_run_may_end_well_for_what_is_less_grave(
    found: Breaks, fail_on: Breaks, code: int
) -> None:
    assert Tally(1, 5, 3, {**NOTHING, found: 1}, 0).exit_code(fail_on) == code
    assert Tally(1, 5, 3, {**NOTHING, found: 1}, 1).exit_code(fail_on) == 2


@pytest.mark.parametrize(
    ("tally", "sentence"),
    [
        (
            Tally(1, 12, 41, {**NOTHING, Breaks.OPERATION: 1}, 0),
            "12 leads, 41 rules run: 1 operation finding",
        ),
        (
            Tally(2, 1, 41, {**NOTHING, Breaks.SAFETY: 2, Breaks.WORKMANSHIP: 1}, 1),
            (
                "2 files, 1 lead, 41 rules run: 2 safety findings, 1 workmanship finding; "
                "1 problem in the text left something unchecked"
            ),
        ),
        (
            Tally(1, 1200, 41, NOTHING, 2),
            "1,200 leads, 41 rules run: 2 problems in the text left something unchecked",
        ),
        (
            Tally(
                1,
                12,
                41,
                {**NOTHING, Breaks.OPERATION: 1},
                0,
                variants=2,
                claims={"proved": 3, "refuted": 1},
                accepted=1,
                known=2,
            ),
            (
                "2 variants, 12 leads, 41 rules run, 3 of 4 claims proved, 1 finding accepted, "
                "2 findings of the baseline: 1 operation finding"
            ),
        ),
        (
            Tally(1, 12, 41, NOTHING, 0, accepted=1),
            (
                "12 leads, 41 rules run, 1 finding accepted: nothing else was found. This does not "
                "make the unit safe: local codes, the appliance maker's instructions and licensed "
                "people decide"
            ),
        ),
        (
            Tally(1, 12, 41, NOTHING, 0),
            (
                "12 leads, 41 rules run: none of them found a mistake. This does not make the "
                "unit safe: local codes, the appliance maker's instructions and licensed people "
                "decide"
            ),
        ),
    ],
)
def test_the_last_line_says_what_was_looked_at_and_what_came_of_it(
    tally: Tally, sentence: str
) -> None:
    assert tally.sentence() == sentence


def test_things_are_counted_as_people_say_it() -> None:
    assert [counted(n, "lead") for n in (0, 1, 2)] == ["0 leads", "1 lead", "2 leads"]
