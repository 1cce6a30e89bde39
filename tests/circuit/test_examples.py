"""Every stage of every example against ngspice, node by node."""

from __future__ import annotations

from pathlib import Path

import numpy as np
import pytest

import wirecheck
from tests.circuit.drawn import Drawn
from tests.circuit.spice import needs_ngspice, node_volts
from wirecheck.circuit.elimination import Elimination
from wirecheck.circuit.netlist import netlist
from wirecheck.circuit.nets import Nets
from wirecheck.circuit.solve import solve

EXAMPLES = sorted((Path(__file__).parents[2] / "examples").glob("*.wiring"))
#: Of the volts of each node; what is far below a millivolt is held to that, not to its own size.
RELATIVE = 1e-6
LEAST_V = 1e-3


def test_there_are_examples() -> None:
    assert len(EXAMPLES) >= 10


@needs_ngspice
@pytest.mark.parametrize("file", EXAMPLES, ids=lambda file: file.stem)
def test_every_stage_agrees_with_ngspice(file: Path, tmp_path: Path) -> None:
    """Idle, call, trial, run, and the run with each safety open; all nodes, magnitude and phase."""
    diagram = wirecheck.load(file).diagram
    nets = Nets(diagram)
    circuit = Drawn(diagram, nets, netlist(nets))
    cases = circuit.cases()
    assert len(cases) >= 5
    solution = solve(circuit.net.circuit, cases)
    expected = np.array(node_volts(circuit.net.circuit, cases, solution.island.tolist(), tmp_path))
    assert np.max(np.abs(expected)) > 100  # the line is there: this is no comparison of nothings
    allowed = RELATIVE * np.maximum(np.abs(expected), LEAST_V)
    assert np.all(np.abs(solution.volts - expected) <= allowed)


@pytest.mark.parametrize("file", EXAMPLES, ids=lambda file: file.stem)
def test_single_states_agree_with_the_batch(file: Path) -> None:
    diagram = wirecheck.load(file).diagram
    nets = Nets(diagram)
    circuit = Drawn(diagram, nets, netlist(nets))
    cases = circuit.cases()
    solution = solve(circuit.net.circuit, cases)
    alone = Elimination(circuit.net.circuit)
    for number, case in enumerate(cases):
        rest = alone.solve(case)
        assert rest.island == solution.island[number].tolist()
        assert np.allclose(rest.volts, solution.volts[number], rtol=1e-7, atol=1e-9)
