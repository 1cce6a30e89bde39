"""The old pattern that never ends its trial."""

from __future__ import annotations

import pytest

from tests.rules.raised import only, raised
from tests.rules.units import direct, one_rod
from wirecheck.model.finding import Breaks


def unit(attributes: str) -> str:
    return one_rod(control=f"pilot-ignition-control: {attributes}")


def test_it_is_told_in_full() -> None:
    found = only(unit("retry none"))
    assert (found.rule, found.span.text) == ("sparks-without-end", "retry none")
    assert found.message == (
        "box sparks without end and never shuts the pilot gas off (retry none): replace it by a "
        "control that ends the trial"
    )
    assert found.seen_at_unit == (
        "With the pilot not lit, the spark and the unlit pilot gas go on as long as the call."
    )
    assert found.breaks is Breaks.SAFETY


def test_a_kind_of_the_users_own_is_judged_alike() -> None:
    kind = "kind old-box is pilot-ignition-control: retry none\n"
    assert only(kind + one_rod(control="old-box")).rule == "sparks-without-end"


SILENT = {
    "retry": unit("retry continuous, wait 5 min"),
    "lockout": unit("retry lockout"),
    "nothing said": one_rod(),
    "direct": direct(),
}


@pytest.mark.parametrize("text", SILENT.values(), ids=SILENT)
def test_near_misses_are_silent(text: str) -> None:
    assert raised(text) == []
