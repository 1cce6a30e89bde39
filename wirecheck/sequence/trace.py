"""What a simulated run leaves behind: who changed when, why, and how it stood at any time."""

from __future__ import annotations

from bisect import bisect_right
from typing import NamedTuple


class Change(NamedTuple):
    """At ``time_s`` the track ``track`` became ``state``, because of ``reason`` ("" if plain)."""

    time_s: float
    track: str
    state: str
    reason: str


class Trace:
    """The changes of one run, in order of time, and the state of each track between them.

    Tracks are named for people: ``call``, ``spark``, ``pilot flame``, ``box`` (the phase of the
    control), ``valve pilot operator``, ``k1`` and so on, each in the order of its first change.
    """

    def __init__(self, until_s: float) -> None:
        """An empty run that ends at ``until_s``."""
        self.until_s = until_s
        self.changes: list[Change] = []
        self._by_track: dict[str, list[Change]] = {}

    def record(self, time_s: float, track: str, state: str, reason: str = "") -> None:
        """Note a state; nothing happens if the track has it already."""
        known = self._by_track.setdefault(track, [])
        if known and known[-1].state == state:
            return
        change = Change(time_s, track, state, reason)
        known.append(change)
        self.changes.append(change)

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
        """Whether a track was ever in a state."""
        return any(change.state == state for change in self.of(track))
