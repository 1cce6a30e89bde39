"""What repeats in a trace, told once: a control that tries for ever does the same every time."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import groupby
from typing import NamedTuple

from wirecheck.sequence.trace import Change, Trace

#: Moments that one cycle may have at most.
LONGEST = 40
#: So many equal cycles are needed before any is left out, and so many are kept.
AT_LEAST, KEPT = 3, 2


class Event(NamedTuple):
    """All changes of one time."""

    time_s: float
    changes: tuple[Change, ...]


class Repeated(NamedTuple):
    """Cycles left out.

    Attributes:
        start_s, end_s: the time they take.
        cycles: how many.
        period_s: how long each takes.
    """

    start_s: float
    end_s: float
    cycles: int
    period_s: float


def settled(trace: Trace) -> list[Change]:
    """The changes of a trace without the states that lasted no time."""
    last = {(change.time_s, change.track): change.state for change in trace.changes}
    return [change for change in trace.changes if last[change.time_s, change.track] == change.state]


def events(trace: Trace) -> list[Event | Repeated]:
    """The moments of a trace in order, with what repeats left out after the second cycle."""
    changes = sorted(settled(trace), key=lambda change: change.time_s)
    moments = [
        Event(time_s, tuple(group)) for time_s, group in groupby(changes, lambda each: each.time_s)
    ]
    told: list[Event | Repeated] = []
    number = 0
    while number < len(moments):
        length, count = _cycle(moments, number)
        if count < AT_LEAST:
            told.append(moments[number])
            number += 1
            continue
        told += moments[number : number + KEPT * length]
        first, end = number + KEPT * length, number + count * length
        period_s = moments[number + length].time_s - moments[number].time_s
        end_s = moments[first].time_s + (count - KEPT) * period_s
        told.append(Repeated(moments[first].time_s, end_s, count - KEPT, period_s))
        number = end
    return told


def _cycle(moments: Sequence[Event], start: int) -> tuple[int, int]:
    """Length and number of the equal cycles that begin here; (0, 1) if none do."""
    for length in range(1, min(LONGEST, (len(moments) - start) // AT_LEAST) + 1):
        count = 1
        while _same(moments, start, start + count * length, length):
            count += 1
        if count >= AT_LEAST:
            return length, count
    return 0, 1


def _same(moments: Sequence[Event], one: int, other: int, length: int) -> bool:
    """Whether the same happens from two moments on, at the same intervals."""
    if other + length > len(moments):
        return False
    shift_s = moments[other].time_s - moments[one].time_s
    return all(
        abs(moments[other + step].time_s - moments[one + step].time_s - shift_s) < 1e-6
        and [change[1:] for change in moments[one + step].changes]
        == [change[1:] for change in moments[other + step].changes]
        for step in range(length)
    )
