"""Conflicts and what resolves them: sets that cannot all hold, and the smallest sets that hit each.

Several faults at once, and observations that contradict each other, are both found so (R. Reiter,
"A theory of diagnosis from first principles", Artificial Intelligence 32, 1987, with the correction
of R. Greiner and others, 1989; from memory).  Here breadth first by size, which is exact and, for
the few elements that matter, quick.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Hashable, Iterable, Sequence
from itertools import combinations
from typing import TypeVar

Item = TypeVar("Item", bound=Hashable)


def minimal_hitting_sets(
    conflicts: Iterable[Collection[Item]], most: int | None = None
) -> list[tuple[Item, ...]]:
    """The sets with an element of each conflict of which none can be left out, smallest first.

    Args:
        conflicts: each a set of which something must be in; the order in which elements first
            come is that of the result.
        most: no set of more elements is looked for; None: all are.
    """
    masks: list[int] = []
    items: dict[Item, int] = {}
    for conflict in conflicts:
        for item in conflict:
            items.setdefault(item, len(items))
        masks.append(sum(1 << items[item] for item in set(conflict)))
    names = list(items)
    found: list[int] = []
    level = [0]
    for _size in range((most if most is not None else len(names)) + 1):
        next_level: dict[int, None] = {}
        for chosen in level:
            missed = next((mask for mask in masks if not mask & chosen), None)
            if missed is None:
                if not any(known & chosen == known for known in found):
                    found.append(chosen)
                continue
            for place in range(len(names)):
                wider = chosen | 1 << place
                if missed >> place & 1 and not any(known & wider == known for known in found):
                    next_level.setdefault(wider)
        level = list(next_level)
        if not level:
            break
    minimal = [each for each in found if not any(o != each and o & each == o for o in found)]
    return [
        tuple(name for place, name in enumerate(names) if chosen >> place & 1) for chosen in minimal
    ]


def minimal_conflicts(
    items: Sequence[Item],
    is_consistent: Callable[[tuple[Item, ...]], bool],
    most: int | None = None,
) -> list[tuple[Item, ...]]:
    """The smallest sets of items that cannot all hold together, smallest first.

    Args:
        items: what is said to hold.
        is_consistent: whether some of them can hold together.
        most: no set of more items is looked for; None: all are.
    """
    found: list[tuple[Item, ...]] = []
    for size in range(1, (most if most is not None else len(items)) + 1):
        for some in combinations(items, size):
            if any(set(known) <= set(some) for known in found):
                continue
            if not is_consistent(some):
                found.append(some)
    return found
