"""What a call for heat does, as a technician reads it: the end first, then who changed when.

Times count from the call.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator, Sequence
from typing import NamedTuple

from wirecheck.report.check_text import problem_text
from wirecheck.report.page import Page
from wirecheck.report.sequences import SequenceFile, summary
from wirecheck.report.visible import cells, folded, visible
from wirecheck.sequence.cycles import Event, Repeated, events
from wirecheck.sequence.run import Run
from wirecheck.sequence.tracks import CAUSES

#: A track's name gets at most so many cells of the table, a state likewise.
WIDEST_TRACK, WIDEST_STATE = 24, 14
#: So many tracks that become the same in one moment share a line.
MANY_ALIKE = 4
#: A reason with less room than this behind its change goes below it.
ROOM_FOR_REASON = 24

_NO_CONTROL = "no ignition control is drawn: only contacts and loads are shown"
#: States in which everything stands before the call; nobody needs to read of them.
_AT_FIRST = frozenset({"off", "idle", "0 uA", "shut", "still", "open", "closed"})


def sequences_text(files: Sequence[SequenceFile], page: Page, *, danger: bool) -> Iterator[str]:
    """Write the report of a run of sequences, line by line.

    Args:
        files: the diagrams, in the order given.
        page: what it is written for.
        danger: show the timeline as looked at for danger, not for whether it works.
    """
    for file in files:
        title = visible(file.works.diagram.title) if file.works else "not run"
        variant = visible(f", variant {file.variant}") if file.variant else ""
        yield from page.plain_headline(f"{visible(file.file)}: {title}{variant}")
        for problem in file.problems:
            yield from problem_text(problem, page)
        if file.works and file.endangers:
            yield from _told(file, file.works, file.endangers, page)
            yield ""
            yield from _table(file.endangers if danger else file.works, page)
        if file.picture:
            yield from page.item(f"drawn: {visible(file.picture)}")
        yield ""
    yield from page.plain_headline(summary(files))


def _told(file: SequenceFile, works: Run, endangers: Run, page: Page) -> Iterator[str]:
    """Write how it ends, and what is dangerous."""
    sentences = list(_outcomes(works))
    for sentence in sentences:
        yield from page.item(sentence)
    for danger in works.dangers:
        yield from _alarms(page, f"danger, at {_time(danger.time_s)}: {danger.sentence}")
    for sentence in _outcomes(endangers):
        if sentence not in sentences:
            yield from page.item(f"where rusty metal conducts and weak coils act: {sentence}")
    for danger in file.only_looked_for():
        yield from _alarms(page, f"possible danger, at {_time(danger.time_s)}: {danger.sentence}")


def _alarms(page: Page, text: str) -> Iterator[str]:
    return map(page.alarm, page.item(visible(text)))


def _outcomes(run: Run) -> Iterator[str]:
    for told in run.told:
        yield visible(f"{told.control}: {told.outcome.sentence}")
    if not run.told:
        yield _NO_CONTROL


# ---- the table -----------------------------------------------------------------------------


class _Line(NamedTuple):
    """A line of the table; ``time`` is "" where the line above has it."""

    time: str
    track: str
    state: str
    reason: str


def _table(run: Run, page: Page) -> Iterator[str]:
    lines = list(_lines(run))
    times = max((len(line.time) for line in lines), default=0)
    short = [line for line in lines if line.state]
    tracks = min(max((cells(line.track) for line in short), default=0), WIDEST_TRACK)
    states = min(max((cells(line.state) for line in short), default=0), WIDEST_STATE)
    for line in lines:
        time = f"  {line.time:>{times}}  "
        if line.state:
            head = f"{time}{_padded(line.track, tracks)}  {_padded(line.state, states)}"
            yield from _row(head, line.reason, page)
        else:
            yield from folded(line.track, page.width, time, " " * (len(time) + 2))


def _row(head: str, reason: str, page: Page) -> Iterator[str]:
    """A line of the table; a reason that does not fit goes on below."""
    if not reason:
        yield head.rstrip()
    elif page.width - cells(head) - 2 >= ROOM_FOR_REASON:
        yield from folded(reason, page.width, f"{head}  ", " " * (cells(head) + 2))
    else:
        yield head.rstrip()
        yield from map(page.faint, folded(reason, page.width, " " * 6, " " * 6))


def _lines(run: Run) -> Iterator[_Line]:
    """The changes worth telling, the time standing at the first of each moment."""
    for told in events(run.trace):
        if isinstance(told, Repeated):
            again = f"the same again every {_time(told.period_s)}, {told.cycles} times more"
            yield _Line("…", f"{again}, until {_time(told.end_s)}", "", "")
            continue
        time = _time(told.time_s)
        for line in _changes(told, at_first=told.time_s == run.trace.from_s):
            yield line._replace(time=time)
            time = ""
    if run.trace.cut_short:
        yield _Line(_time(run.trace.until_s), "the run ends here: it took too many steps", "", "")


def _changes(event: Event, *, at_first: bool) -> Iterator[_Line]:
    """The changes of one moment; many that are alike share a line."""
    worth = [
        _Line("", visible(track), visible(state), visible(reason))
        for _time_s, track, state, reason in event.changes
        if reason or not (at_first and _is_at_rest(track, state))
    ]
    plain = [line for line in worth if not line.reason and line.track not in CAUSES]
    alike = Counter(line.state for line in plain)
    shared = [line for line in plain if alike[line.state] >= MANY_ALIKE]
    yield from (line for line in worth if line not in shared)
    for state in dict.fromkeys(line.state for line in shared):
        tracks = [line.track for line in shared if line.state == state]
        yield _Line("", f"{state}: {', '.join(tracks)}", "", "")


def _is_at_rest(track: str, state: str) -> bool:
    """Whether something stands as it does before anything happens: power is on, nothing else."""
    return state in _AT_FIRST or (track in CAUSES and state == "on")


def _padded(text: str, width: int) -> str:
    return text + " " * max(0, width - cells(text))


def _time(time_s: float) -> str:
    return f"{time_s:.10g} s"
