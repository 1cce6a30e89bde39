"""What a call does in a diagram: as it runs, and what may come of it where metal conducts."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.model.diagram import Diagram
from wirecheck.sequence.answers import View
from wirecheck.sequence.run import run
from wirecheck.sequence.script import heat_call

#: What whoever looks for danger must take to happen: a rusty bond may well conduct today.
_AT_WORST = "where metal and loose screws conduct"


def call_told(diagram: Diagram) -> tuple[str, ...]:
    """What each control does on a call, in sentences; then every danger of that call."""
    return tuple(_told(diagram))


def _told(diagram: Diagram) -> Iterator[str]:
    works, worst = (run(diagram, heat_call(), view) for view in (View.OPERATION, View.DANGER))
    for each in works.told:
        yield f"{each.control}: {each.outcome.sentence}"
    seen = {danger.sentence for danger in works.dangers}
    for sentence in dict.fromkeys(danger.sentence for danger in worst.dangers):
        yield f"danger: {sentence}" if sentence in seen else f"danger, {_AT_WORST}: {sentence}"
