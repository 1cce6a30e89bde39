"""The solver against textbook answers, against ngspice, and against the laws of circuits."""

from __future__ import annotations

from pathlib import Path
from tempfile import TemporaryDirectory

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tests.circuit.spice import needs_ngspice, node_volts
from wirecheck.circuit.elimination import Elimination
from wirecheck.circuit.numbered import (
    CLOSED_OHM,
    Branch,
    Case,
    Circuit,
    SourceBranch,
    Switch,
    Transformer,
    Winding,
)
from wirecheck.circuit.solve import Solution, solve

#: Agreement asked of two solvers that use the same numbers in another order.
RELATIVE = 1e-6
ALWAYS = Case(())


def _degrees(value: complex) -> float:
    return float(np.angle(value, deg=True)) % 360


def test_a_net_that_is_not_series_parallel() -> None:
    """Six resistors between four nodes: 9.632 ohm, so 120 V drives 12.458 A.

    Alexander and Sadiku, Fundamentals of Electric Circuits, example 2.15 (from memory).
    """
    source_ohm = 1e-6
    circuit = Circuit(
        5,
        (Branch(1, 3, 10), Branch(3, 2, 20), Branch(3, 4, 5), Branch(1, 4, 12.5),
         Branch(4, 2, 15), Branch(1, 2, 30)),
        sources=(SourceBranch(1, 2, 120, source_ohm),),
    )  # fmt: skip
    solution = solve(circuit, [ALWAYS])
    volts = solution.across(1, 2)[0]
    amps = (120 - volts) / source_ohm
    assert abs(volts / amps) == pytest.approx(9.632, abs=1e-3)
    assert abs(amps) == pytest.approx(12.458, abs=2e-3)


def test_two_nodes_driven_by_currents() -> None:
    """5 A into the first node, 5 A net into the second: 13.333 V and 20 V.

    Sadiku, nodal analysis, example 3.1 (data read in an excerpt, answer from memory).  A current
    source is a high voltage behind a high impedance here.
    """
    stiff_ohm = 1e9
    circuit = Circuit(
        3,
        (Branch(1, 2, 4), Branch(1, 0, 2), Branch(2, 0, 6)),
        sources=(
            SourceBranch(1, 0, 5 * stiff_ohm, stiff_ohm),
            SourceBranch(2, 0, 10 * stiff_ohm, stiff_ohm),
            SourceBranch(1, 2, 5 * stiff_ohm, stiff_ohm),
            SourceBranch(0, 1, 5 * stiff_ohm, stiff_ohm),
        ),
    )
    solution = solve(circuit, [ALWAYS])
    # The two middle sources move 5 A from node 2 to node 1 and 5 A from node 1 to earth.
    assert solution.across(1, 0)[0] == pytest.approx(40 / 3, rel=1e-5)
    assert solution.across(2, 0)[0] == pytest.approx(20, rel=1e-5)


def test_an_ideal_transformer_with_a_reversed_dot() -> None:
    """I1 = 11.09 A at 33.69 degrees, Vo = 110.9 V at 213.69, S = 1330.8 VA at -33.69.

    Alexander and Sadiku, example 13.8 (from memory).
    """
    circuit = Circuit(
        4,
        (Branch(1, 2, 4 - 6j), Branch(3, 0, 20)),
        sources=(SourceBranch(1, 0, 120, 1e-9),),
        transformers=(Transformer((Winding(2, 0, 1, 1e-6), Winding(0, 3, 2, 1e-6)), 1e-9),),
    )
    solution = solve(circuit, [ALWAYS])
    volts, amps = complex(solution.across(3, 0)[0]), complex(solution.winding_amps[0, 0])
    assert abs(amps) == pytest.approx(11.09, abs=5e-3)
    assert _degrees(amps) == pytest.approx(33.69, abs=5e-3)
    assert abs(volts) == pytest.approx(110.9, abs=0.05)
    assert _degrees(volts) == pytest.approx(213.69, abs=5e-3)
    power = 120 * amps.conjugate()
    assert abs(power) == pytest.approx(1330.8, abs=0.6)  # the book rounds the current first
    assert _degrees(power) == pytest.approx(360 - 33.69, abs=5e-3)


def test_an_earth_fault_past_a_limit() -> None:
    """A limit in the common lead is defeated by one earth fault, one in the hot lead is not.

    24 V behind 0.5 ohm, a coil of 60 ohm, faults of 1 milliohm, the limit open.  Values worked out
    by hand from these numbers; the trade knows the outcome (common practice, no source).
    """
    hot_limit = Circuit(  # 1 hot, 2 past the limit, 0 earthed common
        3, (Branch(2, 0, 60),), (Switch(1, 2),), (SourceBranch(1, 0, 24, 0.5),)
    )
    common_limit = Circuit(  # 1 hot, 2 coil's far side, 0 earthed common
        3, (Branch(1, 2, 60),), (Switch(2, 0),), (SourceBranch(1, 0, 24, 0.5),)
    )
    fault = (Branch(2, 0, 1e-3),)
    in_hot = solve(hot_limit, [Case([False]), Case([False], fault), Case([True], fault)])
    assert np.abs(in_hot.across(2, 0)) == pytest.approx([0, 0, 0.048], abs=1e-3)
    shorted_amps = (24 - abs(in_hot.across(1, 0)[2])) / 0.5
    assert shorted_amps == pytest.approx(47.8, abs=0.2)
    in_common = solve(common_limit, [Case([False]), Case([False], fault)])
    assert np.abs(in_common.across(1, 2)) == pytest.approx([0, 23.8], abs=0.01)


def test_volts_between_two_islands_mean_nothing() -> None:
    """A secondary without earth floats: volts inside it are right, against earth there are none."""
    floating = Circuit(4, (Branch(2, 3, 60),), sources=(SourceBranch(2, 3, 24, 0.5),))
    solution = solve(floating, [ALWAYS])
    assert abs(solution.across(2, 3)[0]) == pytest.approx(24 * 60 / 60.5)
    assert np.isnan(solution.across(2, 0)[0])
    assert solution.island.tolist() == [[0, 1, 2, 2]]


def test_two_secondaries_out_of_phase_short_each_other() -> None:
    """R to R reads 48 V before they are joined; joined on both sides each carries its short."""
    sources = (SourceBranch(1, 0, 24, 0.5), SourceBranch(2, 0, -24, 0.5))
    circuit = Circuit(3, (), (Switch(1, 2),), sources)
    apart, joined = solve(circuit, [Case([False]), Case([True])]).across(1, 2)
    assert abs(apart) == pytest.approx(48)
    assert abs(joined) / CLOSED_OHM == pytest.approx(48 / (1.0 + CLOSED_OHM), rel=1e-9)


# ---- random circuits -------------------------------------------------------------------------

_NODES = st.integers(0, 6)
_OHMS = st.builds(
    complex,
    st.floats(0.5, 500, allow_subnormal=False),
    st.one_of(st.just(0.0), st.floats(-200, 200).filter(lambda x: abs(x) > 0.01)),
)
_PAIR = st.tuples(_NODES, _NODES).filter(lambda pair: pair[0] != pair[1])
_BRANCH = st.builds(lambda pair, ohms: Branch(pair[0], pair[1], ohms), _PAIR, _OHMS)
_SOURCE = st.builds(
    lambda pair, volts, degrees, ohms: SourceBranch(
        pair[0], pair[1], volts * complex(np.exp(1j * np.radians(degrees))), ohms
    ),
    _PAIR,
    st.floats(1, 240),
    st.floats(-180, 180),
    st.floats(0.1, 20),
)
_WINDING = st.builds(
    lambda pair, turns, ohms: Winding(pair[0], pair[1], turns, ohms),
    _PAIR,
    st.sampled_from([120, 240, 24, 26.4]),
    _OHMS,
)
_SWITCH = st.builds(
    lambda pair, ohms: Switch(pair[0], pair[1], ohms), _PAIR, st.sampled_from([CLOSED_OHM, 0.1])
)


@st.composite
def _circuits(draw: st.DrawFn) -> tuple[Circuit, Case]:
    switches = tuple(draw(st.lists(_SWITCH, max_size=4)))
    branches = tuple(draw(st.lists(_BRANCH, min_size=1, max_size=10)))
    cores = draw(st.lists(st.lists(_WINDING, min_size=2, max_size=3), max_size=2))
    circuit = Circuit(
        7,
        branches,
        switches,
        tuple(draw(st.lists(_SOURCE, min_size=1, max_size=3))),
        tuple(Transformer(tuple(windings), 3.0) for windings in cores),
    )
    count = sum(len(windings) for windings in cores)
    case = Case(
        tuple(draw(st.booleans()) for _ in switches),
        tuple(draw(st.lists(_BRANCH, max_size=2))),
        tuple(draw(st.lists(st.integers(0, len(branches) - 1), max_size=2, unique=True))),
        tuple(draw(st.lists(st.integers(0, count - 1), max_size=1))) if count else (),
        draw(st.sampled_from([1.0, 0.9, 0.0])),
    )
    return circuit, case


@needs_ngspice
@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(_circuits())
def test_random_circuits_agree_with_ngspice(drawn: tuple[Circuit, Case]) -> None:
    """Every element type, any wiring: node volts to one part in a million."""
    circuit, case = drawn
    solution = solve(circuit, [case])
    islands = [int(node) for node in solution.island[0]]
    with TemporaryDirectory() as folder:
        expected = np.array(node_volts(circuit, [case], [islands], Path(folder)))[0]
    scale = max(1.0, float(np.max(np.abs(expected))))
    assert np.max(np.abs(solution.volts[0] - expected)) <= RELATIVE * scale


@settings(max_examples=100, deadline=None)
@given(_circuits())
def test_elimination_agrees_with_full_matrices(drawn: tuple[Circuit, Case]) -> None:
    """Two methods that share nothing but the stamps."""
    circuit, case = drawn
    together, alone = solve(circuit, [case]), Elimination(circuit).solve(case)
    scale = max(1.0, float(np.max(np.abs(together.volts))))
    assert together.island[0].tolist() == alone.island
    assert np.max(np.abs(together.volts[0] - alone.volts)) <= RELATIVE * scale
    amps = np.array(alone.winding_amps)
    scale = max(1.0, float(np.max(np.abs(amps), initial=0.0)))
    assert np.all(np.abs(together.winding_amps[0] - amps) <= RELATIVE * scale)


@settings(max_examples=60, deadline=None)
@given(_circuits())
def test_currents_at_each_node_sum_to_zero(drawn: tuple[Circuit, Case]) -> None:
    """Kirchhoff's current law at every node, from the solved volts alone."""
    circuit, case = drawn
    solution = solve(circuit, [case])
    balance = np.zeros(circuit.nodes, dtype=complex)
    carried = 1.0
    present = [b for n, b in enumerate(circuit.branches) if n not in case.cut]
    contacts = [each for each, on in zip(circuit.switches, case.closed, strict=True) if on]
    for a, b, ohms in (*present, *case.added, *contacts):
        amps = complex(solution.volts[0, a] - solution.volts[0, b]) / ohms
        carried = max(carried, abs(amps))
        balance[a] += amps
        balance[b] -= amps
    for source in circuit.sources:
        across = complex(solution.volts[0, source.a] - solution.volts[0, source.b])
        amps = (source.volts * case.supply - across) / source.ohms
        carried = max(carried, abs(amps))
        balance[source.a] -= amps
        balance[source.b] += amps
    number = 0
    for each in circuit.transformers:
        for winding in each.windings:
            balance[winding.a] += solution.winding_amps[0, number]
            balance[winding.b] -= solution.winding_amps[0, number]
            number += 1
    assert np.max(np.abs(balance)) <= RELATIVE * carried


@settings(max_examples=30, deadline=None)
@given(st.lists(_circuits(), min_size=1, max_size=1), st.data())
def test_a_batch_equals_its_cases_one_by_one(
    drawn: list[tuple[Circuit, Case]], data: st.DataObject
) -> None:
    """Solving many positions in one call changes nothing."""
    circuit = drawn[0][0]
    cases = [Case(tuple(data.draw(st.booleans()) for _ in circuit.switches)) for _ in range(5)]
    together = solve(circuit, cases)
    for number, case in enumerate(cases):
        alone: Solution = solve(circuit, [case])
        assert np.allclose(together.volts[number], alone.volts[0], rtol=1e-9, atol=1e-9)
        assert together.island[number].tolist() == alone.island[0].tolist()
