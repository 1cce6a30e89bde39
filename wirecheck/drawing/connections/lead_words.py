"""What is lettered at a lead's end: wire number, colour letters, gauge, and what else matters.

No meaning rests on colour alone: every lead says its colour in the letters of IEC 60757.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from wirecheck.circuit.nets import Nets
from wirecheck.circuit.wire_numbers import wire_numbers
from wirecheck.drawing.connections.blocks import SMALL_PT, End
from wirecheck.drawing.ink import Ink, colour_letters, ink_for
from wirecheck.drawing.lettering import Face, fitted, text_width
from wirecheck.model.diagram import (
    OPEN_END,
    UNKNOWN_END,
    Cable,
    Diagram,
    Lead,
    LeadRole,
    key_of,
)
from wirecheck.model.quantity import Quantity

LINE_WORD = "line"
"""Marks a lead at line voltage."""
_NUMBER_ROOM_PT = 44.0
_WORDS_ROOM_PT = 110.0
_BLANK_PT = 3.0


class LeadWords(NamedTuple):
    """The lettering at one end; the wire number is bold."""

    number: str
    words: str

    def in_cable(self, name: str) -> LeadWords:
        """Return the same lettering with the name of the cable that the lead runs in."""
        words = f"{self.words} in {name}".strip()
        return self._replace(words=fitted(words, _WORDS_ROOM_PT, SMALL_PT))

    @property
    def width_pt(self) -> float:
        """Room that it takes."""
        words = text_width(self.words, SMALL_PT)
        return self.words_at_pt + words

    @property
    def words_at_pt(self) -> float:
        """Where the words begin, from the beginning of the number."""
        number = text_width(self.number, SMALL_PT, Face.BOLD)
        return number + (_BLANK_PT if number and self.words else 0.0)


class LeadWriter:
    """Words the leads of one diagram."""

    def __init__(self, nets: Nets, on_line: frozenset[int]) -> None:
        """Number the nets (see `wire_numbers`); ``on_line`` are the leads at line voltage."""
        self._nets = nets
        self._on_line = on_line
        self._numbers: Mapping[int, str] = wire_numbers(nets)

    def at(self, end: End) -> LeadWords:
        """Return the lettering at a lead's end."""
        lead = self._nets.diagram.leads[end.lead]
        if "number" in lead.given:
            number = str(lead.given["number"].value)
        else:
            number = self._numbers[self._nets.net_of[lead.b if end.at_b else lead.a]]
        line = LINE_WORD if end.lead in self._on_line else ""
        words = " ".join(filter(None, [line, *self._words(lead)]))
        return LeadWords(
            fitted(number, _NUMBER_ROOM_PT, SMALL_PT, Face.BOLD),
            fitted(words, _WORDS_ROOM_PT, SMALL_PT) if words else "",
        )

    def _words(self, lead: Lead) -> Iterator[str]:
        if colour_of(lead):
            yield colour_letters(colour_of(lead))
        yield self._size(lead)
        if "ignition-cable" in lead.given:
            yield "ignition"
        if lead.role is LeadRole.JUMPER:
            yield "jumper"
        yield from _found_wrong(lead)
        for far in (lead.a, lead.b):
            if far.part == OPEN_END:
                yield "capped" if "capped" in lead.given else "loose end"
            elif far.part == UNKNOWN_END:
                yield "not traced"

    def _size(self, lead: Lead) -> str:
        """Return the gauge; beside a colour its number alone means AWG, as the legend says."""
        size = lead.given["size"].value if "size" in lead.given else None
        cable = cable_of(lead, self._nets.diagram)
        if isinstance(size, Quantity):
            gauge, unit = f"{size.low:g}", size.unit
        elif cable is not None:
            gauge, unit = f"{cable.gauge_awg:g}", "AWG"
        else:
            return ""
        return gauge if unit == "AWG" and colour_of(lead) else f"{gauge} {unit}"


def cable_of(lead: Lead, diagram: Diagram) -> Cable | None:
    """Return the cable that a lead runs in."""
    run_in = lead.given.get("in")
    return diagram.cables.get(key_of(str(run_in.value))) if run_in else None


def colour_of(lead: Lead) -> str:
    """Return the colour as typed, or ""."""
    return str(lead.given["colour"].value) if "colour" in lead.given else ""


def lead_ink(lead: Lead) -> Ink:
    """Return the paint of a lead."""
    return ink_for(colour_of(lead))


def _found_wrong(lead: Lead) -> Iterator[str]:
    if "broken" in lead.given:
        yield "BROKEN"
    if "loose" in lead.given:
        yield f"loose, {lead.given['loose'].value}"
    if "touches" in lead.given:
        yield f"touches {lead.given['touches'].value}"
