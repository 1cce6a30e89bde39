"""How fast circuits are solved: against ngspice, against bare matrices, and as they grow.

Times are the process's own seconds, so that other work on the machine does not count; those of
ngspice are a whole process each, which is what it costs to ask it.
"""

import math
import resource
import shutil
import tempfile
from collections.abc import Callable, Sequence
from functools import partial
from pathlib import Path
from statistics import median
from time import process_time

import numpy as np

import wirecheck
from tests.benchmarks.diagrams import LEADS_OF_A_UNIT, statements
from tests.benchmarks.figure import Figure
from tests.circuit.drawn import Drawn, drawn
from tests.circuit.spice import run_file, write_file
from wirecheck.circuit.netlist import netlist
from wirecheck.circuit.nets import Nets
from wirecheck.circuit.numbered import Branch, Case, Circuit, SourceBranch, Switch
from wirecheck.circuit.solve import Solver, solve

EXAMPLES = Path(__file__).parents[2] / "examples"
ROUNDS = 11
#: So many times over, all stages of the examples are solved while ngspice solves them once.
TIMES_FASTER = 20
#: Cases of a batch, and the sizes of its circuit.
CASES, SIZES = 1_600, (20, 40)
#: A batch against numpy alone solving as many matrices of that size.
OVERHEAD_BOUND = 2.0
FEW, MANY = 100, 10_000
GROWTH_BOUND = 1.1


def circuits_solved() -> list[Figure]:
    """Compare with ngspice where it is installed, then the rest."""
    against = [_against_ngspice()] if shutil.which("ngspice") else []
    return [*against, *(_batch(nodes) for nodes in SIZES), _growth()]


def _against_ngspice() -> Figure:
    """All stages of every example, numbered and solved, against one ngspice process each."""
    ours = theirs = 0.0
    examples = sorted(EXAMPLES.glob("*.wiring"))
    with tempfile.TemporaryDirectory() as folder:
        for example in examples:
            nets = Nets(wirecheck.load(example).diagram)
            unit = Drawn(nets.diagram, nets, netlist(nets))
            cases = unit.cases()
            islands = solve(unit.net.circuit, cases).island.tolist()
            file = Path(folder, "circuit.cir")
            write_file(unit.net.circuit, cases, islands, file)
            theirs += _process_seconds(file)
            ours += _seconds(partial(_numbered_and_solved, nets, cases))
    return Figure(
        f"all stages of an example numbered and solved {TIMES_FASTER} times / one ngspice process",
        TIMES_FASTER * ours / theirs,
        1.0,
        f"{ours / len(examples) * 1000:.2f} ms / {theirs / len(examples) * 1000:.1f} ms, "
        f"the mean of {len(examples)} examples",
    )


def _numbered_and_solved(nets: Nets, cases: Sequence[Case]) -> None:
    solve(netlist(nets).circuit, cases)


def _batch(nodes: int) -> Figure:
    """Many positions of one circuit of so many nodes, and as many matrices of that size bare."""
    circuit, cases = _chain(nodes)
    solver = Solver(circuit)
    ours = _seconds(lambda: solver.solve(cases))
    matrix = np.eye(nodes) * 4 + np.eye(nodes, k=1) + np.eye(nodes, k=-1) + 0j
    matrices = np.repeat(matrix[None], CASES, axis=0)
    right = np.ones((CASES, nodes, 1), dtype=np.complex128)
    bare = _seconds(lambda: np.linalg.solve(matrices, right))
    return Figure(
        f"{CASES:,} cases of {nodes} nodes / numpy alone solving as many matrices of that size",
        ours / bare,
        OVERHEAD_BOUND,
        f"{ours * 1000:.1f} ms / {bare * 1000:.1f} ms; {CASES / ours:,.0f} solves a second",
    )


def _chain(nodes: int) -> tuple[Circuit, list[Case]]:
    """A source, contacts and leads in turn, a load at every node; each case a random position."""
    branches = [Branch(node, node + 1, 0.1) for node in range(2, nodes, 2)]
    branches += [Branch(node, 0, 60 + node) for node in range(2, nodes + 1)]
    switches = tuple(Switch(node, node + 1) for node in range(1, nodes, 2))
    circuit = Circuit(nodes + 1, tuple(branches), switches, (SourceBranch(1, 0, 24, 0.5),))
    chance = np.random.default_rng(1)
    closed = chance.random((CASES, len(switches))) < 0.8
    return circuit, [Case(tuple(flags)) for flags in closed.tolist()]


def _growth() -> Figure:
    """Burners in one file, from few to many: numbered and solved in one position."""
    few_s, many_s = _burners_seconds(FEW), _burners_seconds(MANY)
    return Figure(
        f"growth of numbering and solving from {FEW:,} to {MANY:,} leads, as the exponent",
        math.log(many_s / few_s) / math.log(MANY / FEW),
        GROWTH_BOUND,
        f"{few_s * 1000:.1f} ms to {many_s * 1000:.0f} ms",
    )


def _burners_seconds(leads: int) -> float:
    unit = drawn("\n".join(statements(max(leads, LEADS_OF_A_UNIT))) + "\n")
    case = unit.case()
    return _seconds(partial(_numbered_and_solved, unit.nets, [case]))


def _seconds(work: Callable[[], object]) -> float:
    work()
    rounds = []
    for _round in range(ROUNDS):
        started = process_time()
        work()
        rounds.append(process_time() - started)
    return median(rounds)


def _process_seconds(file: Path) -> float:
    """Of a whole ngspice process, its own and the system's for it."""
    rounds = []
    for _round in range(3):
        before = resource.getrusage(resource.RUSAGE_CHILDREN)
        run_file(file)
        after = resource.getrusage(resource.RUSAGE_CHILDREN)
        rounds.append(after.ru_utime - before.ru_utime + after.ru_stime - before.ru_stime)
    return median(rounds)
