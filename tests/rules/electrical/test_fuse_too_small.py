"""A fuse that opens with nothing shorted."""

from __future__ import annotations

import pytest

from tests.rules.raised import only, raised

NAME = "fuse-too-small"


def fused(fuse: str, zone: str = "0.9 A") -> str:
    """A zone valve behind a fuse."""
    return f"""\
part xfmr is transformer
part fuse is fuse{fuse}
part stat is thermostat
part zone is zone-valve: {zone}
wire xfmr.R to fuse to stat to zone to xfmr.C
wire xfmr.C to earth: green
"""


def line(breaker: str) -> str:
    """A blower and a pump behind a breaker."""
    return f"""\
part line is mains
part cb is breaker{breaker}
part fan is blower: one-speed, 9 A
part pump is circulator: 4 A
wire line.L1 to cb to fan.L: black
wire fan.L to pump.L: black
wire line.N to fan.N: white
wire line.N to pump.N: white
wire line.G to earth: green
"""


def test_the_current_is_told() -> None:
    found = only(fused(": 0.5 A"))
    assert (found.rule, found.fault, found.span.text) == (NAME, "opens", "0.5 A")
    assert found.message == (
        "fuse is rated 0.5 A and carries 0.94 A with everything on: put in one that carries this, "
        "no larger than its circuit allows"
    )


def test_a_breaker_in_the_line() -> None:
    assert raised(line(": 10 A")) == [(NAME, "opens", "10 A")]


@pytest.mark.parametrize(
    "text",
    [fused(": 3 A"), fused(": 1 A"), fused(""), fused(": 1 A", "0.6 A"), line(": 15 A"), line("")],
)
def test_a_fuse_that_carries_its_load(text: str) -> None:
    assert raised(text) == []


def test_a_fuse_of_one_branch_carries_only_that() -> None:
    """Beside it the larger part of the load runs past it."""
    text = fused(": 1 A", "0.3 A") + "part big is load: 1.2 A\nwire xfmr.R to big to xfmr.C\n"
    assert raised(text) == []
