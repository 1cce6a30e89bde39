"""Burners called from the cooling or the fan terminal."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import CALL, unit
from tests.rules.raised import mended, only, raised
from wirecheck.model.finding import Breaks

FROM_Y = "wire xfmr.R to limit to rollout to stat.R\nwire stat.Y to box.TH\n"


def test_a_call_from_the_cooling_terminal_is_told_in_full() -> None:
    found = only(unit(FROM_Y))
    assert (found.rule, found.fault, found.span.text) == (
        "call-from-another-terminal",
        "not-heat",
        "stat.Y",
    )
    assert found.message == (
        "box.TH is fed from stat.Y, which is not the call for heat: land that lead on stat.W"
    )
    assert found.seen_at_unit == (
        "The burner does not light when heat is called for; it lights on a call for stat.Y."
    )
    assert found.breaks is Breaks.OPERATION


def test_moving_the_lead_mends_it() -> None:
    assert raised(mended(unit(FROM_Y))) == []


def test_from_the_fan_terminal_likewise() -> None:
    found = only(unit(FROM_Y.replace("stat.Y", "stat.G")))
    assert found.rule == "call-from-another-terminal"


def test_a_call_for_the_fan_that_calls_the_burner_too() -> None:
    found = only(unit(CALL + "jumper stat.W to stat.G\n"))
    assert (found.rule, found.fault, found.span.text) == (
        "call-from-another-terminal",
        "also",
        "stat.G",
    )
    assert found.message == (
        "box.TH is called from stat.G too, which is no call for heat: part stat.G from the lead "
        "at stat.W"
    )
    assert found.seen_at_unit == "The burner lights on a call for stat.G as well."


SILENT = {
    "heat to the burner, fan to a relay": CALL + "wire stat.G to fan to xfmr.C\n",
    "heat to the burner, cooling to a relay": CALL + "wire stat.Y to fan to xfmr.C\n",
    "heat and fan both start the fan": (
        CALL + "wire stat.G to fan to xfmr.C\nwire line.L1 to fan.COM..NO to pump to line.N\n"
    ),
}


@pytest.mark.parametrize("call", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(call: str) -> None:
    parts = "part fan is relay\n" + ("part pump is circulator\n" if "pump" in call else "")
    assert raised(unit(call, parts=parts)) == []
