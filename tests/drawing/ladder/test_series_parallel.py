"""What is series-parallel becomes a tree; what is not loses as few branches as possible."""

import numpy as np
import pytest
from hypothesis import given, settings

from tests.drawing.ladder.networks import Shorthand, branch, network, shorthands
from wirecheck.drawing.ladder.branches import Branch
from wirecheck.drawing.ladder.layout import size
from wirecheck.drawing.ladder.series_parallel import Leaf, Parallel, Series, Tree, leaves, split

# Shannon 1938, the simplification of a network of thirteen contacts to one of six.
SHANNON_THIRTEEN: Shorthand = (
    "+",
    "w",
    ("|", "w'", ("+", "x", "y")),
    ("|", ("+", "x", "z"), ("+", "s", "w'", "z"), ("+", "z'", "y", ("|", "s'", "v"))),
)
SHANNON_SIX: Shorthand = ("+", "w", "x", "y", ("|", "z", "s'", "v"))


def _ohms(leaf: Leaf) -> float:
    return 1.0 + leaf.branch.number % 7


def folded(tree: Tree) -> float:
    """Joint resistance by the rules of series and parallel."""
    if isinstance(tree, Leaf):
        return _ohms(tree)
    values = [folded(item) for item in tree.items]
    if isinstance(tree, Series):
        return sum(values)
    return 1 / sum(1 / value for value in values)


def by_nodes(given_branches: list[Branch], start: int, end: int) -> float:
    """Joint resistance by nodal analysis: volts at `start` for one ampere into it, `end` at 0."""
    nets = sorted({net for b in given_branches for net in (b.net_a, b.net_b)} - {end})
    place = {net: number for number, net in enumerate(nets)}
    matrix = np.zeros((len(nets), len(nets)))
    for one in given_branches:
        siemens = 1 / _ohms(Leaf(one))
        here, there = place.get(one.net_a), place.get(one.net_b)
        for net in (here, there):
            if net is not None:
                matrix[net, net] += siemens
        if here is not None and there is not None:
            matrix[here, there] -= siemens
            matrix[there, here] -= siemens
    currents = np.array([float(net == start) for net in nets])
    return float(np.linalg.solve(matrix, currents)[place[start]])


@pytest.mark.parametrize(
    ("shorthand", "contacts", "width", "rows"),
    [(SHANNON_THIRTEEN, 13, 6, 4), (SHANNON_SIX, 6, 4, 3)],
)
def test_shannons_networks_have_their_published_size(
    shorthand: Shorthand, contacts: int, width: int, rows: int
) -> None:
    """Cells across without the room that buses take, and rows down."""
    tree, left_over = split(network(shorthand), 0, 1)
    assert tree is not None
    assert len(list(leaves(tree))) == contacts
    assert not left_over
    across, down = size(tree)
    assert (int(across), down) == (width, rows)


@settings(max_examples=80, deadline=None)
@given(shorthands())
def test_any_series_parallel_network_is_one_tree(shorthand: Shorthand) -> None:
    """Nothing is left over, and the tree has the resistance of the network."""
    given_branches = network(shorthand)
    tree, left_over = split(given_branches, 0, 1)
    assert tree is not None
    assert not left_over
    assert folded(tree) == pytest.approx(by_nodes(given_branches, 0, 1))


def test_contacts_stand_in_the_order_of_the_current_however_they_were_typed() -> None:
    chain = [branch(0, 3, 2), branch(1, 1, 3), branch(2, 0, 2)]
    tree, _ = split(chain, 0, 1)
    assert tree is not None
    drawn = list(leaves(tree))
    assert [leaf.branch.number for leaf in drawn] == [2, 0, 1]
    assert [leaf.flipped for leaf in drawn] == [False, True, True]


def test_a_tree_begins_and_ends_at_its_nets() -> None:
    tree, _ = split(network(SHANNON_THIRTEEN), 0, 1)
    assert tree is not None
    assert (tree.start, tree.end) == (0, 1)


def test_a_bridge_loses_one_branch() -> None:
    """Shannon 1938 figures 11 and 12: the smallest network that is not series-parallel."""
    bridge = [branch(n, a, b) for n, (a, b) in enumerate([(0, 2), (2, 1), (0, 3), (3, 1), (2, 3)])]
    tree, left_over = split(bridge, 0, 1)
    assert tree is not None
    assert len(left_over) == 1
    assert len(list(leaves(tree))) == 4


def test_two_bridges_in_a_row_lose_one_branch_each() -> None:
    ends = [(0, 2), (2, 4), (0, 3), (3, 4), (2, 3), (4, 5), (5, 1), (4, 6), (6, 1), (5, 6)]
    tree, left_over = split([branch(n, a, b) for n, (a, b) in enumerate(ends)], 0, 1)
    assert tree is not None
    assert len(left_over) == 2


def test_every_net_joined_to_every_other_still_gives_a_tree() -> None:
    """Six nets, fifteen branches: no pair is enough, so branches go one after the other."""
    ends = [(a, b) for b in range(6) for a in range(b)]
    mesh = [branch(n, a, b) for n, (a, b) in enumerate(ends)]
    tree, left_over = split(mesh, 0, 1)
    assert tree is not None
    drawn = {leaf.branch.number for leaf in leaves(tree)}
    assert drawn.isdisjoint(one.number for one in left_over)
    assert len(drawn) + len(left_over) == len(mesh)


def test_dead_ends_loops_and_islands_are_left_over() -> None:
    wanted = [branch(0, 0, 2), branch(1, 2, 1)]
    others = [branch(2, 2, 3), branch(3, 2, 2), branch(4, 7, 8), branch(5, 1, 9), branch(6, 9, 4)]
    tree, left_over = split([*wanted, *others], 0, 1)
    assert tree is not None
    assert [leaf.branch for leaf in leaves(tree)] == wanted
    assert list(left_over) == others


def test_no_way_leads_through_a_closed_net() -> None:
    tree, left_over = split([branch(0, 0, 2), branch(1, 2, 1)], 0, 1, closed={2})
    assert tree is None
    assert len(left_over) == 2


def test_rails_on_one_net_have_no_rungs() -> None:
    assert split([branch(0, 5, 5), branch(1, 5, 6)], 5, 5).tree is None


def test_a_network_nested_beyond_all_drawing_is_left_over_whole() -> None:
    deep = [branch(0, 0, 1)]
    for step in range(2000):
        deep += [branch(2 * step + 1, step + 1, step + 2), branch(2 * step + 2, step + 2, 0)]
    tree, left_over = split(deep, 1, 0)
    assert tree is None
    assert len(left_over) == len(deep)


def test_parallel_branches_follow_the_text_with_the_plainest_first() -> None:
    tree, _ = split(network(("|", ("+", "a", "b"), "c", "d")), 0, 1)
    assert isinstance(tree, Parallel)
    drawn = [[leaf.branch.number for leaf in leaves(item)] for item in tree.items]
    assert drawn == [[2], [3], [0, 1]]
