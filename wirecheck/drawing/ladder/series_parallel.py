"""Turn a network between two nets into a tree of series and parallel.

Between a hot and a common rail only what lies on some way from the one to the other belongs to a
rung. That part is reduced: two branches that meet alone at a net are one in series, two between the
same nets are one in parallel. It ends with a single branch if and only if the network is
series-parallel (Valdes, Tarjan, Lawler 1982; Duffin 1965: no embedded bridge). Otherwise the fewest
branches are set aside that make it so; whoever draws shows these between named nets.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from itertools import combinations
from typing import NamedTuple, Union

import networkx as nx

from wirecheck.drawing.ladder.branches import Branch

MOST_NESTED = 60
"""Trees deeper than this are not drawn as rungs: no sheet would show them."""

_FEW = 24
"""Up to so many runs in an irreducible rest every pair is tried, beyond it one at a time."""
_TOO_MANY = 150
"""An irreducible rest larger than this is no circuit that anybody would draw as a ladder."""


class Leaf(NamedTuple):
    """A branch; `flipped` when current runs from its second terminal to its first."""

    branch: Branch
    flipped: bool = False

    @property
    def start(self) -> int:
        """The net where it begins."""
        return self.branch.net_b if self.flipped else self.branch.net_a

    @property
    def end(self) -> int:
        """The net where it ends."""
        return self.branch.net_a if self.flipped else self.branch.net_b


class Series(NamedTuple):
    """Trees one after the other."""

    items: tuple[Tree, ...]

    @property
    def start(self) -> int:
        """The net where the first begins."""
        return self.items[0].start

    @property
    def end(self) -> int:
        """The net where the last ends."""
        return self.items[-1].end


class Parallel(NamedTuple):
    """Trees between the same two nets, in the order of the text."""

    items: tuple[Tree, ...]

    @property
    def start(self) -> int:
        """The net where all begin."""
        return self.items[0].start

    @property
    def end(self) -> int:
        """The net where all end."""
        return self.items[0].end


Tree = Union[Leaf, Series, Parallel]  # noqa: UP007 - a recursive alias with | needs Python 3.12


class Split(NamedTuple):
    """A network taken apart: the tree between the two nets if there is any, and what is left."""

    tree: Tree | None
    left_over: tuple[Branch, ...]


def leaves(tree: Tree) -> Iterator[Leaf]:
    """Yield the branches of a tree from left to right, top to bottom."""
    if isinstance(tree, Leaf):
        yield tree
    else:
        for item in tree.items:
            yield from leaves(item)


def split(branches: Iterable[Branch], start: int, end: int, closed: Iterable[int] = ()) -> Split:
    """Return the tree of all ways from `start` to `end` that pass no net in `closed`."""
    given = list(branches)
    shut = set(closed) - {start, end}
    open_ones = (b for b in given if shut.isdisjoint({b.net_a, b.net_b}))
    runs = [_Run(branch.net_a, branch.net_b, branch) for branch in open_ones]
    whole = _whole(runs, start, end) if start != end else None
    if whole is None or whole.depth > MOST_NESTED:
        return Split(None, tuple(given))
    tree = whole.tree_from(start)
    drawn = {leaf.branch.number for leaf in leaves(tree)}
    return Split(tree, tuple(b for b in given if b.number not in drawn))


class _Run(NamedTuple):
    """A tree in the making between two nets; which way its items face is settled at the end.

    Attributes:
        start: a net.
        end: the other.
        branch: of a single branch, else None.
        items: what it holds, from start to end when `is_series`, else side by side.
        is_series: whether the items come one after the other.
        size: how many branches it holds.
        depth: how deep it is nested.
    """

    start: int
    end: int
    branch: Branch | None
    items: tuple[_Run, ...] = ()
    is_series: bool = False
    size: int = 1
    depth: int = 1

    def other(self, net: int) -> int:
        """Return the end that is not `net`."""
        return self.end if net == self.start else self.start

    def in_series_from(self, start: int) -> tuple[_Run, ...]:
        """Return what it holds one after the other, beginning at `start`."""
        if not self.is_series:
            return (self,)
        return self.items if start == self.start else self.items[::-1]

    def side_by_side(self) -> tuple[_Run, ...]:
        """Return what it holds side by side."""
        return self.items if self.branch is None and not self.is_series else (self,)

    def tree_from(self, net: int) -> Tree:
        """Return the finished tree that begins at `net`."""
        if self.branch is not None:
            return Leaf(self.branch, flipped=self.branch.net_a != net)
        if not self.is_series:
            return _parallel(item.tree_from(net) for item in self.items)
        trees = []
        for item in self.in_series_from(net):
            trees.append(item.tree_from(net))
            net = item.other(net)
        return Series(tuple(trees))


def _parallel(items: Iterable[Tree]) -> Parallel:
    """Return the items side by side in the order of the text, a lone branch before a group.

    What begins in one and the same block is a group of its own, so that nothing comes between.
    """
    groups: dict[str, list[Tree]] = {}
    for item in sorted(items, key=_place):
        first = next(leaves(item)).branch
        groups.setdefault(first.part.key if first.in_block else f" {first.number}", []).append(item)
    if len(groups) == 1:
        return Parallel(tuple(*groups.values()))
    nested = (Parallel(tuple(group)) if len(group) > 1 else group[0] for group in groups.values())
    return Parallel(tuple(sorted(nested, key=_place)))


def _place(tree: Tree) -> tuple[bool, int]:
    return not isinstance(tree, Leaf), min(leaf.branch.number for leaf in leaves(tree))


def _in_series(first: _Run, net: int, second: _Run) -> _Run:
    """Join two runs that meet at `net`."""
    start, end = first.other(net), second.other(net)
    items = first.in_series_from(start) + second.in_series_from(net)
    depth = max(one.depth + (not one.is_series) for one in (first, second))
    return _Run(start, end, None, items, True, first.size + second.size, depth)  # noqa: FBT003


def _in_parallel(one: _Run, other: _Run) -> _Run:
    """Join two runs between the same nets."""
    items = one.side_by_side() + other.side_by_side()
    depth = max(run.depth + (run.branch is not None or run.is_series) for run in (one, other))
    return _Run(one.start, one.end, None, items, False, one.size + other.size, depth)  # noqa: FBT003


def _on_ways(runs: Iterable[_Run], start: int, end: int) -> list[_Run]:
    """Return the runs that lie on some simple way from start to end.

    These are the runs in the same biconnected component as a branch added between the two.
    """
    held = [run for run in runs if run.start != run.end]
    graph: nx.Graph[int] = nx.Graph((run.start, run.end) for run in held)
    graph.add_edge(start, end)
    for component in nx.biconnected_component_edges(graph):
        pairs = {frozenset(pair) for pair in component}
        if frozenset((start, end)) in pairs:
            return [run for run in held if frozenset((run.start, run.end)) in pairs]
    return []


def _reduced(runs: Iterable[_Run], start: int, end: int) -> list[_Run]:
    """Merge what lies on ways from start to end until nothing merges, and return what is left."""
    at: dict[int, dict[int, _Run]] = {}

    def add(run: _Run) -> None:
        here, there = at.setdefault(run.start, {}), at.setdefault(run.end, {})
        before = here.get(run.end)
        here[run.end] = there[run.start] = run if before is None else _in_parallel(before, run)

    for run in _on_ways(runs, start, end):
        add(run)
    waiting = list(at)
    while waiting:
        net = waiting.pop()
        if net in (start, end) or len(at[net]) != 2:
            continue
        first, second = at[net].values()
        at[net] = {}
        del at[first.other(net)][net], at[second.other(net)][net]
        add(_in_series(first, net, second))
        waiting += [first.other(net), second.other(net)]
    return [run for net, around in at.items() for run in around.values() if run.start == net]


def _whole(runs: Iterable[_Run], start: int, end: int) -> _Run | None:
    """Reduce to one run, setting aside as few branches as possible where that gets stuck."""
    kernel = _reduced(runs, start, end)
    while len(kernel) > 1:
        if len(kernel) > _TOO_MANY:
            return None
        kernel = _without_fewest(kernel, start, end)
    return kernel[0] if kernel else None


def _without_fewest(kernel: list[_Run], start: int, end: int) -> list[_Run]:
    """Return the kernel without the one or two runs that cost the fewest branches.

    If neither suffices, without the one run that leaves the smallest kernel, to be tried again.
    """
    closest: list[_Run] = []
    for count in (1, 2) if len(kernel) <= _FEW else (1,):
        tries = [
            _reduced([kernel[place] for place in kept], start, end)
            for kept in combinations(range(len(kernel)), len(kernel) - count)
        ]
        whole = [rest for rest in tries if len(rest) == 1]
        if whole:
            return max(whole, key=lambda rest: rest[0].size)
        closest = closest or min(
            tries, key=lambda rest: (not rest, len(rest), -sum(r.size for r in rest))
        )
    return closest
