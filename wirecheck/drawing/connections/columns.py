"""Which block stands in which column.

Ranks run with the flow: line supply 0, transformer 1, call chain 2, ignition control 3, valve and
burner 4. Devices that may stand anywhere (switches, relays, strips, splices, loads) are drawn to
what they are wired to. Blocks sorted by rank are cut into columns of about equal height.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

import networkx as nx

from wirecheck.drawing.connections.blocks import Block, Sketch
from wirecheck.drawing.connections.faces import stack_height

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


def cut(rank: Sequence[float], heights: Sequence[int], count: int) -> tuple[tuple[int, ...], ...]:
    """Cut the blocks, sorted by rank, into so many columns of about equal height.

    The cuts are the cheapest of all, found by dynamic programming; `heights` are in units.
    """
    order = sorted(range(len(rank)), key=lambda number: (rank[number], number))
    # For each number of columns: least cost of the first blocks up to a place, and where the last
    # of those columns begins.
    best: list[dict[int, tuple[float, int]]] = [{0: (0.0, 0)}]
    for _ in range(count):
        row: dict[int, tuple[float, int]] = {}
        for stop in range(1, len(order) + 1):
            ways = [
                (cost + _column_cost(order[start:stop], heights, rank), start)
                for start, (cost, _) in best[-1].items()
                if start < stop
            ]
            if ways:
                row[stop] = min(ways)
        best.append(row)
    columns: list[tuple[int, ...]] = []
    stop = len(order)
    for row in reversed(best[1:]):
        start = row[stop][1]
        columns.insert(0, tuple(order[start:stop]))
        stop = start
    return tuple(columns)


def _column_cost(column: Sequence[int], heights: Sequence[int], rank: Sequence[float]) -> float:
    spread = rank[column[-1]] - rank[column[0]]
    return float(stack_height(column, heights) ** 2) + _SPREAD * spread**2
