"""TH on the common, as COM is."""

from __future__ import annotations

import pytest

from tests.rules.circuits import changed
from tests.rules.raised import findings
from tests.rules.units import beside, two_rod
from wirecheck.model.finding import Breaks

NAME = "call-fed-from-common"
WRONG = changed(two_rod(), ("wire xfmr.R to limit", "wire xfmr.C to limit"))


def test_it_is_told_in_full() -> None:
    found = next(each for each in findings(WRONG) if each.rule == NAME)
    assert (found.breaks, found.span.text) == (Breaks.OPERATION, "xfmr.C")
    assert found.message == (
        "the call at box.TH comes from xfmr.C, as box.COM does: feed it from xfmr.R"
    )
    assert [edit.words for edit in found.edits] == [
        "take the red lead from limit.1 off xfmr.C and land it on xfmr.R"
    ]


SILENT = {
    "right": two_rod(),
    "exchanged leads are told as exchanged": changed(
        WRONG, ("wire xfmr.C to box.COM", "wire xfmr.R to box.COM")
    ),
    "a call that gets both is a short": two_rod(more="wire xfmr.C to limit.1\n"),
    "a second unit is right beside it": two_rod(more=beside()),
    "a call that was not traced": changed(
        two_rod(), ("wire xfmr.R to limit", "wire unknown to limit")
    ),
}


@pytest.mark.parametrize("unit", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(unit: str) -> None:
    assert NAME not in [found.rule for found in findings(unit)]
