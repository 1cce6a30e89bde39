"""Tracks in a street: as few crossings as can be, and none shared by leads that meet."""

from itertools import combinations, permutations
from random import Random

import pytest

from wirecheck.drawing.connections.edges import LEFT, RIGHT
from wirecheck.drawing.connections.streets import Run, tracks


def _crossings(street: list[Run], track: dict[int, int]) -> int:
    """Count where a level piece of one lead meets the upright piece of another."""
    count = 0
    for one in street:
        for other in street:
            if one is other or other.lead not in track:
                continue
            for side, y in ((one.side_1, one.y_1), (one.side_2, one.y_2)):
                x, edge = track[one.lead], -1 if side == LEFT else 99
                between = min(x, edge) < track[other.lead] < max(x, edge)
                count += between and other.top < y < other.foot
    return count


def _street(seed: int, count: int) -> list[Run]:
    chance = Random(seed)  # noqa: S311 - a test's own dice
    heights = [chance.sample(range(0, 60, 2), count), chance.sample(range(1, 60, 2), count)]
    return [
        Run(lead, chance.choice((LEFT, RIGHT)), heights[0][lead], RIGHT, heights[1][lead])
        for lead in range(count)
    ]


def test_nested_leads_do_not_cross() -> None:
    street = [Run(n, LEFT, 20 - 2 * n, LEFT, 22 + 2 * n) for n in range(6)]
    found = tracks(street)
    assert [found[n] for n in range(6)] == [0, 1, 2, 3, 4, 5]
    assert _crossings(street, found) == 0


def test_a_straight_lead_needs_no_track() -> None:
    assert tracks([Run(0, LEFT, 4, RIGHT, 4)]) == {}


def test_leads_far_apart_share_a_track() -> None:
    street = [Run(0, LEFT, 0, RIGHT, 4), Run(1, LEFT, 10, RIGHT, 14)]
    assert set(tracks(street).values()) == {0}


@pytest.mark.parametrize("seed", range(20))
def test_leads_that_meet_have_tracks_of_their_own(seed: int) -> None:
    street = _street(seed, 12)
    found = tracks(street)
    for one, other in combinations(street, 2):
        if one.top <= other.foot and other.top <= one.foot:
            assert found[one.lead] != found[other.lead]


@pytest.mark.parametrize("seed", range(20))
def test_five_leads_cross_as_seldom_as_in_the_best_of_all_orders(seed: int) -> None:
    street = _street(seed, 5)
    best = min(
        _crossings(street, dict(zip(range(5), order, strict=True)))
        for order in permutations(range(5))
    )
    assert _crossings(street, tracks(street)) == best
