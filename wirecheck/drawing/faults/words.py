"""What the sheets for finding a fault have in common: their title block, ends in words, shares."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from wirecheck.drawing.sheet import TitleBlock
from wirecheck.model.diagram import Diagram
from wirecheck.troubleshoot.chart import Step

#: So many repairs are told at one end of the chart.
MOST_REPAIRS: Final = 4
NOTE = (
    "Worked out from the wiring as drawn: it holds for a unit wired so, and finds single faults and"
    " some pairs. What it does not list can be broken too."
)


def block(diagram: Diagram, sheet: str, seen: str, date: str) -> TitleBlock:
    """Return the title block of such a sheet; ``seen`` is what it begins with."""
    notes = (f"Seen: {seen}.", NOTE) if seen else (NOTE,)
    name = diagram.source.name
    return TitleBlock(diagram.title, sheet, name, date, (), "see the steps", notes)


def share(probability: float) -> str:
    """A probability in per cent, as exact as anybody knows it."""
    percent = probability * 100
    if percent < 1:
        return "under 1 %"
    return f"{percent:.0f} %" if percent < 99.5 else "over 99 %"


def end_words(step: Step) -> Iterator[str]:
    """What stands at an end of the chart: what to mend, the likeliest first."""
    if step.ending is None:
        yield f"Rare; read on from here: {step.groups[0].suspects[0].what}"
        return
    repairs = step.ending.repair
    for repair in repairs[:MOST_REPAIRS]:
        yield repair if repair == repairs[0] else f"or: {repair}"
    if len(repairs) > MOST_REPAIRS:
        yield f"or {len(repairs) - MOST_REPAIRS} rarer"
