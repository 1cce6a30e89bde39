"""Two diagrams with the same names put through the same calls for heat."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.circuit.nets import Nets
from wirecheck.compare.result import Seen
from wirecheck.model.diagram import Diagram
from wirecheck.sequence.answers import View
from wirecheck.sequence.run import run
from wirecheck.sequence.script import Script, heat_call
from wirecheck.sequence.simulator import Simulation
from wirecheck.sequence.trace import Trace

#: A call that lasts until a control has tried again, and one with no gas to light.
_CALL_S, _AFTER_S = 600.0, 60.0

#: What somebody sees who watches: of each track its states and when they began.
History = dict[str, list[tuple[int, str]]]


def runs_apart(first: Diagram, second: Diagram) -> Seen | None:
    """When, in some run, the two first do not do the same; None if they always do."""
    mine, theirs = Nets(first), Nets(second)
    for name, script, view in _scripts():
        one = _history(Simulation(mine, script, view).run())
        other = _history(Simulation(theirs, script, view).run())
        if one != other:
            return _first_apart(name, one, other)
    return None


def does(diagram: Diagram) -> tuple[str, ...]:
    """How a call for heat ends at each control, in a sentence."""
    return tuple(ends(diagram))


def ends(diagram: Diagram) -> dict[str, bool]:
    """How a call for heat ends at each control, and whether it lights and runs."""
    told = run(diagram, heat_call()).told
    return {
        f"{each.control}: {each.outcome.sentence}": each.outcome.word == "runs" for each in told
    }


def _scripts() -> Iterator[tuple[str, Script, View]]:
    call = heat_call(length_s=_CALL_S, watch_s=_AFTER_S)
    yield "of a call", call, View.OPERATION
    yield "of a call", call, View.DANGER
    no_gas = heat_call(length_s=_CALL_S, watch_s=_AFTER_S, gas=False)
    yield "of a call with the gas shut", no_gas, View.OPERATION


def _history(trace: Trace) -> History:
    """Every track; the microamps of a flame left out, as the length of a lead moves them."""
    return {
        track: [(round(each.time_s), each.state) for each in trace.of(track)]
        for track in trace.tracks
        if "flame signal" not in track
    }


def _first_apart(name: str, one: History, other: History) -> Seen:
    found: list[tuple[int, str]] = []
    for track in {**one, **other}:
        mine, theirs = one.get(track, []), other.get(track, [])
        times = sorted({time for time, _state in (*mine, *theirs)})
        when = next((t for t in times if _at(mine, t) != _at(theirs, t)), None)
        if when is not None:
            found.append((when, track))
    when, track = min(found, default=(0, ""))
    states = [_at(history.get(track, []), when) or "not seen" for history in (one, other)]
    first, second = (f"{track}: {state}" for state in states)
    return Seen(f"at {when} s {name}", first, second, None)


def _at(history: list[tuple[int, str]], time_s: int) -> str:
    state = ""
    for time, became in history:
        if time <= time_s:
            state = became
    return state
