"""What a simulated run leaves behind: who changed when, why, and how it stood at any time."""

from __future__ import annotations

from bisect import bisect_right
from collections.abc import Iterator, Mapping
from typing import NamedTuple

from wirecheck.circuit.netlist import ElementKey
from wirecheck.circuit.steady import Steady


class Change(NamedTuple):
    """At ``time_s`` the track ``track`` became ``state``, because of ``reason`` ("" if plain)."""

    time_s: float
    track: str
    state: str
    reason: str


class Span(NamedTuple):
    """How long a track was in one state, and why ("" if plain)."""

    start_s: float
    end_s: float
    state: str
    reason: str


class Rest(NamedTuple):
    """The unit at rest from ``time_s`` on, until the next of these.

    Attributes:
        time_s: when it came to rest.
        phases: of each control, by its part's key.
        closed: which contacts are closed.
        steady: the volts and amperes.
    """

    time_s: float
    phases: Mapping[str, str]
    closed: Mapping[ElementKey, bool]
    steady: Steady


class Trace:
    """The changes of one run, in order of time, and the state of each track between them.

    Tracks are named for people: ``call``, ``spark``, ``pilot flame``, ``box`` (the phase of the
    control), ``valve pilot operator``, ``k1 coil`` and so on, in the order of their first change.

    Attributes:
        from_s, until_s: beginning and end of the run, in seconds from the call.
        changes: in the order in which they came.
        rests: the electrical state between the changes.
        cut_short: more was still to come, but the run had taken too many steps.
    """

    def __init__(self, from_s: float, until_s: float) -> None:
        """An empty run from one time to another."""
        self.from_s = from_s
        self.until_s = until_s
        self.changes: list[Change] = []
        self.rests: list[Rest] = []
        self.cut_short = False
        self._by_track: dict[str, list[Change]] = {}

    def record(self, time_s: float, track: str, state: str, reason: str = "") -> None:
        """Note a state; nothing happens if the track has it already, with no new reason.

        A reason for what was noted at this very time is added to it, if it has none.
        """
        known = self._by_track.setdefault(track, [])
        last = known[-1] if known else None
        if last is not None and last.state == state and reason in ("", last.reason):
            return
        change = Change(time_s, track, state, reason)
        if last is None or last.state != state or last.time_s != time_s:
            known.append(change)
            self.changes.append(change)
        elif not last.reason:
            known[-1] = change
            self.changes[self.changes.index(last)] = change

    def cut(self, time_s: float) -> None:
        """End the run before its time."""
        self.until_s, self.cut_short = time_s, True

    @property
    def tracks(self) -> tuple[str, ...]:
        """All tracks, in the order of their first change."""
        return tuple(self._by_track)

    def of(self, track: str) -> list[Change]:
        """The changes of one track."""
        return self._by_track.get(track, [])

    def at(self, track: str, time_s: float) -> str:
        """The state of a track at a time; "" before its first change."""
        changes = self.of(track)
        place = bisect_right(changes, time_s, key=lambda change: change.time_s)
        return changes[place - 1].state if place else ""

    def ever(self, track: str, state: str) -> bool:
        """Whether a track was in a state for any length of time."""
        return any(span.state == state for span in self.spans(track))

    def spans(self, track: str) -> Iterator[Span]:
        """How long a track stayed in each state; what lasted no time is left out.

        A new reason for the same state does not begin a new span; the last one counts.
        """
        last_of = {change.time_s: change for change in self.of(track)}
        spans: list[Span] = []
        for time_s, change in last_of.items():
            if spans and spans[-1].state == change.state:
                reason = change.reason or spans[-1].reason
                spans[-1] = spans[-1]._replace(end_s=self.until_s, reason=reason)
                continue
            if spans:
                spans[-1] = spans[-1]._replace(end_s=time_s)
            spans.append(Span(time_s, self.until_s, change.state, change.reason))
        return (span for span in spans if span.end_s > span.start_s)
