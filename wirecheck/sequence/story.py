"""What one control and its burner did in a run, read back from the trace."""

from __future__ import annotations

from collections.abc import Iterable

from wirecheck.model.diagram import Part
from wirecheck.sequence.control import Phase
from wirecheck.sequence.trace import Change, Span, Trace
from wirecheck.sequence.tracks import part_track, track_of

#: Phases in which the control has gas or spark on, or has had and will again.
ACTIVE = (Phase.TRIAL, Phase.PROVING, Phase.RUN, Phase.WAIT)


class Story:
    """One control's part of a trace.

    Attributes:
        control: the control.
        trace: of the run.
        is_direct: it lights the main burner with no pilot.
        phases, spark, pilot, main, signal: its tracks, as spans.
        pilot_reasons, main_reasons: what was noted of those flames, each once.
        call_s, call_ends_s: when the call begins and ends.
    """

    def __init__(self, trace: Trace, control: Part, *, many: bool) -> None:
        """Look up the tracks; ``many``: the diagram has several controls."""
        self.control = control
        self.trace = trace
        self.is_direct = not control.with_role("main-valve")
        self.phases = tuple(trace.spans(part_track(control)))
        self.spark, self.pilot, self.main, self.signal = (
            tuple(trace.spans(track_of(name, control.name, many=many)))
            for name in ("spark", "pilot flame", "main flame", "flame signal")
        )
        self.pilot_reasons, self.main_reasons = (
            tuple(self._reasons(track_of(name, control.name, many=many)))
            for name in ("pilot flame", "main flame")
        )
        calls = [span for span in trace.spans("call") if span.state == "on"]
        self.call_s = calls[0].start_s if calls else 0.0
        self.call_ends_s = calls[-1].end_s if calls else trace.until_s

    @property
    def flame_word(self) -> str:
        """What the control lights."""
        return "burner" if self.is_direct else "pilot"

    @property
    def first_reasons(self) -> tuple[str, ...]:
        """What was noted of the flame that the spark lights."""
        return self.main_reasons if self.is_direct else self.pilot_reasons

    @property
    def first_flame(self) -> tuple[Span, ...]:
        """The flame that the spark lights and the rod stands in."""
        return self.main if self.is_direct else self.pilot

    def spans_in(self, *phases: Phase) -> list[Span]:
        """When it was in some phases."""
        values = [phase.value for phase in phases]
        return [span for span in self.phases if span.state in values]

    def last_in_call(self) -> Span | None:
        """The phase in which the end of the call finds it."""
        found = [span for span in self.phases if span.start_s < self.call_ends_s]
        return found[-1] if found else None

    def after_call(self) -> Span:
        """The phase in which the end of the run finds it."""
        return self.phases[-1]

    def own_reasons(self) -> list[str]:
        """Every reason of the control itself, in order, each once."""
        return self._reasons(part_track(self.control))

    def _reasons(self, track: str) -> list[str]:
        noted = (change.reason for change in self.trace.of(track) if change.reason)
        return list(dict.fromkeys(noted))

    def events(self, *states: str) -> list[Change]:
        """Everything in the run that became one of these states."""
        return [change for change in self.trace.changes if change.state in states]


def first(spans: Iterable[Span], *states: str) -> Span | None:
    """The first span in one of these states."""
    return next((span for span in spans if span.state in states), None)
