"""What hangs together: union-find on numbered things."""

from __future__ import annotations

from collections.abc import Iterable

Pair = tuple[int, int]


def lowest_joined(count: int, joins: Iterable[Pair]) -> list[int]:
    """For each of ``count`` things the lowest that joins lead to from it; linear but for a log."""
    parent = list(range(count))

    def lowest(number: int) -> int:
        while parent[number] != number:
            parent[number] = number = parent[parent[number]]
        return number

    for one, other in joins:
        a, b = lowest(one), lowest(other)
        if a < b:
            parent[b] = a
        elif b < a:
            parent[a] = b
    for number in range(count):  # a parent is never higher, so it is done before its children
        parent[number] = parent[parent[number]]
    return parent
