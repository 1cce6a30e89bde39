"""Find an order of the blocks in their columns in which leads are short and seldom cross.

The first arrangement comes from the flow. After that blocks change places, and edges are listed the
other way, as long as it saves crossings and length, for a bounded number of trials: the same
diagram always gives the same arrangement.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise
from typing import NamedTuple

from wirecheck.drawing.connections.blocks import Sketch
from wirecheck.drawing.connections.columns import cuts, ranks
from wirecheck.drawing.connections.edges import LEFT, RIGHT
from wirecheck.drawing.connections.faces import FaceBuilder, Flips, stack_height
from wirecheck.drawing.connections.passages import Plan, plan

_TRIALS = 900
"""Arrangements tried at most, for a diagram of few leads; fewer for one of many."""
_FEW_LEADS = 40
_FEWEST_TRIALS = 60

_AGAINST = 30.0
"""What a lead counts that runs a column to the left where the flow runs to the right."""
_WITHIN = 6.0
"""What a lead counts that comes back to its own column."""
_UPWARDS = 4.0
"""What counts if the flow runs upwards from one block to its upper neighbour."""
_FLIPPED = 1.0
"""What an edge counts whose terminals are listed upwards."""
_HIGHER = 1.04
"""How much a column may outgrow the highest of the first cut."""


class _Trial(NamedTuple):
    columns: tuple[tuple[int, ...], ...]
    flips: Flips


class Placer:
    """Places the blocks of one sketch in any number of columns."""

    def __init__(self, sketch: Sketch) -> None:
        """Work out the ranks."""
        self._sketch = sketch
        self._rank = ranks(sketch)
        self._faces = FaceBuilder(sketch)
        everything = tuple(range(len(sketch.blocks)))
        self._heights = self._faces.build([everything], frozenset()).heights
        self._cuts: list[tuple[tuple[int, ...], ...]] = []
        #: Height of all blocks one above the other, in units.
        self.height = stack_height(everything, self._heights)

    def first(self, count: int) -> Plan:
        """Place the blocks by the flow alone."""
        if count >= len(self._cuts):
            self._cuts = cuts(self._rank, self._heights, count)
        return self._plan(_Trial(self._cuts[count], frozenset()))

    def improved(self, first: Plan) -> Plan:
        """Change the order while it pays."""
        best, now = first, _Trial(first.columns, frozenset())
        limit = _HIGHER * self._highest(first, now)
        wires = len(self._sketch.wires)
        share = min(1.0, _FEW_LEADS / max(1, wires)) ** 1.5
        left = max(_FEWEST_TRIALS, round(_TRIALS * share))
        improving = True
        while improving:
            improving = False
            for block in range(len(self._sketch.blocks)):
                for trial in self._moves(now, block):
                    if self._highest(best, trial) > limit:
                        continue
                    if not left:
                        return best
                    left -= 1
                    planned = self._plan(trial)
                    if planned.cost < best.cost - 1e-6:
                        best, now, improving = planned, trial, True
        return best

    def _highest(self, known: Plan, trial: _Trial) -> int:
        heights = known.faces.heights
        return max((stack_height(column, heights) for column in trial.columns), default=0)

    def _plan(self, trial: _Trial) -> Plan:
        found = plan(self._sketch, trial.columns, self._faces.build(trial.columns, trial.flips))
        return found._replace(cost=found.cost + self._disorder(trial))

    def _disorder(self, trial: _Trial) -> float:
        """Count what goes against the flow, or against the order of the part library."""
        rank = self._rank
        total = _FLIPPED * len(trial.flips)
        for column in trial.columns:
            for upper, lower in pairwise(column):
                total += _UPWARDS * min(1.0, max(0.0, rank[upper] - rank[lower]))
        column_of = {block: c for c, column in enumerate(trial.columns) for block in column}
        for end, (_, there) in self._sketch.far.items():
            here = self._sketch.at[end][0]
            if rank[here] <= rank[there] and not (rank[here] == rank[there] and end.at_b):
                back = column_of[here] - column_of[there]
                total += _AGAINST * max(0, back) * min(1.0, rank[there] - rank[here])
                total += _WITHIN if not back and here != there else 0.0
        return total

    def _moves(self, now: _Trial, block: int) -> Iterator[_Trial]:
        """Yield every arrangement with one block elsewhere or one edge listed the other way."""
        if len(self._sketch.blocks[block].rows) > 1:
            for side in (LEFT, RIGHT):
                yield now._replace(flips=now.flips ^ {(block, side)})
        home = next(c for c, column in enumerate(now.columns) if block in column)
        without = [tuple(b for b in column if b != block) for column in now.columns]
        for c in range(max(0, home - 1), min(len(without), home + 2)):
            if c != home and not without[home]:
                continue
            for place in range(len(without[c]) + 1):
                columns = list(without)
                columns[c] = (*without[c][:place], block, *without[c][place:])
                if tuple(columns) != now.columns:
                    yield now._replace(columns=tuple(columns))
