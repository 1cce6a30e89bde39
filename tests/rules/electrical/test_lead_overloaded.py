"""More current than the gauge is protected for."""

from __future__ import annotations

import pytest

from tests.rules.raised import only, raised
from wirecheck.model.finding import Breaks

NAME = "lead-overloaded"


def blower(size: str, takes: str = "9 A", more: str = "") -> str:
    """A blower behind a switch."""
    return f"""\
part line is mains: 120 V
part fan is blower: one-speed, {takes}
part disc is service-switch
wire line.L1 to disc.1: black, 12 AWG
wire disc.2 to fan.L: black{size}
wire line.N to fan.N: white, 12 AWG
wire line.G to earth: green
{more}"""


def test_a_blower_on_bell_wire() -> None:
    found = only(blower(", 18 AWG"))
    assert (found.rule, found.fault, found.breaks) == (NAME, "too-thin", Breaks.SAFETY)
    assert found.span.text == "disc.2 to fan.L"
    assert found.message == (
        "the lead disc.2 to fan.L is 18 AWG and carries 8.95 A with everything on, more than the "
        "7 A it may: run it in 16 AWG"
    )


@pytest.mark.parametrize(
    "text",
    [
        blower(", 16 AWG"),
        blower(", 18 AWG", "6.5 A"),
        blower(""),
        blower(", 2.5 mm2"),
        blower(", 14 AWG", "14 A"),
        # two on one feed: the feed is heavy, each branch carries its own
        blower(
            ", 18 AWG",
            "6 A",
            "part other is blower: one-speed, 6 A\nwire disc.2 to other.L: black, 18 AWG\n"
            "wire line.N to other.N: white\n",
        ),
    ],
)
def test_leads_that_carry_it(text: str) -> None:
    assert raised(text) == []


def test_the_feed_of_both_is_the_one_too_thin() -> None:
    text = blower(
        ", 18 AWG",
        "6 A",
        "part other is blower: one-speed, 6 A\nwire fan.L to other.L: black, 18 AWG\n"
        "wire line.N to other.N: white\n",
    )
    assert raised(text) == [(NAME, "too-thin", "disc.2 to fan.L")]


def test_many_units_on_lines_of_their_own_are_not_added_up() -> None:
    text = "".join(
        blower(", 18 AWG", "6 A")
        .replace("line", f"line{n}")
        .replace("fan", f"fan{n}")
        .replace("disc", f"disc{n}")
        for n in range(3)
    )
    assert raised(text) == []
