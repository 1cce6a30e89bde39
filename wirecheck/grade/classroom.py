"""What a class has understood: the distribution of its marks, and its commonest mistakes."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from statistics import mean, median
from typing import NamedTuple

from wirecheck.grade.record import Record

#: So many mistakes are the commonest.
MOST_MISTAKES = 12
#: The marks are counted in so many steps.
STEPS = 10


class Common(NamedTuple):
    """A mistake and who made it.

    Attributes:
        what: the mistake, in the key's terms.
        circuit: where it costs.
        drawings: in how many; ``unsafe``: in how many of these it is one of safety.
    """

    what: str
    circuit: str
    drawings: int
    unsafe: int


class CircuitShare(NamedTuple):
    """How much of a circuit the class has right, from 0 to 1, on average."""

    circuit: str
    share: float


class Classroom(NamedTuple):
    """A class.

    Attributes:
        records: all submissions, in order.
        marks: those that were given.
        out_of: the mark of a drawing with nothing wrong.
        steps: how many marks lie in each tenth; full marks are in the last.
        average, middle: mean and median of the marks; None if there are none.
        capped: how many were capped as unsafe.
        circuits: how much of each circuit is right.
        common: the commonest mistakes, the commonest first.
    """

    records: tuple[Record, ...]
    marks: tuple[float, ...]
    out_of: float
    steps: tuple[int, ...]
    average: float | None
    middle: float | None
    capped: int
    circuits: tuple[CircuitShare, ...]
    common: tuple[Common, ...]


def classroom(records: Sequence[Record], out_of: float) -> Classroom:
    """Look at the class as a whole.

    Args:
        records: of its submissions.
        out_of: the mark of a drawing with nothing wrong.
    """
    marks = tuple(each.mark for each in records if each.mark is not None)
    steps = Counter(min(STEPS - 1, int(STEPS * mark / out_of + 1e-9)) for mark in marks)
    return Classroom(
        tuple(records),
        marks,
        out_of,
        tuple(steps[step] for step in range(STEPS)),
        mean(marks) if marks else None,
        median(marks) if marks else None,
        sum(bool(each.unsafe) for each in records),
        _circuits(records),
        _common(records),
    )


def _circuits(records: Sequence[Record]) -> tuple[CircuitShare, ...]:
    shares: dict[str, list[float]] = {}
    for record in records:
        for each in record.circuits:
            if each.out_of:
                shares.setdefault(each.circuit, []).append(each.points / each.out_of)
    return tuple(CircuitShare(circuit, mean(some)) for circuit, some in shares.items())


def _common(records: Sequence[Record]) -> tuple[Common, ...]:
    """Each mistake counts once a drawing; of equally common ones the first made comes first."""
    count: Counter[tuple[str, str]] = Counter()
    unsafe: Counter[tuple[str, str]] = Counter()
    for record in records:
        own = {(each.what, each.circuit): each.breaks == "safety" for each in record.lost}
        count.update(own.keys())
        unsafe.update(key for key, is_unsafe in own.items() if is_unsafe)
    return tuple(
        Common(what, circuit, number, unsafe[what, circuit])
        for (what, circuit), number in count.most_common(MOST_MISTAKES)
    )
