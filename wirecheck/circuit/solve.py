"""The steady AC state of a circuit, for many positions of its switches in one call.

Modified nodal analysis on complex phasors (rms values): every branch is an admittance, every
source stands behind an impedance and is stamped as a current (so that a bolted short gives a
finite current), a transformer is ideal, with one unknown for its flux and one for the current of
each winding.  (Stamps: Ho, Ruehli and Brennan, "The modified nodal approach to network
analysis", 1975; from memory.)

Nodes that no conductor joins to the reference float.  Each such island gets a reference of its
own, so its voltages among themselves are right; `Solution.island` tells islands apart, and
volts between two islands mean nothing.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

Complex = NDArray[np.complex128]

#: A closed contact, and a lead of no stated length: small against any load, and finite.
CLOSED_OHM = 1e-3


class Branch(NamedTuple):
    """An impedance between two nodes, in ohm."""

    a: int
    b: int
    ohms: complex


class SourceBranch(NamedTuple):
    """A source of ``volts`` (rms phasor, ``a`` against ``b``) behind ``ohms``."""

    a: int
    b: int
    volts: complex
    ohms: complex


class Winding(NamedTuple):
    """One winding of an ideal transformer: its two nodes (``a`` is the dotted one) and turns."""

    a: int
    b: int
    turns: float


class Transformer(NamedTuple):
    """Windings on one core; ``exciting_va`` is what it takes unloaded, at as many volts as turns.

    Without an exciting current, windings that are joined to nothing else would leave the volts
    of their common end open to any value.
    """

    windings: tuple[Winding, ...]
    exciting_va: float


class Circuit(NamedTuple):
    """A numbered circuit; node 0 is the reference (the unit's earth).

    Attributes:
        nodes: how many nodes.
        branches: impedances that are always there.
        switches: node pairs that a closed switch joins with `CLOSED_OHM`.
        sources: voltages behind impedances.
        transformers: ideal but for their exciting current.
    """

    nodes: int
    branches: tuple[Branch, ...] = ()
    switches: tuple[tuple[int, int], ...] = ()
    sources: tuple[SourceBranch, ...] = ()
    transformers: tuple[Transformer, ...] = ()


class Case(NamedTuple):
    """One state to solve: which switches are closed, and what differs from the circuit.

    Attributes:
        closed: a flag for each switch.
        added: impedances that this case adds (an earth fault, a meter).
        cut: indices of branches that this case takes away (an open coil, a broken lead).
        supply: what the sources give, as a share of their volts (0 with the power off).
    """

    closed: Sequence[bool]
    added: tuple[Branch, ...] = ()
    cut: tuple[int, ...] = ()
    supply: float = 1.0


class Solution(NamedTuple):
    """The solved cases, in the order given.

    Attributes:
        volts: (cases, nodes) complex, volts rms against the reference of each node's island.
        island: (cases, nodes) int, the lowest node of the island; 0 where the earth is reached.
        winding_amps: (cases, windings) complex, current into the dotted end of each winding in the
            order of `Circuit.transformers`.
    """

    volts: Complex
    island: NDArray[np.int64]
    winding_amps: Complex

    def across(self, a: int | NDArray[np.int64], b: int | NDArray[np.int64]) -> Complex:
        """Volts of node a against node b; nan where the two do not share an island.

        (cases,) for two nodes; (cases, pairs) for two arrays of nodes.
        """
        same = self.island[:, a] == self.island[:, b]
        result: Complex = np.where(same, self.volts[:, a] - self.volts[:, b], np.nan)
        return result


def solve(circuit: Circuit, cases: Sequence[Case]) -> Solution:
    """Solve every case.

    Args:
        circuit: what all cases share.
        cases: at least one.

    Returns:
        A `Solution` with one row for each case.
    """
    windings = [winding for each in circuit.transformers for winding in each.windings]
    size = circuit.nodes + len(windings) + len(circuit.transformers)
    shared = np.zeros((size, size), dtype=np.complex128)
    drive = np.zeros(size, dtype=np.complex128)
    for branch in circuit.branches:
        _stamp(shared, branch.a, branch.b, 1 / branch.ohms)
    for source in circuit.sources:
        _stamp(shared, source.a, source.b, 1 / source.ohms)
        drive[source.a] += source.volts / source.ohms
        drive[source.b] -= source.volts / source.ohms
    _stamp_transformers(shared, circuit)
    matrices = np.broadcast_to(shared, (len(cases), size, size)).copy()
    closed = np.array([case.closed for case in cases], dtype=bool).reshape(
        len(cases), len(circuit.switches)
    )
    for number, (a, b) in enumerate(circuit.switches):
        if a != b:
            rows = closed[:, number]
            for row, column, sign in ((a, a, 1), (b, b, 1), (a, b, -1), (b, a, -1)):
                matrices[rows, row, column] += sign / CLOSED_OHM
    for number, case in enumerate(cases):
        for branch in case.added:
            _stamp(matrices[number], branch.a, branch.b, 1 / branch.ohms)
        for cut in case.cut:
            branch = circuit.branches[cut]
            _stamp(matrices[number], branch.a, branch.b, -1 / branch.ohms)
    island = _islands(circuit, cases, closed)
    case_of, node_of = np.nonzero(island == np.arange(circuit.nodes))
    matrices[case_of, node_of, node_of] += 1.0  # no current flows here: it only sets 0 V
    supply = np.array([case.supply for case in cases])
    solved = np.linalg.solve(matrices, (supply[:, None] * drive)[..., None])
    unknowns: Complex = solved[..., 0].astype(np.complex128, copy=False)
    windings_end = circuit.nodes + len(windings)
    return Solution(unknowns[:, : circuit.nodes], island, unknowns[:, circuit.nodes : windings_end])


def _stamp(matrix: Complex, a: int, b: int, siemens: complex) -> None:
    if a != b:
        matrix[a, a] += siemens
        matrix[b, b] += siemens
        matrix[a, b] -= siemens
        matrix[b, a] -= siemens


def _stamp_transformers(matrix: Complex, circuit: Circuit) -> None:
    """Each winding: v = turns x flux; the turns-weighted currents sum to the exciting current."""
    row = circuit.nodes
    flux = circuit.nodes + sum(len(each.windings) for each in circuit.transformers)
    for transformer in circuit.transformers:
        matrix[flux, flux] += transformer.exciting_va
        for winding in transformer.windings:
            matrix[winding.a, row] += 1
            matrix[winding.b, row] -= 1
            matrix[row, winding.a] += 1
            matrix[row, winding.b] -= 1
            matrix[row, flux] -= winding.turns
            matrix[flux, row] -= winding.turns
            row += 1
        flux += 1


def _islands(
    circuit: Circuit, cases: Sequence[Case], closed: NDArray[np.bool_]
) -> NDArray[np.int64]:
    """(cases, nodes) the lowest node that conductors join each node to."""
    label = np.tile(np.arange(circuit.nodes), (len(cases), 1))
    always = [(source.a, source.b) for source in circuit.sources]
    always += [(w.a, w.b) for each in circuit.transformers for w in each.windings]
    present = np.ones((len(cases), len(circuit.branches)), dtype=bool)
    for number, case in enumerate(cases):
        present[number, list(case.cut)] = False
    everywhere = np.ones(len(cases), dtype=bool)
    joins = [(a, b, everywhere) for a, b in always]
    joins += [(b.a, b.b, present[:, n]) for n, b in enumerate(circuit.branches)]
    joins += [(a, b, closed[:, n]) for n, (a, b) in enumerate(circuit.switches)]
    for number, case in enumerate(cases):
        only = np.zeros(len(cases), dtype=bool)
        only[number] = True
        joins += [(branch.a, branch.b, only) for branch in case.added]
    while True:
        before = label.copy()
        for a, b, where in joins:
            low = np.minimum(label[:, a], label[:, b])
            label[:, a] = np.where(where, low, label[:, a])
            label[:, b] = np.where(where, low, label[:, b])
        if np.array_equal(before, label):
            return label
