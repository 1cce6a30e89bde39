"""Heaters with leads taken off and put anywhere: every run ends, and is told."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.sequence.heater import DAMPERED, DIRECT, HEATER, INDUCED, diagram
from wirecheck import load_text
from wirecheck.sequence.answers import View
from wirecheck.sequence.cycles import events
from wirecheck.sequence.run import run
from wirecheck.sequence.script import heat_call

#: Moments of a two-minute call; a circuit that chases itself would need far more.
MOST_EVENTS = 400


@st.composite
def rewired(draw: st.DrawFn) -> str:
    """A heater with up to three leads fewer and up to four more, between any two terminals."""
    lines = draw(st.sampled_from([HEATER, DAMPERED, DIRECT, INDUCED])).splitlines()
    ends = ["earth"]
    for part in diagram("\n".join(lines)).parts.values():
        ends += [
            f'{part.name}."{name}"'
            for name, spec in part.structure.terminals.items()
            if not spec.inner
        ]
    for _lead in range(draw(st.integers(0, 3))):
        leads = [number for number, line in enumerate(lines) if line.startswith(("wire", "plug"))]
        del lines[draw(st.sampled_from(leads))]
    for _lead in range(draw(st.integers(0, 4))):
        lines.append(f"wire {draw(st.sampled_from(ends))} to {draw(st.sampled_from(ends))}")
    return "\n".join(lines)


@settings(max_examples=150, deadline=None, derandomize=True)
@given(rewired(), st.sampled_from(View), st.booleans())
def test_any_wiring_runs_to_the_end_and_is_told(text: str, view: View, gas: bool) -> None:  # noqa: FBT001
    ran = run(load_text(text).diagram, heat_call(length_s=120, gas=gas), view)
    assert not ran.trace.cut_short
    assert len(events(ran.trace)) < MOST_EVENTS
    (told,) = ran.told
    assert told.outcome.sentence
    times = [change.time_s for change in ran.trace.changes]
    assert times == sorted(times)
    assert {rest.time_s for rest in ran.trace.rests} >= set(times)
