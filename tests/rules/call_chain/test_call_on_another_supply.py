"""Controls between two supplies."""

from __future__ import annotations

import pytest

from tests.rules.call_chain.units import CALL, unit
from tests.rules.raised import findings
from wirecheck.model.finding import Breaks

NAME = "call-on-another-supply"
OTHER = """\
part other is transformer
part aid is relay
wire line.L1 to other.L1
wire line.N to other.N
wire other.R to aid to other.C
"""
FROM_OTHER = CALL.replace("xfmr.R", "other.R") + OTHER


def test_a_call_from_the_other_transformer_is_told_in_full() -> None:
    (found,) = (each for each in findings(unit(FROM_OTHER)) if each.rule == NAME)
    assert (found.fault, found.breaks) == ("two-supplies", Breaks.OPERATION)
    assert found.message == (
        "box.TH is called from other.R, and box.COM goes back to xfmr.C, which is another supply: "
        "bring the call from xfmr.R"
    )
    assert found.leads[0] == "other.R to limit.1"


SILENT = {
    "one supply": unit(),
    "two, each with its own": unit(CALL + OTHER),
    "two whose commons are both earthed": unit(FROM_OTHER + "wire other.C to earth: green\n"),
    "two whose commons are joined": unit(FROM_OTHER + "wire other.C to xfmr.C: blue\n"),
    "a common that was not traced": unit(
        FROM_OTHER, common="wire xfmr.C to unknown\nwire unknown to box.COM\n"
    ),
    "a sketch without the common": unit(FROM_OTHER, common="", ground=""),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert NAME not in [found.rule for found in findings(text)]
