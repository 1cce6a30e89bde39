"""Which reading comes first when few suspects are left: looked at to the end, not one step deep.

The reading that narrows down most for its cost is not always the first of the cheapest sequence.
With few groups left the whole rest is priced for each of the best readings, each followed by the
greedy rule, and the cheapest is taken (one-step rollout; the form of the problem after K. Pattipati
and M. Alexandridis, "Application of heuristic search and information theory to sequential fault
diagnosis", IEEE SMC 20, 1990, from memory).
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from functools import cache

#: So many readings, the best by gain for cost, are looked at to the end.
BREADTH = 12


class Sequencing:
    """A small table: what each reading comes to under each suspect.

    Attributes:
        shares: of the suspects.
        columns: of each reading the outcome under each suspect.
        costs: of the readings.
        groups: number of the group each suspect belongs to: those need not be told apart.
    """

    def __init__(
        self,
        shares: Sequence[float],
        columns: Sequence[Sequence[int]],
        costs: Sequence[float],
        groups: Sequence[int],
    ) -> None:
        """Nothing is worked out yet."""
        self.shares = tuple(shares)
        self.columns = [tuple(column) for column in columns]
        self.costs = tuple(costs)
        self.groups = tuple(groups)
        self.greedy_cost = cache(self._greedy_cost)

    @property
    def everything(self) -> frozenset[int]:
        """All suspects."""
        return frozenset(range(len(self.shares)))

    def best(self, left: frozenset[int], cost_of: str = "rollout") -> int | None:
        """The reading to make with these suspects left; None if none tells any apart.

        Args:
            left: the suspects.
            cost_of: ``greedy``, by gain for cost alone, or ``rollout``.
        """
        useful = self._useful(left)
        if not useful or cost_of == "greedy":
            return useful[0] if useful else None
        return min(
            useful[:BREADTH], key=lambda reading: (self._then_greedy(reading, left), reading)
        )

    def expected_cost(self, left: frozenset[int], cost_of: str = "rollout") -> float:
        """What it costs from here to the end, each reading chosen by the same rule."""
        reading = self.best(left, cost_of)
        if reading is None:
            return 0.0
        parts = self._parts(reading, left)
        share = self._share(left)
        return self.costs[reading] + sum(
            self._share(part) / share * self.expected_cost(part, cost_of) for part in parts
        )

    def _greedy_cost(self, left: frozenset[int]) -> float:
        reading = self.best(left, "greedy")
        return 0.0 if reading is None else self._then_greedy(reading, left)

    def _then_greedy(self, reading: int, left: frozenset[int]) -> float:
        share = self._share(left)
        return self.costs[reading] + sum(
            self._share(part) / share * self.greedy_cost(part)
            for part in self._parts(reading, left)
        )

    def _useful(self, left: frozenset[int]) -> list[int]:
        """Readings that tell something, the most for its cost first."""
        if len({self.groups[each] for each in left}) < 2:
            return []
        known = self._bits(left)
        scores = []
        for reading, cost in enumerate(self.costs):
            parts = self._parts(reading, left)
            if len(parts) > 1:
                share = self._share(left)
                rest = sum(self._share(part) / share * self._bits(part) for part in parts)
                if known - rest > 1e-9:
                    scores.append((-(known - rest) / cost, reading))
        return [reading for _score, reading in sorted(scores)]

    def _parts(self, reading: int, left: frozenset[int]) -> list[frozenset[int]]:
        column = self.columns[reading]
        found: dict[int, set[int]] = {}
        for each in sorted(left):
            found.setdefault(column[each], set()).add(each)
        return [frozenset(part) for part in found.values()]

    def _share(self, left: frozenset[int]) -> float:
        return sum(self.shares[each] for each in left)

    def _bits(self, left: frozenset[int]) -> float:
        share = self._share(left)
        by_group: dict[int, float] = {}
        for each in left:
            group = self.groups[each]
            by_group[group] = by_group.get(group, 0.0) + self.shares[each] / share
        return -sum(each * math.log2(each) for each in by_group.values() if each > 0)
