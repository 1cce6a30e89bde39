"""On which track each lead runs up or down a street.

Tracks are ordered so that leads cross as seldom as they can; two leads share a track only where
their runs lie apart.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import count
from typing import NamedTuple

from wirecheck.drawing.connections.edges import LEFT, RIGHT, Side

_APART = 2
"""Units between two leads on one track."""
_ROUNDS = 30


class Run(NamedTuple):
    """A lead in a street: it comes in at one height and side and leaves at another, in units."""

    lead: int
    side_1: Side
    y_1: int
    side_2: Side
    y_2: int

    @property
    def top(self) -> int:
        """Upper end."""
        return min(self.y_1, self.y_2)

    @property
    def foot(self) -> int:
        """Lower end."""
        return max(self.y_1, self.y_2)

    @property
    def straight(self) -> bool:
        """Whether it needs no track."""
        return self.y_1 == self.y_2


def tracks(street: Sequence[Run]) -> dict[int, int]:
    """Return the track of each lead that needs one, counted from the left."""
    runs = [run for run in street if not run.straight]
    saved = {
        (one.lead, other.lead): _crossings(one, other) - _crossings(other, one)
        for one in runs
        for other in runs
        if one is not other
    }
    order = _ordered(runs, saved)
    found: dict[int, int] = {}
    for place, run in enumerate(order):
        beside = [other.lead for other in order[:place] if _meet(run, other)]
        # Right of those whose order matters; on none of the tracks of the others.
        first = max((found[lead] for lead in beside if saved[lead, run.lead]), default=-1) + 1
        taken = {found[lead] for lead in beside}
        found[run.lead] = next(track for track in count(first) if track not in taken)
    return found


def _meet(one: Run, other: Run) -> bool:
    return one.top < other.foot + _APART and other.top < one.foot + _APART


def _crossings(left: Run, right: Run) -> int:
    """Count the crossings of two leads when one runs left of the other."""
    crossed = 0
    for side, y in ((left.side_1, left.y_1), (left.side_2, left.y_2)):
        crossed += side == RIGHT and right.top < y < right.foot
    for side, y in ((right.side_1, right.y_1), (right.side_2, right.y_2)):
        crossed += side == LEFT and left.top < y < left.foot
    return crossed


def _ordered(runs: Sequence[Run], saved: dict[tuple[int, int], int]) -> list[Run]:
    """Order the leads from the left: each in turn is put where it crosses least."""
    order = sorted(runs, key=_first_guess)
    for _ in range(_ROUNDS):
        before = list(order)
        for run in before:
            order.remove(run)
            order.insert(_best_place(run, order, saved), run)
        if order == before:
            break
    return order


def _best_place(run: Run, order: Sequence[Run], saved: dict[tuple[int, int], int]) -> int:
    """Return the place with the fewest crossings, the nearest to the middle of equal ones."""
    cost = 0
    costs = [0]
    for other in order:
        cost += saved[other.lead, run.lead]
        costs.append(cost)
    least = min(costs)
    wish = _first_guess(run)[0]
    return min(
        (place for place, cost in enumerate(costs) if cost == least),
        key=lambda place: (abs(place - wish * len(order)), place),
    )


def _first_guess(run: Run) -> tuple[float, int, int]:
    """Leads with both ends at one side keep to it, short ones most."""
    share = (run.side_1 + run.side_2) / 2
    return (share, (run.foot - run.top) * (1 if share < 0.5 else -1), run.lead)
