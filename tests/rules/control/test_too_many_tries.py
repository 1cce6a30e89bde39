"""How often main gas is tried, and what is between."""

from __future__ import annotations

import pytest

from tests.rules.raised import only, raised
from tests.rules.units import direct, one_rod
from wirecheck.model.finding import Breaks


def unit(attributes: str) -> str:
    return direct(control=f"direct-ignition-control: {attributes}")


def test_five_tries_are_told_in_full() -> None:
    found = only(unit("tries 5"))
    assert (found.rule, found.fault, found.span.text) == ("too-many-tries", "tries", "tries 5")
    assert found.message == (
        "box tries 5 times before it locks out, 3 is the most: use a control that locks out earlier"
    )
    assert found.seen_at_unit == "When it does not light, main gas is let in unlit 5 times."
    assert found.breaks is Breaks.SAFETY


def test_no_purge_between_is_told_in_full() -> None:
    found = only(unit("tries 2, purge 0 s"))
    assert found.message == (
        "box tries 2 times with no purge between: use one that purges before each further try, or "
        "that tries once"
    )


SILENT = {
    "three with purges": unit("tries 3, purge 30 s"),
    "three, purge not said": unit("tries 3"),
    "one needs no purge": unit("tries 1, purge 0 s"),
    "pilot systems have no tries": one_rod(),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert raised(text) == []
