"""One state of a circuit, solved by eliminating one unknown after the other.

A wiring diagram's equations are sparse: a terminal has two or three neighbours, however many units
share its earth.  Unknowns with few neighbours go first (minimum degree), so the work grows with
the circuit and not with its square.  The equations are symmetric and every resistance is positive,
so no pivoting is needed.  Plain Python: nothing heavy is loaded to solve a single state; for many
states of a small circuit see `wirecheck.circuit.solve`.
"""

from __future__ import annotations

from heapq import heapify, heappop, heappush
from typing import NamedTuple

from wirecheck.circuit.islands import Islands
from wirecheck.circuit.numbered import (
    Case,
    Circuit,
    Stamp,
    branch_stamp,
    drive,
    fixed_stamps,
    winding_stamp,
)

#: The rows of a symmetric matrix: the entries of each by column.
_Rows = list[dict[int, complex]]


class Rest(NamedTuple):
    """One solved state.

    Attributes:
        volts: of each node, rms against the reference of its island.
        island: for each node the lowest of its island; 0 where the earth is reached.
        winding_amps: into the dotted end of each winding.
    """

    volts: list[complex]
    island: list[int]
    winding_amps: list[complex]

    def across(self, a: int, b: int) -> complex | None:
        """Volts of node a against node b; None where no conductor joins their islands."""
        if self.island[a] != self.island[b]:
            return None
        return self.volts[a] - self.volts[b]


class Elimination:
    """A circuit made ready to be solved in any of its states, one at a time."""

    def __init__(self, circuit: Circuit) -> None:
        """Add up what every state shares and choose the order."""
        self._circuit = circuit
        self._islands = Islands(circuit)
        self._branches = [branch_stamp(branch) for branch in circuit.branches]
        self._switches = [branch_stamp(switch) for switch in circuit.switches]
        self._windings = [winding_stamp(winding, flux) for winding, flux in circuit.windings()]
        self._shared: _Rows = [{} for _ in range(circuit.unknowns)]
        for stamp in fixed_stamps(circuit):
            _add(self._shared, stamp, 1)
        self._drive = [0j] * circuit.unknowns
        for node, amps in drive(circuit):
            self._drive[node] += amps
        self._drive[0] = 0j  # the earth stays at 0 V whatever is driven into it
        self._order = _order(self._shared, self._switches)

    def solve(self, case: Case) -> Rest:
        """Solve one state."""
        rows = [row.copy() for row in self._shared]
        for stamp, closed in zip(self._switches, case.closed, strict=True):
            if closed:
                _add(rows, stamp, 1)
        for branch in case.added:
            _add(rows, branch_stamp(branch), 1)
        for number in case.cut:
            _add(rows, self._branches[number], -1)
        for number in case.burnt:
            _add(rows, self._windings[number], -1)
        island = self._islands.of(case)
        for node, reference in enumerate(island):
            if node == reference:
                rows[node][node] = rows[node].get(node, 0) + 1  # no current: it only sets 0 V
        solved = self._solved(rows, [case.supply * amps for amps in self._drive])
        return Rest(solved[: self._circuit.nodes], island, self._winding_amps(solved, case))

    def _solved(self, rows: _Rows, right: list[complex]) -> list[complex]:
        for unknown in self._order:
            row = rows[unknown]
            pivot = row.pop(unknown)
            amps = right[unknown]
            for other, entry in row.items():
                factor = entry / pivot
                there = rows[other]
                del there[unknown]
                right[other] -= factor * amps
                for column, value in row.items():
                    there[column] = there.get(column, 0) - factor * value
            row[unknown] = pivot
        for unknown in reversed(self._order):
            row = rows[unknown]
            total = right[unknown]
            for other, entry in row.items():
                if other != unknown:
                    total -= entry * right[other]
            right[unknown] = total / row[unknown]
        return right

    def _winding_amps(self, solved: list[complex], case: Case) -> list[complex]:
        amps = [
            stamp.siemens * sum(weight * solved[unknown] for unknown, weight in stamp.terms)
            for stamp in self._windings
        ]
        for number in case.burnt:
            amps[number] = 0j
        return amps


def _add(rows: _Rows, stamp: Stamp, sign: int) -> None:
    for row, weight in stamp.terms:
        if row:
            entries = rows[row]
            scaled = sign * weight * stamp.siemens
            for column, other in stamp.terms:
                if column:
                    entries[column] = entries.get(column, 0) + scaled * other


def _order(shared: _Rows, switches: list[Stamp]) -> list[int]:
    """Unknowns in the order of elimination, the earth left out: fewest neighbours first."""
    beside = [row.keys() - {number} for number, row in enumerate(shared)]
    for stamp in switches:
        if stamp.terms:
            (a, _), (b, _) = stamp.terms
            if a and b:
                beside[a].add(b)
                beside[b].add(a)
    waiting = [(len(others), unknown) for unknown, others in enumerate(beside) if unknown]
    heapify(waiting)
    done: list[int] = []
    left = [True] * len(beside)
    while waiting:
        degree, unknown = heappop(waiting)
        others = beside[unknown]
        if not left[unknown] or degree != len(others):
            continue
        left[unknown] = False
        done.append(unknown)
        for other in others:
            beside[other] |= others
            beside[other] -= {unknown, other}
            heappush(waiting, (len(beside[other]), other))
    return done
