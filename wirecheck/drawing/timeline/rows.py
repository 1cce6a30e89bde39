"""Which tracks are worth a row, in which order, and what is to be seen on each."""

from __future__ import annotations

from typing import NamedTuple

from wirecheck.sequence.control import Phase
from wirecheck.sequence.run import Run
from wirecheck.sequence.trace import Span
from wirecheck.sequence.tracks import CAUSES

#: What is watched at a burner, in the order of the flame.
_BURNER = ("spark", "pilot flame", "flame signal", "main flame")
#: States of something that moves, by which its track is known.
_MOVES = frozenset({"shut", "opening", "closing"})
_PHASES = frozenset(phase.value for phase in Phase)
#: What is on at rest.
_SUPPLIES = ("power", "gas supply")
#: States that are drawn as a thin line.
_QUIET = frozenset({"off", "idle", "shut", "still", "0 uA", "as usual"})


class Bar(NamedTuple):
    """A state over time; a quiet one is no more than a line."""

    start_s: float
    end_s: float
    state: str
    quiet: bool


class Row(NamedTuple):
    """One track with its bars."""

    name: str
    bars: tuple[Bar, ...]


def rows(run: Run) -> list[Row]:
    """Every track on which something happens, causes first, then the controls and the flame."""
    found = [_row(run, track) for track in _order(run)]
    return [row for row in found if _tells(row)]


def _tells(row: Row) -> bool:
    """Whether anything is to be seen: not only quiet, nor closed throughout."""
    if len(row.bars) == 1 and row.bars[0].state in ("closed", "moving"):
        return False
    return any(not bar.quiet for bar in row.bars)


def _row(run: Run, track: str) -> Row:
    spans = list(run.trace.spans(track))
    moves = any(span.state in _MOVES for span in spans)
    return Row(
        track,
        tuple(
            Bar(span.start_s, span.end_s, span.state, _is_quiet(track, span, moves=moves))
            for span in spans
        ),
    )


def _is_quiet(track: str, span: Span, *, moves: bool) -> bool:
    """Whether a state is how it stands at rest: a contact open by itself, the power on."""
    if track in _SUPPLIES:
        return span.state == "on"
    if span.state == "open":
        return not moves and not span.reason
    return span.state in _QUIET


def _order(run: Run) -> list[str]:
    tracks = run.trace.tracks
    phased = [track for track in tracks if any(s.state in _PHASES for s in run.trace.spans(track))]
    burner = [track for name in _BURNER for track in tracks if _is_at_burner(track, name)]
    operators = [track for track in tracks if track.endswith("operator")]
    first = [track for track in CAUSES if track in tracks]
    leading = [*first, *phased, *burner, *operators]
    return [*leading, *(track for track in tracks if track not in leading)]


def _is_at_burner(track: str, name: str) -> bool:
    return track == name or track.startswith(f"{name} of ")
