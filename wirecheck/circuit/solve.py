"""The steady AC state of a circuit, for many positions of its contacts and many faults in one call.

Once the earth is taken out the circuit falls into blocks that nothing joins: each burner of a row
of burners that share nothing but their earth is one.  Blocks of one size are solved together, for
all cases at once, so the work grows with the number of blocks.  A block too large for that is left
to `wirecheck.circuit.elimination`, state by state.

Nodes that no conductor joins to the reference float.  Each such island gets a reference of its
own, so its voltages among themselves are right; `Solution.island` tells islands apart, and
volts between two islands mean nothing.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from wirecheck.circuit.elimination import Elimination
from wirecheck.circuit.islands import Islands
from wirecheck.circuit.joins import Pair, lowest_joined
from wirecheck.circuit.numbered import (
    Case,
    Circuit,
    Stamp,
    branch_stamp,
    drive,
    fixed_stamps,
    winding_stamp,
)

Complex = NDArray[np.complex128]
Ints = NDArray[np.int64]

#: No joins: the blocks of the circuit by itself.
_NONE: frozenset[Pair] = frozenset()

#: Blocks with more unknowns are not solved as full matrices: their work grows with the cube.
LARGEST_BLOCK = 200
#: Entries of all matrices held at one time, 16 bytes each.
ENTRIES_AT_ONCE = 4_000_000


class Solution(NamedTuple):
    """The solved cases, in the order given.

    Attributes:
        volts: (cases, nodes) complex, volts rms against the reference of each node's island.
        island: (cases, nodes) int, the lowest node of the island; 0 where the earth is reached.
        winding_amps: (cases, windings) complex, current into the dotted end of each winding in the
            order of `Circuit.transformers`.
    """

    volts: Complex
    island: Ints
    winding_amps: Complex

    def across(self, a: int | Ints, b: int | Ints) -> Complex:
        """Volts of node a against node b; nan where the two do not share an island.

        (cases,) for two nodes; (cases, pairs) for two arrays of nodes.
        """
        same = self.island[:, a] == self.island[:, b]
        result: Complex = np.where(same, self.volts[:, a] - self.volts[:, b], np.nan)
        return result


def solve(circuit: Circuit, cases: Sequence[Case]) -> Solution:
    """Solve every case; see `Solver` for a circuit that is asked more than once.

    Args:
        circuit: what all cases share.
        cases: at least one.

    Returns:
        A `Solution` with one row for each case.
    """
    return Solver(circuit).solve(cases)


class Solver:
    """A circuit made ready to be solved in any of its states."""

    def __init__(self, circuit: Circuit) -> None:
        """Nothing is worked out before it is asked for."""
        self._circuit = circuit
        self._islands = Islands(circuit)
        self._plans: dict[frozenset[Pair], _Plan] = {}
        self._one_by_one: Elimination | None = None

    def solve(self, cases: Sequence[Case]) -> Solution:
        """Solve every case.

        Args:
            cases: at least one.

        Returns:
            A `Solution` with one row for each case.
        """
        plan = self._plan(cases)
        if plan.largest > LARGEST_BLOCK:
            return self._each(cases)
        at_once = max(1, ENTRIES_AT_ONCE // max(plan.entries, 1))
        parts = [
            self._together(plan, cases[first : first + at_once])
            for first in range(0, len(cases), at_once)
        ]
        if len(parts) == 1:
            return parts[0]
        return Solution(*(np.concatenate(arrays) for arrays in zip(*parts, strict=True)))

    def _plan(self, cases: Sequence[Case]) -> _Plan:
        """The blocks, with those made one that an added branch joins."""
        if not self._plans:
            self._plans[_NONE] = _Plan(self._circuit, _NONE)
        plain = self._plans[_NONE]
        joins = frozenset(
            (plain.block[branch.a], plain.block[branch.b])
            for case in cases
            for branch in case.added
            if branch.a and branch.b and plain.block[branch.a] != plain.block[branch.b]
        )
        if joins not in self._plans:
            self._plans[joins] = _Plan(self._circuit, joins)
        return self._plans[joins]

    def _each(self, cases: Sequence[Case]) -> Solution:
        if self._one_by_one is None:
            self._one_by_one = Elimination(self._circuit)
        solved = [self._one_by_one.solve(case) for case in cases]
        windings = sum(1 for _ in self._circuit.windings())
        return Solution(
            np.array([rest.volts for rest in solved], dtype=np.complex128),
            np.array([rest.island for rest in solved], dtype=np.int64),
            np.array([rest.winding_amps for rest in solved], dtype=np.complex128).reshape(
                len(cases), windings
            ),
        )

    def _together(self, plan: _Plan, cases: Sequence[Case]) -> Solution:
        island = np.array([self._islands.of(case) for case in cases], dtype=np.int64)
        unknowns = plan.solve(cases, island)
        nodes = self._circuit.nodes
        return Solution(unknowns[:, :nodes], island, plan.winding_amps(unknowns, cases))


class _Entries(NamedTuple):
    """Entries of the matrices: which stamp each belongs to, where it stands, and its value."""

    owner: Ints
    place: Ints
    value: Complex


class _Group(NamedTuple):
    """Blocks of one size, side by side: their rows, and their entries in the flat array."""

    size: int
    blocks: int
    rows: slice
    entries: slice


class _Plan:
    """The blocks of a circuit, where each unknown stands in them, and what all cases share.

    Attributes:
        block: for each unknown the lowest of its block; 0 for the earth alone.
        largest: unknowns of the largest block.
        entries: entries of all matrices.
    """

    def __init__(self, circuit: Circuit, joins: Iterable[Pair]) -> None:
        self._branches = [branch_stamp(branch) for branch in circuit.branches]
        self._windings = [winding_stamp(winding, flux) for winding, flux in circuit.windings()]
        switches = [branch_stamp(switch) for switch in circuit.switches]
        fixed = list(fixed_stamps(circuit))
        self.block = lowest_joined(circuit.unknowns, _joins([*fixed, *switches], joins))
        self._lay_out()
        self._shared = np.zeros(self.entries, dtype=np.complex128)
        stamped = self._entries(fixed)
        np.add.at(self._shared, stamped.place, stamped.value)
        self._drive = np.zeros(circuit.unknowns - 1, dtype=np.complex128)
        for node, amps in drive(circuit):
            if node:
                self._drive[self._row[node]] += amps
        switched = self._entries(switches)
        order = np.argsort(switched.place, kind="stable")
        self._switched = _Entries(
            switched.owner[order], switched.place[order], switched.value[order]
        )
        self._switch_places, self._switch_starts = np.unique(
            self._switched.place, return_index=True
        )
        ends = [(w.a, w.b, flux) for w, flux in circuit.windings()]
        self._winding_ends: Ints = np.array(ends, dtype=np.int64).reshape(-1, 3)
        self._turns = np.array([w.turns for w, _flux in circuit.windings()])
        self._winding_siemens = np.array([1 / w.ohms for w, _flux in circuit.windings()])

    def _lay_out(self) -> None:
        """Blocks of one size stand side by side, the smallest first."""
        block = np.array(self.block, dtype=np.int64)
        size = np.bincount(block)[block]
        order = np.lexsort((block, size))
        order = order[order != 0]  # the earth is no unknown
        ranked = size[order]
        self._row: Ints = np.zeros(len(block), dtype=np.int64)
        self._row[order] = np.arange(len(order))
        starts = np.concatenate(([0], np.cumsum(ranked)))
        self._start: Ints = np.zeros(len(block), dtype=np.int64)
        self._start[order] = starts[:-1]
        first = np.zeros(len(block), dtype=np.int64)
        first[block[order[::-1]]] = self._row[order[::-1]]
        self._column = self._row - first[block]
        self._groups = []
        for each in np.unique(ranked):
            rows = slice(*np.searchsorted(ranked, [each, each + 1]))
            entries = slice(int(starts[rows.start]), int(starts[rows.stop]))
            blocks = (rows.stop - rows.start) // each
            self._groups.append(_Group(int(each), int(blocks), rows, entries))
        self.entries = int(starts[-1])
        self.largest = int(ranked[-1]) if len(ranked) else 0

    def _entries(self, stamps: Sequence[Stamp]) -> _Entries:
        """Where stamps put their entries; the owner is their number."""
        owner: list[int] = []
        place: list[int] = []
        value: list[complex] = []
        for number, (terms, siemens) in enumerate(stamps):
            for row, weight in terms:
                if row:
                    start = self._start[row]
                    for column, other in terms:
                        if column:
                            owner.append(number)
                            place.append(start + self._column[column])
                            value.append(siemens * weight * other)
        return _Entries(
            np.array(owner, dtype=np.int64),
            np.array(place, dtype=np.int64),
            np.array(value, dtype=np.complex128),
        )

    def solve(self, cases: Sequence[Case], island: Ints) -> Complex:
        """(cases, unknowns) the solved unknowns, that of the earth 0."""
        matrices = np.tile(self._shared, (len(cases), 1))
        closed = np.array([case.closed for case in cases], dtype=bool).reshape(len(cases), -1)
        if len(self._switch_places):
            switched = closed[:, self._switched.owner] * self._switched.value
            matrices[:, self._switch_places] += np.add.reduceat(
                switched, self._switch_starts, axis=1
            )
        self._change(matrices, cases)
        case_of, node_of = np.nonzero(island == np.arange(island.shape[1]))
        case_of, node_of = case_of[node_of != 0], node_of[node_of != 0]
        # No current flows through these: they only set each island's reference to 0 V.
        matrices[case_of, self._start[node_of] + self._column[node_of]] += 1.0
        supply = np.array([case.supply for case in cases])
        right = supply[:, None] * self._drive
        for size, blocks, rows, entries in self._groups:
            full = matrices[:, entries].reshape(len(cases), blocks, size, size)
            known = right[:, rows].reshape(len(cases), blocks, size, 1)
            right[:, rows] = np.linalg.solve(full, known).reshape(len(cases), -1)
        unknowns = right[:, self._row]
        unknowns[:, 0] = 0
        return unknowns

    def _change(self, matrices: Complex, cases: Sequence[Case]) -> None:
        """What each case adds and takes away."""
        changes: list[tuple[int, Stamp]] = []
        for number, case in enumerate(cases):
            if not (case.added or case.cut or case.burnt):
                continue
            changes += [(number, branch_stamp(branch)) for branch in case.added]
            changes += [(number, _less(self._branches[branch])) for branch in case.cut]
            changes += [(number, _less(self._windings[winding])) for winding in case.burnt]
        if changes:
            entries = self._entries([stamp for _number, stamp in changes])
            case_of = np.array([number for number, _stamp in changes])[entries.owner]
            np.add.at(matrices, (case_of, entries.place), entries.value)

    def winding_amps(self, unknowns: Complex, cases: Sequence[Case]) -> Complex:
        """(cases, windings) into the dotted end of each."""
        a, b, flux = self._winding_ends.T
        across = unknowns[:, a] - unknowns[:, b] - self._turns * unknowns[:, flux]
        amps: Complex = across * self._winding_siemens
        for number, case in enumerate(cases):
            if case.burnt:
                amps[number, list(case.burnt)] = 0
        return amps


def _joins(stamps: Iterable[Stamp], joins: Iterable[Pair]) -> Iterator[Pair]:
    """Unknowns that stand in one equation, the earth left out."""
    for terms, _siemens in stamps:
        unknowns = [unknown for unknown, _weight in terms if unknown]
        yield from pairwise(unknowns)
    yield from joins


def _less(stamp: Stamp) -> Stamp:
    return Stamp(stamp.terms, -stamp.siemens)
