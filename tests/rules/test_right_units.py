"""Right units, told in other ways: no rule objects."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest

from tests.rules.raised import raised
from tests.rules.units import beside, direct, one_rod, two_rod

UNITS = {"two rods": two_rod(), "one rod": one_rod(), "direct": direct()}


def renamed(text: str) -> str:
    """Other names, one that looks like a word of the trade, and one with blanks."""
    for name, other in (("box", '"control 1"'), ("valve", "pilot-1"), ("pilot", "Brûleur")):
        text = re.sub(rf"\b{name}(?=\.| is|:| to )", other, text)
    return text


def backwards(text: str) -> str:
    """Each wire that passes nothing, from its other end."""
    return re.sub(r"^wire (\S+) to ([^\s:]+)(?=:|$)", r"wire \2 to \1", text, flags=re.MULTILINE)


def spliced(text: str) -> str:
    """A wire-nut in each lead between the control and something else, but for the spark lead."""
    lines = []
    for number, line in enumerate(text.splitlines()):
        ends = re.fullmatch(r"wire (box\.(?!SPARK)\S+) to (\S+?)(:.*)?", line)
        if ends:
            lines += [f"splice nut{number}", f"wire {ends[1]} to nut{number}{ends[3] or ''}"]
            lines += [f"wire nut{number} to {ends[2]}{ends[3] or ''}"]
        else:
            lines.append(line)
    return "\n".join(lines) + "\n"


WAYS: dict[str, Callable[[str], str]] = {
    "as they are": str,
    "renamed": renamed,
    "backwards": backwards,
    "spliced": spliced,
    "in capitals": lambda text: re.sub(r"\b(box|valve|pilot)\.", lambda m: m[0].upper(), text),
    "with CRLF": lambda text: text.replace("\n", "\r\n"),
    "thermostat before limit": lambda text: text.replace("limit to stat", "stat to limit"),
    "beside a second unit": lambda text: text + beside(),
    "a thermostat with C": lambda text: (
        text.replace("stat is thermostat", "stat is thermostat: power common")
        + "wire xfmr.C to stat.C: blue\n"
    ),
    "a limit in the primary": lambda text: (
        "part high is high-limit\n"
        + text.replace("line.L1 to xfmr.L1", "line.L1 to high to xfmr.L1")
    ),
    "a safety that acts through a relay": lambda text: (
        text.replace("limit to stat to box.TH", "limit to stat to aid.COM..NO to box.TH")
        + "part aid is relay\npart roll is rollout-switch\nwire xfmr.R to roll to aid to xfmr.C\n"
    ),
}


@pytest.mark.parametrize("way", WAYS.values(), ids=WAYS)
@pytest.mark.parametrize("unit", UNITS.values(), ids=UNITS)
def test_no_rule_objects(unit: str, way: Callable[[str], str]) -> None:
    assert raised(way(unit)) == []


def test_the_ways_change_the_text() -> None:
    """A way that changes nothing would prove nothing."""
    for name, way in WAYS.items():
        assert name == "as they are" or all(way(unit) != unit for unit in UNITS.values())
