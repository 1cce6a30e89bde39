"""Where the findings are marked: beside the terminals and on the leads that they speak of."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from typing import TypeVar

from wirecheck.drawing.connections.blocks import End, Sketch
from wirecheck.model.diagram import Diagram, Lead, Terminal
from wirecheck.model.finding import Finding

MARK_PT = 6.0
"""Radius of a mark's ring on this sheet: two fit on neighbouring terminals."""
MARK_ROOM_PT = 14.0

_Place = TypeVar("_Place")


@dataclass
class Marks:
    """Numbers of the findings, from 1 in the order of the list, by the place that shows them.

    Attributes:
        at_end: beside a lead's end.
        at_terminal: beside a terminal on which no lead lands.
        at_part: in a part's heading, for what concerns the device as such.
        leads: numbers of the leads that some finding speaks of.
    """

    at_end: dict[End, list[int]] = field(default_factory=dict)
    at_terminal: dict[Terminal, list[int]] = field(default_factory=dict)
    at_part: dict[str, list[int]] = field(default_factory=dict)
    leads: set[int] = field(default_factory=set)


def marks_of(diagram: Diagram, sketch: Sketch, findings: Sequence[Finding]) -> Marks:
    """Find a place for every finding that speaks of something drawn."""
    marks = Marks()
    ends_at = {row.terminal: row.ends for block in sketch.blocks for row in block.rows}
    for number, finding in enumerate(findings, start=1):
        told: set[Terminal] = set()
        for lead in finding.lead_numbers:
            end = _better_end(lead, diagram.leads[lead], finding.at_terminals, sketch)
            _note(marks.at_end, end, number)
            marks.leads.add(lead)
            told.add(_terminal(diagram.leads[lead], end))
        for terminal in finding.at_terminals:
            if terminal in told:
                continue
            if ends_at.get(terminal):
                _note(marks.at_end, ends_at[terminal][0], number)
            elif terminal in ends_at:
                _note(marks.at_terminal, terminal, number)
            elif terminal.part in diagram.parts:
                _note(marks.at_part, terminal.part, number)
        if not finding.lead_numbers and not finding.at_terminals:
            for part in _parts_at(diagram, finding):
                _note(marks.at_part, part, number)
    return marks


def _note(places: dict[_Place, list[int]], place: _Place, number: int) -> None:
    numbers = places.setdefault(place, [])
    if number not in numbers:
        numbers.append(number)


def _terminal(lead: Lead, end: End) -> Terminal:
    return lead.b if end.at_b else lead.a


def _better_end(number: int, lead: Lead, concerned: Iterable[Terminal], sketch: Sketch) -> End:
    """Choose the end that lies on a block, rather at a terminal that the finding names."""
    named = set(concerned)
    ends = (End(number, at_b=False), End(number, at_b=True))
    return min(ends, key=lambda end: (end not in sketch.at, _terminal(lead, end) not in named))


def _parts_at(diagram: Diagram, finding: Finding) -> Iterable[str]:
    """Return the parts whose statement holds the place of a finding."""
    span = finding.span
    for key, part in diagram.parts.items():
        here = part.span
        if here.source is span.source and here.start <= span.start and span.end <= here.end:
            yield key
