"""The line of the text a finding points at, with the place underlined."""

from __future__ import annotations

from typing import NamedTuple

from wirecheck.model.text import Span
from wirecheck.report.visible import cells, visible

_CUT = "..."


class Excerpt(NamedTuple):
    """One line of a text: what stands before the place, the place, what stands behind it."""

    line: int
    before: str
    place: str
    behind: str

    def shown(self) -> str:
        """The line behind its number."""
        return f"{self.line:>4} | {self.before}{self.place}{self.behind}"

    def underline(self) -> str:
        """The line that stands below it."""
        return f"     | {' ' * cells(self.before)}{'^' * max(1, cells(self.place))}"


def excerpt(span: Span, width: int) -> Excerpt | None:
    """Return the line of a place, shortened to ``width`` cells round it.

    A place of several lines is shown to the end of its first one. A blank line gives None: there
    is nothing to see.
    """
    start, stop = span.source.line_span(span.start)
    line = span.source.text[start:stop].rstrip("\r\n")
    if not line.strip():
        return None
    room = width - len("1234 | ")
    at, to = span.start - start, max(span.end, span.start) - start
    # A line may be megabytes long: only what can be shown is looked at.
    before = visible(line[max(0, at - room) : at])
    place, behind = visible(line[at:to][:room]), visible(line[to:][:room])
    if at > room or cells(before) + cells(place) + cells(behind) > room or len(line) - to > room:
        before = _tail(before, max(room // 3, room - cells(place) - cells(behind)))
        place = _head(place, room - cells(before))
        behind = _head(behind, room - cells(before) - cells(place))
    return Excerpt(span.line, before, place, behind)


def _head(text: str, room: int) -> str:
    if cells(text) <= room:
        return text
    kept = text[: max(0, room - len(_CUT))]
    while cells(kept) > room - len(_CUT) and kept:
        kept = kept[:-1]
    return kept + _CUT if room >= len(_CUT) else ""


def _tail(text: str, room: int) -> str:
    if cells(text) <= room:
        return text
    kept = text[len(text) - room + len(_CUT) :] if room > len(_CUT) else ""
    while cells(kept) > room - len(_CUT) and kept:
        kept = kept[1:]
    return _CUT + kept
