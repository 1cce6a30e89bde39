"""The call landed on the terminal for constant 24 V."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import CALL, unit
from tests.rules.raised import mended, only, raised
from wirecheck.model.finding import Breaks

ON_HOT = "wire xfmr.R to limit to rollout to stat to box.24V\n"


def test_it_is_told_in_full() -> None:
    found = only(unit(ON_HOT))
    assert (found.rule, found.fault, found.span.text) == (
        "call-on-the-hot-terminal",
        "no-call",
        "box.24V",
    )
    assert found.message == (
        "the call from stat lands on box.24V, and nothing feeds box.TH: move it to box.TH"
    )
    assert found.seen_at_unit == "The burner never lights."
    assert found.breaks is Breaks.OPERATION


def test_moving_the_lead_mends_it() -> None:
    assert raised(mended(unit(ON_HOT))) == []


def test_printed_labels_are_used() -> None:
    text = unit(ON_HOT, parts='labels box: 24V as "R", TH as "W"\n').replace("box.24V", "box.R")
    assert "lands on box.R, and nothing feeds box.W" in only(text).message


SILENT = {
    "the call where it belongs": CALL,
    "a call that was not traced": ON_HOT + "wire unknown to box.TH\n",
    "constant 24 V through a limit, the call broken off": (
        "wire xfmr.R to limit to rollout to box.24V\nwire limit.2 to stat to box.TH\n"
    ),
}


@pytest.mark.parametrize("call", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(call: str) -> None:
    rules = [rule for rule, _fault, _text in raised(unit(call))]
    assert "call-on-the-hot-terminal" not in rules
