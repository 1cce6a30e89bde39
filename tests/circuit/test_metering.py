"""What a meter of 10 Mohm shows, and the supplies that float."""

from __future__ import annotations

import numpy as np
import pytest

from tests.circuit.drawn import UNIT, Drawn, drawn
from wirecheck.circuit.metering import meter_volts, without_earth
from wirecheck.circuit.numbered import Case
from wirecheck.circuit.solve import solve
from wirecheck.circuit.stages import Stage
from wirecheck.model.diagram import Terminal

_WHOLE = UNIT + "plug box to valve: PV, MV, VC to C\n"
_FLOATING = _WHOLE.replace("wire xfmr.C to earth\n", "").replace(
    "pilot-burner: two-rod", "pilot-burner: two-rod, bond none"
)


def _reads(unit: Drawn, case: Case, *pairs: tuple[str, str]) -> list[float]:
    ends = [(_terminal(a), _terminal(b)) for a, b in pairs]
    return [float(volts) for volts in meter_volts(unit.net, [case], ends)[0]]


def _terminal(text: str) -> Terminal:
    part, _dot, name = text.partition(".")
    return Terminal(part, name)


def test_across_an_open_thermostat_with_the_control_behind_it() -> None:
    """The full secondary, through the control's own current path; closed, next to nothing."""
    unit = drawn(_WHOLE)
    (opened,) = _reads(unit, unit.case(Stage.IDLE), ("stat.R", "stat.W"))
    (closed,) = _reads(unit, unit.case(Stage.RUN), ("stat.R", "stat.W"))
    assert opened == pytest.approx(26.3, abs=0.2)
    assert closed == pytest.approx(0.0, abs=2e-3)


def test_on_a_net_that_nothing_feeds() -> None:
    unit = drawn(_WHOLE + "part k is relay\nwire k.NO to k.NC\n")
    readings = _reads(unit, unit.case(), ("k.NO", "earth"), ("k.NO", "k.COM"), ("k.A", "k.B"))
    assert readings == pytest.approx([0, 0, 0], abs=1e-9)


def test_a_floating_secondary_against_earth_shows_nothing() -> None:
    """Inside it the volts are there; against earth one probe alone closes no circuit."""
    unit = drawn(_FLOATING)
    inside, hot, common = _reads(
        unit, unit.case(), ("xfmr.R", "xfmr.C"), ("xfmr.R", "earth"), ("xfmr.C", "earth")
    )
    assert inside == pytest.approx(25, abs=1.0)
    assert (hot, common) == pytest.approx((0, 0), abs=1e-3)


def test_many_states_and_places_in_one_call() -> None:
    unit = drawn(_WHOLE)
    cases = unit.cases()
    pairs = [
        (_terminal("xfmr.R"), _terminal("xfmr.C")),
        (_terminal("valve.PV"), _terminal("valve.C")),
    ]
    readings = meter_volts(unit.net, cases, pairs)
    assert readings.shape == (len(cases), 2)
    assert np.all(readings[:, 0] > 23)
    assert readings[:4, 1] == pytest.approx([0, 0, 25.8, 25.2], abs=0.3)


def test_the_supply_that_floats_is_named() -> None:
    words = "the secondary of xfmr has no reference to earth: its volts against earth mean nothing"
    for text, expected in ((_FLOATING, [words]), (_WHOLE, [])):
        unit = drawn(text)
        solution = solve(unit.net.circuit, [unit.case()])
        assert list(without_earth(unit.nets, unit.net, solution, 0).values()) == expected
