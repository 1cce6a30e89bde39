"""What was found bad on a damper."""

from __future__ import annotations

import pytest

from tests.rules.damper.units import unit
from tests.rules.raised import findings, raised
from wirecheck.model.finding import Breaks, Finding


def found_bad(damper: str) -> Finding:
    """The finding of this rule."""
    (found,) = (f for f in findings(unit(damper=damper)) if f.rule == "damper-found-bad")
    return found


def test_a_welded_end_switch_is_told_in_full() -> None:
    found = found_bad("vent-damper: end-switch welded")
    assert (found.fault, found.span.text) == ("welded", "end-switch welded")
    assert found.message == (
        "the end switch of vent was found welded: it proves nothing; replace the damper's drive, "
        "and do not run the burner until then"
    )
    assert found.seen_at_unit == "The burner lights at once on a call, damper open or not."
    assert found.breaks is Breaks.SAFETY


@pytest.mark.parametrize(
    ("words", "fault"),
    [
        ("end-switch never-makes", "never-makes"),
        ("stuck closed", "blade-shut"),
        ("stuck open", "blade-open"),
    ],
)
def test_the_other_faults_break_its_operation(words: str, fault: str) -> None:
    found = found_bad(f"vent-damper: {words}")
    assert (found.fault, found.breaks) == (fault, Breaks.OPERATION)


def test_two_faults_are_two_findings() -> None:
    found = findings(unit(damper="vent-damper: end-switch welded, stuck closed"))
    assert [f.fault for f in found if f.rule == "damper-found-bad"] == ["welded", "blade-shut"]


@pytest.mark.parametrize(
    "damper", ["vent-damper", "vent-damper: opening 12 s", "vent-damper: hold-open clear"]
)
def test_a_sound_damper_is_silent(damper: str) -> None:
    assert raised(unit(damper=damper)) == []
