"""The numbered notes below the bars: the reason of each step."""

from __future__ import annotations

from typing import NamedTuple

from wirecheck.sequence.cycles import Event, events
from wirecheck.sequence.trace import Trace

#: So many notes find room; the report in words has all of them.
MOST = 18


class Note(NamedTuple):
    """A reason: of which track it is, from when, and its words."""

    track: str
    time_s: float
    words: str


def notes(trace: Trace, shown: set[str]) -> list[Note]:
    """The reasons of a trace in order of time, for the tracks that are shown."""
    found = [
        Note(change.track, change.time_s, f"{change.track} {change.state}: {change.reason}")
        for event in events(trace)
        if isinstance(event, Event)
        for change in event.changes
        if change.reason and change.track in shown
    ]
    return found[:MOST]
