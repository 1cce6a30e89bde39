"""LP gas and what the control does after a failed trial."""

from __future__ import annotations

import pytest

from tests.rules.raised import only, raised
from tests.rules.units import direct, one_rod
from wirecheck.model.finding import Breaks


def unit(attributes: str) -> str:
    return one_rod(control=f"pilot-ignition-control: {attributes}")


def test_retries_on_lp_are_told_in_full() -> None:
    found = only(unit("gas lp, retry continuous"))
    assert (found.rule, found.fault, found.span.text) == (
        "lp-without-lockout",
        "retries",
        "retry continuous",
    )
    assert found.message == (
        "box is on LP with retry continuous: LP needs a control that shuts off all gas and locks "
        "out after a failed trial (retry lockout); fit one"
    )
    assert found.seen_at_unit == (
        "After a failed trial it opens the gas again and sparks into what has gathered."
    )
    assert found.breaks is Breaks.SAFETY
    assert "low down for LP" in found.caution
    assert found.edits == ()


def test_a_pattern_not_given_is_asked_for() -> None:
    found = only(unit("propane"))
    assert (found.fault, found.span.text) == ("not-said", "propane")


def test_sparking_without_end_on_lp_is_one_finding() -> None:
    assert only(unit("gas lp, retry none")).rule == "lp-without-lockout"


SILENT = {
    "lockout": unit("gas lp, retry lockout"),
    "natural gas": unit("gas natural, retry continuous"),
    "nothing said": one_rod(),
    "direct ignition always locks out": direct(control="direct-ignition-control: gas lp"),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert raised(text) == []
