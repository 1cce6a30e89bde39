"""The hold-open switch left set."""

from __future__ import annotations

import pytest

from tests.rules.damper.units import unit
from tests.rules.raised import only, raised
from wirecheck.model.finding import Breaks


def test_it_is_told_in_full() -> None:
    found = only(unit(damper="vent-damper: hold-open set"))
    assert (found.rule, found.fault, found.span.text) == (
        "damper-held-open",
        "set",
        "hold-open set",
    )
    assert found.message == (
        "the hold-open switch of vent is set: clear it and watch the damper through one full cycle"
    )
    assert found.seen_at_unit == (
        "The burner works; the vent stays open and draws warm air off all day."
    )
    assert found.breaks is Breaks.WORKMANSHIP


def test_a_kind_of_the_user_s_own_may_carry_it() -> None:
    text = unit(damper="held").replace(
        "part line", "kind held is vent-damper: hold-open set\npart line"
    )
    assert only(text).rule == "damper-held-open"


@pytest.mark.parametrize(
    "damper", ["vent-damper", "vent-damper: hold-open clear", "vent-damper: spring-open"]
)
def test_a_clear_switch_is_silent(damper: str) -> None:
    assert raised(unit(damper=damper)) == []
