"""The damper's constant supply behind the thermostat."""

from __future__ import annotations

import pytest

from tests.rules.damper.units import unit
from tests.rules.raised import only, raised
from wirecheck.model.finding import Breaks

ON_CALL = "wire stat.W to box.24V\nwire xfmr.C to box.COM\n"


def test_it_is_told_in_full() -> None:
    found = only(unit(damper="vent-damper: power-both", feed=ON_CALL))
    assert (found.rule, found.fault, found.span.text) == (
        "damper-hot-switched",
        "on-call-only",
        "HOT",
    )
    assert found.message == (
        "vent.HOT has power only while stat calls: feed it from the hot side itself"
    )
    assert found.seen_at_unit == "The damper opens for the burner and does not shut after it."
    assert found.breaks is Breaks.OPERATION


def test_a_damper_shut_by_power_against_a_spring_likewise() -> None:
    assert only(unit(damper="vent-damper: spring-open", feed=ON_CALL)).rule == "damper-hot-switched"


SILENT = {
    "a spring shuts it": unit(feed=ON_CALL),
    "a limit ahead of it": unit(
        damper="vent-damper: power-both",
        feed="wire limit.2 to box.24V\nwire xfmr.C to box.COM\n",
    ),
    "a fuse ahead of it": unit(
        damper="vent-damper: power-both",
        parts="part spare is fuse\n",
        feed="wire xfmr.R to spare to box.24V\nwire xfmr.C to box.COM\n",
    ),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert raised(text) == []
