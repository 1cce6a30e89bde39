"""How long main gas is tried."""

from __future__ import annotations

import pytest

from tests.rules.raised import only, raised
from tests.rules.units import direct, one_rod
from wirecheck.model.finding import Breaks


def unit(trial: str) -> str:
    return direct(control=f"direct-ignition-control: trial {trial}")


def test_a_pilots_trial_is_told_in_full() -> None:
    found = only(unit("90 s"))
    assert (found.rule, found.span.text) == ("direct-trial-too-long", "trial 90 s")
    assert found.message == (
        "box tries to light the main burner for 90 s, 15 s is the most: use a control with a "
        "shorter trial"
    )
    assert found.seen_at_unit == "When it does not light, main gas flows unlit for 90 s."
    assert found.breaks is Breaks.SAFETY


@pytest.mark.parametrize("trial", ["1 min", "15.5 s", "10-20 s"])
def test_just_too_long(trial: str) -> None:
    assert only(unit(trial)).rule == "direct-trial-too-long"


SILENT = {
    "15 s": unit("15 s"),
    "a quarter of a minute": unit("0.25 min"),
    "nothing said": direct(),
    "a pilot's trial at a pilot": one_rod(control="pilot-ignition-control: trial 90 s"),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert raised(text) == []
