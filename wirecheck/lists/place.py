"""Where a lead lands, as a list names it: part, terminal, and the label printed there."""

from __future__ import annotations

from typing import NamedTuple

from wirecheck.model.diagram import EARTH, OPEN_END, UNKNOWN_END, Diagram, Terminal


class Place(NamedTuple):
    """A terminal, a splice, the earth, or an end that lands nowhere.

    Attributes:
        part: the name of the part or splice; "earth" for the unit's earth, "" for a loose end.
        terminal: by the part library's name; "" where there is only one place.
        label: what is printed there, where that is something else.
        shown: all of it as people read it: ``box.TH``.
    """

    part: str
    terminal: str
    label: str
    shown: str


def place_of(diagram: Diagram, end: Terminal) -> Place:
    """Name the place of an end."""
    shown = diagram.show(end)
    if end.part in (OPEN_END, UNKNOWN_END):
        return Place("", "", "", shown)
    if end == EARTH or end.part in diagram.splices:
        return Place(shown, "", "", shown)
    part = diagram.parts[end.part]
    label = part.labels.get(end.name)
    return Place(part.name, end.name, label.text if label else "", shown)
