"""Which nodes hang together by conductors, in each state of a circuit.

Nodes that no conductor joins to the reference float: volts among themselves are right, against
anything else they have none.  Each such island is given a reference of its own.
"""

from __future__ import annotations

from collections.abc import Iterable

from wirecheck.circuit.joins import Pair, lowest_joined
from wirecheck.circuit.numbered import Case, Circuit


class Islands:
    """The islands of a circuit in any of its cases."""

    def __init__(self, circuit: Circuit) -> None:
        """Join what is always joined."""
        self._circuit = circuit
        self._whole = _Joined(circuit, frozenset(), frozenset())
        self._known: dict[tuple[object, ...], list[int]] = {}

    def of(self, case: Case) -> list[int]:
        """For each node the lowest of its island, 0 where the earth is reached; not to be changed.

        States without added branches are kept, for the next case with the same contacts closed.
        """
        key = (tuple(case.closed), case.cut, case.burnt)
        found = self._known.get(key)
        if found is None:
            joined = self._whole
            if case.cut or case.burnt:
                joined = _Joined(self._circuit, frozenset(case.cut), frozenset(case.burnt))
            found = self._known[key] = joined.closed(case.closed)
        apart = [(b.a, b.b) for b in case.added if found[b.a] != found[b.b]]
        if apart:
            by_name = lowest_joined(len(found), ((found[a], found[b]) for a, b in apart))
            found = [by_name[island] for island in found]
        return found


class _Joined:
    """What all but the contacts join."""

    def __init__(self, circuit: Circuit, cut: frozenset[int], burnt: frozenset[int]) -> None:
        joins: list[Pair] = [(source.a, source.b) for source in circuit.sources]
        joins += [(b.a, b.b) for n, b in enumerate(circuit.branches) if n not in cut]
        joins += [(w.a, w.b) for n, (w, _flux) in enumerate(circuit.windings()) if n not in burnt]
        self._label = lowest_joined(circuit.nodes, joins)
        self._ends = [(self._label[s.a], self._label[s.b]) for s in circuit.switches]

    def closed(self, closed: Iterable[bool]) -> list[int]:
        joins = (ends for ends, on in zip(self._ends, closed, strict=True) if on)
        by_label = lowest_joined(len(self._label), joins)
        return [by_label[label] for label in self._label]
