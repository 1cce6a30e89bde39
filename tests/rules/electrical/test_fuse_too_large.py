"""A control fuse that no short opens."""

from __future__ import annotations

import pytest

from tests.rules.raised import only, raised

NAME = "fuse-too-large"


def fused(fuse: str, xfmr: str = "40 VA") -> str:
    """A relay behind a fuse."""
    return f"""\
part xfmr is transformer: {xfmr}
part fuse is {fuse}
part stat is thermostat
part fan is relay
wire xfmr.R to fuse to stat to fan to xfmr.C
wire xfmr.C to earth: green
"""


_LINE = """\
part line is mains
part fuse is fuse: 15 A
part pump is circulator
wire line.L1 to fuse to pump.L: black
wire line.N to pump.N: white
wire line.G to earth: green
"""


def test_the_short_current_is_told() -> None:
    found = only(fused("fuse: 10 A"))
    assert (found.rule, found.fault, found.span.text) == (NAME, "too-large", "10 A")
    assert found.message == (
        "fuse is rated 10 A, and xfmr gives no more than about 12 A into a short: use 3 to 5 A; "
        "where the fuse is what makes the circuit Class 2, 3.79 A at most"
    )


@pytest.mark.parametrize(
    "text",
    [
        fused("fuse: 3 A"),
        fused("fuse: 5 A"),
        fused("fuse"),
        fused("breaker: 4 A"),
        _LINE,
    ],
)
def test_fuses_that_suit(text: str) -> None:
    assert raised(text) == []


def test_a_breaker_left_at_what_a_line_has() -> None:
    assert raised(fused("breaker: 15 A")) == [(NAME, "too-large", "15 A")]
