"""Units to replace devices in, and new devices for them."""

from __future__ import annotations

import pytest

from tests.contract.source import ROOT
from wirecheck import load, load_text, replace
from wirecheck.model.diagram import Diagram
from wirecheck.replace.replacement import Replacement
from wirecheck.replace.request import CannotReplaceError

EXAMPLES = ROOT / "examples"

STANDING = (EXAMPLES / "replacing" / "fire-station-heater.wiring").read_text(encoding="utf-8")
CONVERSION = (EXAMPLES / "replacing" / "pilot-conversion.parts").read_text(encoding="utf-8")

MILLIVOLT = """\
diagram "Millivolt heater"
part limit is high-limit
part stat  is thermostat
part valve is millivolt-gas-valve
part pilot is standing-pilot-burner
part pile  is thermopile
wire pile.PLUS to valve.GEN
wire pile.MINUS to valve.C
wire valve.GEN to limit to stat to valve.CALL: white, 18 AWG
"""

PILOT_SYSTEM = """\
part box is pilot-ignition-control
part valve is gas-valve-3-wire
part pilot is pilot-burner
"""
DIRECT_SYSTEM = "part box is direct-ignition-control\npart burner is direct-burner\n"


def example(name: str) -> Diagram:
    """A diagram of the examples, which has no problem."""
    built = load(EXAMPLES / f"{name}.wiring")
    assert not built.problems
    return built.diagram


def diagram(text: str) -> Diagram:
    """A diagram of a text, which has no problem."""
    built = load_text(text, "unit.wiring")
    assert not built.problems, built.problems
    return built.diagram


def replaced(old: str | Diagram, new: str, part: str | None = None) -> Replacement:
    """The replacement of a device in a text or a diagram."""
    found = diagram(old) if isinstance(old, str) else old
    return replace(found, diagram(new), part=part)


def refused(old: str | Diagram, new: str, part: str | None = None) -> str:
    """Why a request is refused, its reasons one after the other."""
    with pytest.raises(CannotReplaceError) as why:
        replaced(old, new, part)
    return " | ".join(why.value.reasons)


def goes(done: Replacement) -> dict[str, str]:
    """Where each lead end goes, by what it comes off; "" for one that is left over."""
    return {each.off: each.to for each in done.crossings}
