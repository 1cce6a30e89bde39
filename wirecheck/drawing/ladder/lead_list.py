"""Every lead under its wire number: none is lost, whatever the rungs show."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from wirecheck.drawing.canvas import Letters, Tag
from wirecheck.drawing.geometry import Point
from wirecheck.drawing.ladder.section import HEADING_HEIGHT, draw_heading
from wirecheck.drawing.ladder.work import NUMBER, Work
from wirecheck.drawing.lettering import fitted
from wirecheck.model.diagram import Lead
from wirecheck.model.finding import Finding

_ENTRY = Letters(8.0)
_PITCH = 11.0
_ENTRY_WIDTH = 245.0
_NUMBER_ROOM = 26.0
_ROOM = _ENTRY_WIDTH - _NUMBER_ROOM - 8
_UNTOLD = frozenset({"number", "length"})
_VALUE_SAYS_IT = frozenset({"colour", "size", "rating"})


class _Entry(NamedTuple):
    number: str
    lead: int
    words: str


def draw_lead_list(work: Work, columns: int, findings: Mapping[int, list[int]]) -> None:
    """Draw the list from the top left of the canvas down.

    Args:
        work: the piece.
        columns: how many entries stand side by side.
        findings: numbers of the findings that speak of a lead, by the lead's number.
    """
    draw_heading(work, "Leads by wire number")
    entries = list(_entries(work))
    rows = -(-len(entries) // columns)
    shown = ""
    for place, entry in enumerate(entries):
        column, row = divmod(place, rows)
        at = Point(column * _ENTRY_WIDTH, HEADING_HEIGHT + 8 + row * _PITCH)
        if entry.number != shown or row == 0:
            work.canvas.text(at, entry.number, NUMBER)
        shown = entry.number
        told = "".join(f" [{number}]" for number in findings.get(entry.lead, ()))
        words = fitted(entry.words, _ROOM - 18 * bool(told), _ENTRY.size_pt) + told
        tag = Tag(f"lead-{entry.lead}", ("lead", f"lead-{entry.lead}"), entry.words)
        work.canvas.text(at.moved(_NUMBER_ROOM, 0), words, _ENTRY, tag=tag)


def _entries(work: Work) -> Iterator[_Entry]:
    """Yield the leads in the order of their wire numbers; a broken one under both."""
    by_net: dict[int, list[int]] = {net: [] for net in work.numbers}
    for number, lead in enumerate(work.diagram.leads):
        for net in dict.fromkeys((work.nets.net(lead.a), work.nets.net(lead.b))):
            by_net[net].append(number)
    for net, leads in sorted(by_net.items(), key=lambda one: _by_number(work.numbers[one[0]])):
        for number in leads:
            lead = work.diagram.leads[number]
            words = ", ".join([work.diagram.lead_name(lead), *_attributes(lead)])
            yield _Entry(work.numbers[net], number, words)


def _by_number(text: str) -> tuple[bool, int, str]:
    """Sort numbers as numbers, before any other text."""
    is_number = text.isascii() and text.isdigit()
    return not is_number, int(text) if is_number else 0, text


def _attributes(lead: Lead) -> Iterator[str]:
    for attribute in lead.given.values():
        if attribute.name in _UNTOLD:
            continue
        value = str(attribute.value)
        if attribute.name in _VALUE_SAYS_IT:
            yield value
        else:
            yield attribute.name if value == "yes" else f"{attribute.name} {value}"


def findings_by_lead(findings: tuple[Finding, ...]) -> dict[int, list[int]]:
    """Return for each lead the numbers, from 1, of the findings that speak of it."""
    found: dict[int, list[int]] = {}
    for number, finding in enumerate(findings, 1):
        for lead in finding.lead_numbers:
            found.setdefault(lead, []).append(number)
    return found
