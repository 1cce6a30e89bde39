"""Where a time stands on the sheet.

Seconds are drawn to scale where something happens; the time before the call, a long time in which
nothing happens, and what repeats, are broken out of the axis and say how long they are.  What
happens within a second or two is pulled apart far enough to be told apart.
"""

from __future__ import annotations

from bisect import bisect_right
from itertools import pairwise
from typing import NamedTuple

from wirecheck.sequence.cycles import Repeated, events
from wirecheck.sequence.trace import Trace

#: A time longer than this in which nothing happens is broken out.
LONG_S = 20.0
#: Width of a break, and the least of anything else, in points.
BREAK_PT, LEAST_PT = 46.0, 15.0
#: The widest a break becomes where there is room to spare, in points.
WIDEST_BREAK_PT = 90.0
#: Half the width of the band that marks a break.
BAND_PT = 7.0
#: The widest a second becomes where there is room to spare, in points.
WIDEST_SECOND_PT = 14.0


class Break(NamedTuple):
    """A stretch that is not drawn to scale: from where to where, in points, and what it is."""

    left: float
    right: float
    words: str


class TimeAxis:
    """Times of one trace along a width.

    Attributes:
        times: at which something happens, in order.
        breaks: what is broken out.
        hidden: times between which nothing is drawn, as it repeats.
    """

    def __init__(self, trace: Trace, left: float, width: float) -> None:
        """Spread the times of a trace over a width, in points."""
        told = events(trace)
        repeated = [each for each in told if isinstance(each, Repeated)]
        self.hidden = [(each.start_s, each.end_s) for each in repeated]
        ends = [time_s for pair in self.hidden for time_s in pair]
        moments = [each.time_s for each in told if not isinstance(each, Repeated)]
        self.times = sorted({trace.from_s, trace.until_s, *ends, *moments})
        words = {each.start_s: _words(each) for each in repeated}
        gaps = [(before, after - before) for before, after in pairwise(self.times)]
        widths = _widths(
            [None if at in words or at == trace.from_s else gap for at, gap in gaps], width
        )
        self._places = [left]
        self.breaks: list[Break] = []
        for (at, gap), wide in zip(gaps, widths, strict=True):
            place = self._places[-1]
            if at in words or at == trace.from_s or gap > LONG_S:
                self.breaks.append(Break(place, place + wide, words.get(at, f"{gap:g} s")))
            self._places.append(place + wide)

    @property
    def right(self) -> float:
        """Where the last time stands."""
        return self._places[-1]

    def pieces(self, left: float, right: float) -> list[tuple[float, float]]:
        """What is to be seen between two places: the breaks cut it into pieces."""
        pieces = []
        for each in self.breaks:
            middle = (each.left + each.right) / 2
            if left < middle < right:
                pieces.append((left, middle - BAND_PT))
                left = middle + BAND_PT
        return [*pieces, (left, right)]

    def place(self, time_s: float) -> float:
        """Where a time stands, in points."""
        after = min(max(bisect_right(self.times, time_s), 1), len(self.times) - 1)
        before_s, after_s = self.times[after - 1], self.times[after]
        share = (time_s - before_s) / (after_s - before_s)
        left, right = self._places[after - 1], self._places[after]
        return left + (right - left) * min(max(share, 0.0), 1.0)


def _words(repeated: Repeated) -> str:
    return f"{repeated.cycles} x {repeated.period_s:g} s\nthe same"


def _widths(gaps: list[float | None], width: float) -> list[float]:
    """Width of each gap; None stands for one that is broken out whatever its length."""
    broken = [gap is None or gap > LONG_S for gap in gaps]
    room = width - BREAK_PT * sum(broken)
    scaled = [gap for gap, is_broken in zip(gaps, broken, strict=True) if gap and not is_broken]
    least = min(LEAST_PT, room / max(len(scaled), 1))
    low, high = 0.0, WIDEST_SECOND_PT
    for _halving in range(40):
        second = (low + high) / 2
        if sum(max(gap * second, least) for gap in scaled) <= room:
            low = second
        else:
            high = second
    spare = (room - sum(max(gap * low, least) for gap in scaled)) / max(sum(broken), 1)
    wide = min(BREAK_PT + max(spare, 0.0), WIDEST_BREAK_PT)
    return [
        wide if is_broken or gap is None else max(gap * low, least)
        for gap, is_broken in zip(gaps, broken, strict=True)
    ]
