"""Circuits that fall into blocks, and blocks too large for a full matrix."""

from __future__ import annotations

import numpy as np
import pytest

from wirecheck.circuit import solve as solving
from wirecheck.circuit.elimination import Elimination
from wirecheck.circuit.numbered import (
    Branch,
    Case,
    Circuit,
    SourceBranch,
    Switch,
    Transformer,
    Winding,
)
from wirecheck.circuit.solve import Solver, solve

#: A line, a transformer, a switch, a lead of 1 ohm and a coil: unknowns 1 to 5 and a flux.
_PER_UNIT = 5


def _units(count: int) -> Circuit:
    """So many units that share nothing but the earth; the coil of each takes a little more."""
    branches: list[Branch] = []
    switches, sources, transformers = [], [], []
    for unit in range(count):
        line, hot, switched, far, spare = (unit * _PER_UNIT + each for each in range(1, 6))
        sources.append(SourceBranch(line, 0, 120, 0.1))
        transformers.append(
            Transformer((Winding(hot, 0, 26.4, 0.7), Winding(line, 0, 120, 14.0)), 3.0)
        )
        switches.append(Switch(hot, switched))
        branches += [Branch(switched, far, 1.0), Branch(far, 0, 60.0 - unit % 7)]
        branches.append(Branch(spare, far, 1e6))
    return Circuit(
        1 + count * _PER_UNIT,
        tuple(branches),
        tuple(switches),
        tuple(sources),
        tuple(transformers),
    )


def test_each_of_many_units_is_solved_as_if_alone() -> None:
    many = solve(_units(50), [Case((True,) * 50), Case((False,) * 50)])
    alone = solve(_units(1), [Case((True,)), Case((False,))])
    assert np.allclose(many.volts[:, 1:6], alone.volts[:, 1:])
    coils = np.abs(many.volts[0, 4::_PER_UNIT])
    assert np.allclose(coils[7:], coils[:-7])
    assert coils[0] != pytest.approx(coils[1])


def test_a_fault_between_two_units_makes_them_one_block() -> None:
    """Two hot sides joined: no current flows between equal units; with one off it feeds both."""
    circuit = _units(2)
    touching = (Branch(2, 7, 1e-3),)
    apart, joined = solve(circuit, [Case((True, False)), Case((True, False), touching)]).volts
    assert abs(apart[7]) > 26
    assert abs(joined[2] - joined[7]) < 1e-2
    assert np.allclose(joined, Elimination(circuit).solve(Case((True, False), touching)).volts)


def test_a_block_too_large_for_a_matrix_is_eliminated() -> None:
    """One line that feeds every transformer: a single block."""
    units = 60
    circuit = _units(units)
    ties = tuple(Branch(1, 1 + unit * _PER_UNIT, 0.01) for unit in range(1, units))
    case = Case(tuple(unit % 2 == 0 for unit in range(units)), ties)
    assert units * (_PER_UNIT + 1) > solving.LARGEST_BLOCK
    solution = Solver(circuit).solve([case, case._replace(supply=0.9)])
    assert np.allclose(0.9 * solution.volts[0], solution.volts[1])
    assert np.allclose(solution.winding_amps[0] * 0.9, solution.winding_amps[1])
    assert solution.island[0, _PER_UNIT * units] == 0


def test_large_blocks_come_out_as_small_ones_do(monkeypatch: pytest.MonkeyPatch) -> None:
    circuit, case = _units(3), Case((True, False, True))
    together = solve(circuit, [case])
    monkeypatch.setattr(solving, "LARGEST_BLOCK", 1)
    one_by_one = solve(circuit, [case])
    assert np.allclose(together.volts, one_by_one.volts)
    assert np.allclose(together.winding_amps, one_by_one.winding_amps)


def test_more_cases_than_are_held_at_once(monkeypatch: pytest.MonkeyPatch) -> None:
    circuit = _units(2)
    cases = [Case((number % 2 == 0, number % 3 == 0)) for number in range(12)]
    together = solve(circuit, cases)
    monkeypatch.setattr(solving, "ENTRIES_AT_ONCE", 1)
    assert np.array_equal(solve(circuit, cases).volts, together.volts)
