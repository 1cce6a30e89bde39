"""Which block stands in which column.

Ranks run with the flow: line supply 0, transformer 1, call chain 2, ignition control 3, valve and
burner 4. Devices that may stand anywhere (switches, relays, strips, splices, loads) are drawn to
what they are wired to. Blocks sorted by rank are cut into columns of about equal height.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import accumulate

import networkx as nx

from wirecheck.drawing.connections.blocks import Block, Sketch
from wirecheck.drawing.connections.faces import GAP

_FIXED_RANK = {
    "mains": 0.0,
    "transformer": 1.0,
    "thermostat": 2.0,
    "ignition-control": 3.0,
    "valve-adapter": 3.6,
    "gas-valve": 4.0,
    "burner": 4.0,
    "vent-damper": 4.0,
}
_LEANING = {"load": 4.0, "zone-valve": 3.0, "boiler-call": 3.0, "overcurrent": 0.6}
"""Where other families are drawn to, as strongly as by one lead."""
_MIDDLE = 2.0
_ROUNDS = 40

_SPREAD = 500.0
"""What a rank of difference within a column counts, beside units of height squared."""


def ranks(sketch: Sketch) -> list[float]:
    """Return where along the flow each block belongs."""
    graph: nx.MultiGraph[int] = nx.MultiGraph()
    graph.add_nodes_from(range(len(sketch.blocks)))
    graph.add_edges_from(_wired(sketch))
    found = [_first_rank(block) for block in sketch.blocks]
    for _ in range(_ROUNDS):
        for number, block in enumerate(sketch.blocks):
            family = block.family
            near = [found[other] for _, other in graph.edges(number) if other != number]
            if family in _FIXED_RANK or not near:
                continue
            near += [_LEANING[family]] if family in _LEANING else []
            found[number] = sum(near) / len(near)
    return [round(rank, 6) for rank in found]


def _wired(sketch: Sketch) -> Iterator[tuple[int, int]]:
    for end, (_, there) in sketch.far.items():
        if not end.at_b:
            yield sketch.at[end][0], there


def _first_rank(block: Block) -> float:
    return _FIXED_RANK.get(block.family, _LEANING.get(block.family, _MIDDLE))


def cuts(
    rank: Sequence[float], heights: Sequence[int], most: int
) -> list[tuple[tuple[int, ...], ...]]:
    """Cut the blocks, sorted by rank, into 0, 1, 2 … up to `most` columns of about equal height.

    Each is the cheapest of all ways to cut, found by dynamic programming; `heights` are in units.
    There are never more columns than blocks.
    """
    order = sorted(range(len(rank)), key=lambda number: (rank[number], number))
    below = list(accumulate((heights[number] + GAP for number in order), initial=0))
    rising = [rank[number] for number in order]

    def cost(start: int, stop: int) -> float:
        spread = rising[stop - 1] - rising[start]
        return float((below[stop] - below[start] - GAP) ** 2) + _SPREAD * spread**2

    # For each number of columns: least cost of the first blocks up to a place, and where the last
    # of those columns begins.
    best: list[dict[int, tuple[float, int]]] = [{0: (0.0, 0)}]
    for _ in range(most):
        row: dict[int, tuple[float, int]] = {}
        for stop in range(len(best), len(order) + 1):
            row[stop] = min(
                (before + cost(start, stop), start)
                for start, (before, _) in best[-1].items()
                if start < stop
            )
        best.append(row)
    return [_columns(order, best[: count + 1]) for count in range(most + 1)]


def _columns(
    order: Sequence[int], best: Sequence[dict[int, tuple[float, int]]]
) -> tuple[tuple[int, ...], ...]:
    """Follow the cheapest cuts back from the last column."""
    columns: list[tuple[int, ...]] = []
    stop = len(order)
    for row in reversed(best[1:]):
        start = row[stop][1]
        columns.insert(0, tuple(order[start:stop]))
        stop = start
    return tuple(columns)
