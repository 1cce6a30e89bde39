"""A correction lands nothing on a terminal just because that is empty."""

from pathlib import Path

import pytest

from wirecheck import correct, load_text
from wirecheck.correct.rewrite import words_of

HEATER = (Path(__file__).parents[2] / "examples" / "furnace-room-heater.wiring").read_text("utf-8")


def ways(line: str) -> list[str]:
    diagram = load_text(f"{HEATER}\n{line}\n").diagram
    answers = correct(diagram, seconds=60).answers
    return [words_of(diagram, change, a.state) for a in answers for change in a.state.changes]


@pytest.mark.parametrize(
    "line",
    [
        "wire box.MV to box.PV",
        "wire stat.W to valve.MV",
        "jumper limit.1 to rollout.2",
        "jumper stat.R to stat.W",
    ],
)
def test_a_lead_that_only_does_harm_is_taken_out_and_no_more(line: str) -> None:
    (only,) = ways(line)
    assert only.startswith("take out the lead")
