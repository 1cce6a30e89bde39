"""Which way a control's terminals face."""

from __future__ import annotations

import pytest

from tests.rules.raised import mended, only, raised
from tests.rules.units import direct, one_rod
from wirecheck.model.finding import Breaks


def unit(mounting: str) -> str:
    return one_rod(control=f"pilot-ignition-control: {mounting}")


def test_terminals_up_are_told_in_full() -> None:
    found = only(unit("mounting terminals-up"))
    assert (found.rule, found.span.text) == (
        "control-mounted-terminals-up",
        "mounting terminals-up",
    )
    assert found.message == (
        "box is mounted with its terminals up, where water collects: turn it with its terminals "
        "down or sideways, with a loop in the leads below them"
    )
    assert found.seen_at_unit == (
        "It works until it is damp; then the flame signal fades or the control fails."
    )
    assert found.breaks is Breaks.WORKMANSHIP


def test_a_bare_word_counts_and_the_edit_mends_it() -> None:
    assert raised(mended(unit("terminals-up"))) == []


SILENT = {
    "down": unit("terminals-down"),
    "sideways": unit("mounting sideways"),
    "nothing said": direct(),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert raised(text) == []
