"""What the connection sheet places: parts, splices, and leads that land on neither.

A block has rows, one for each terminal, and each row the ends of the leads that land there. Sizes
along the height are counted in units of the routing grid (`UNIT_PT`); a lead's end takes a slot
of two units.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal, NamedTuple

import networkx as nx

from wirecheck.drawing.lettering import Face, fitted, text_width, wrapped
from wirecheck.model.diagram import Attribute, Diagram, Lead, LeadRole, Part, Splice, Terminal
from wirecheck.model.kind import LinkSpec

UNIT_PT = 6.5
"""Step of the routing grid along the height."""
SLOT = 2
"""Units that a lead's end takes at a terminal."""

NAME_PT = 10.0
SMALL_PT = 8.5
"""Least lettering: 6 points when a sheet is printed one paper size down."""
TERMINAL_PT = 9.0

_NAME_ROOM_PT = 104.0
_LABEL_ROOM_PT = 84.0
_MOST_RATING_LINES = 4
_HEADING_MARGIN_PT = 4.0
_NARROWEST_PT = 62.0
_SPLICE_PT = 36.0
_STRAY_PT = 200.0


class End(NamedTuple):
    """One end of a lead, by the lead's number in the diagram."""

    lead: int
    at_b: bool

    @property
    def other(self) -> End:
        """The lead's other end."""
        return End(self.lead, not self.at_b)


class Row(NamedTuple):
    """A terminal of a block; `label` is cut to the room, `ends` land on it."""

    terminal: Terminal
    label: str
    ends: tuple[End, ...]


class HeadingLine(NamedTuple):
    """A line of a part's heading."""

    text: str
    size_pt: float
    face: Face


@dataclass(frozen=True, slots=True, eq=False)
class Block:
    """Something with a place of its own on the sheet.

    Attributes:
        type: a part's box, a splice's dot, or a lead neither end of which is on a part.
        key: of the part or splice; of a stray lead its number.
        width_pt: least width.
        title: what a page shows when it is pointed at.
        family: what a part is to the checker, else "".
        heading: the lines on top.
        rows: its terminals in the order of the library, as far as leads can land on them.
        links: named links between its terminals, drawn if both are.
        both_sides: leads may leave a row at either edge (terminal strips, splices).
    """

    type: Literal["part", "splice", "stray"]
    key: str
    width_pt: float
    title: str = ""
    family: str = ""
    heading: tuple[HeadingLine, ...] = ()
    rows: tuple[Row, ...] = ()
    links: tuple[LinkSpec, ...] = ()
    both_sides: bool = False

    @property
    def heading_units(self) -> int:
        """Height of the heading on the routing grid."""
        return math.ceil((heading_height(self.heading) + 2 * _HEADING_MARGIN_PT) / UNIT_PT)


def heading_height(lines: tuple[HeadingLine, ...]) -> float:
    """Height of a heading's lines in points."""
    return sum(line.size_pt * 1.2 for line in lines)


class Holder(NamedTuple):
    """A plug (its number among the statements) or a cable (its name)."""

    type: Literal["plug", "cable"]
    name: str


class Sketch(NamedTuple):
    """All blocks, and where each lead's end lies.

    Attributes:
        blocks: parts, splices and stray leads, in the order typed.
        at: block and row of each end that lands on a block.
        far: for each end of a lead between two blocks its other end, and the block of that.
        wires: numbers of the leads between two blocks.
        together: for each block sets of rows that leave at one edge: those of one plug or cable.
    """

    blocks: tuple[Block, ...]
    at: dict[End, tuple[int, int]]
    far: dict[End, tuple[End, int]]
    wires: tuple[int, ...]
    together: tuple[tuple[tuple[int, ...], ...], ...]


def sketch_of(diagram: Diagram) -> Sketch:
    """List what is to be placed."""
    landed = _landed(diagram)
    blocks = [_part_block(part, landed) for part in diagram.parts.values()]
    blocks += [_splice_block(splice, landed) for splice in diagram.splices.values()]
    at = {
        end: (number, row)
        for number, block in enumerate(blocks)
        for row, line in enumerate(block.rows)
        for end in line.ends
    }
    leads = range(len(diagram.leads))
    stray = [n for n in leads if End(n, at_b=False) not in at and End(n, at_b=True) not in at]
    blocks += [Block("stray", str(number), _STRAY_PT) for number in stray]
    far = {end: (end.other, at[end.other][0]) for end in at if end.other in at}
    wires = tuple(n for n in leads if End(n, at_b=False) in far)
    together = tuple(_together(block, diagram) for block in blocks)
    return Sketch(tuple(blocks), at, far, wires, together)


def holder_of(lead: Lead) -> Holder | None:
    """Return what holds a lead together with others: its plug or its cable."""
    if lead.role is LeadRole.PLUG:
        return Holder("plug", str(lead.run))
    return Holder("cable", str(lead.given["in"].value)) if "in" in lead.given else None


def _together(block: Block, diagram: Diagram) -> tuple[tuple[int, ...], ...]:
    graph: nx.Graph[int | Holder] = nx.Graph()
    graph.add_nodes_from(range(len(block.rows)))
    for row, line in enumerate(block.rows):
        holders = (holder_of(diagram.leads[end.lead]) for end in line.ends)
        graph.add_edges_from((row, holder) for holder in holders if holder)
    groups = (
        tuple(sorted(item for item in group if isinstance(item, int)))
        for group in nx.connected_components(graph)
    )
    return tuple(sorted(groups))


def _landed(diagram: Diagram) -> dict[Terminal, list[End]]:
    landed: dict[Terminal, list[End]] = {}
    for number, lead in enumerate(diagram.leads):
        landed.setdefault(lead.a, []).append(End(number, at_b=False))
        landed.setdefault(lead.b, []).append(End(number, at_b=True))
    return landed


def _part_block(part: Part, landed: dict[Terminal, list[End]]) -> Block:
    rows = tuple(_rows(part, landed))
    if part.kind.numbered is not None:
        rows = tuple(sorted(rows, key=_in_number_order))
    heading = tuple(_heading(part))
    both_sides = part.family == "strip"
    labels = sorted((text_width(row.label, TERMINAL_PT) for row in rows), reverse=True)
    # Labels of the two edges side by side; on a strip they stand in the middle.
    label_room = sum(labels[:1] if both_sides else labels[:2]) + 26
    lettered = [text_width(line.text, line.size_pt, line.face) + 10 for line in heading]
    width = max(_NARROWEST_PT, label_room, *lettered)
    return Block(
        type="part",
        key=part.key,
        width_pt=width,
        title=f"{part.name}, {part.kind.title}",
        family=part.family,
        heading=heading,
        rows=rows,
        links=() if both_sides else tuple(link for link in part.structure.links if link.name),
        both_sides=both_sides,
    )


def _in_number_order(row: Row) -> tuple[int, str]:
    name = row.terminal.name
    return (int(name) if name.isascii() and name.isdigit() else 0, name)


def _rows(part: Part, landed: dict[Terminal, list[End]]) -> Iterator[Row]:
    for name, spec in part.structure.terminals.items():
        terminal = part.terminal(name)
        ends = tuple(landed.get(terminal, ()))
        if spec.inner and not ends:
            continue
        label = part.labels[name].text if name in part.labels else name
        yield Row(terminal, fitted(label, _LABEL_ROOM_PT, TERMINAL_PT), ends)


def _heading(part: Part) -> Iterator[HeadingLine]:
    """Yield the name, the kind in words, ratings as typed, named links, what was found wrong."""
    yield HeadingLine(fitted(part.name, _NAME_ROOM_PT, NAME_PT, Face.BOLD), NAME_PT, Face.BOLD)
    if part.kind.title != part.name:
        for line in wrapped(part.kind.title, _NAME_ROOM_PT, SMALL_PT):
            yield HeadingLine(fitted(line, _NAME_ROOM_PT, SMALL_PT), SMALL_PT, Face.PLAIN)
    wrong = part.found_wrong()
    ratings = [_rating(part, a) for a in part.given.values() if a not in wrong]
    links = [link.name for link in part.structure.links if link.name]
    ratings += [f"with {', '.join(links)}"] if links else []
    lines = wrapped(", ".join(ratings), _NAME_ROOM_PT, SMALL_PT) if ratings else []
    if len(lines) > _MOST_RATING_LINES:
        rest = " ".join(lines[_MOST_RATING_LINES - 1 :])
        lines[_MOST_RATING_LINES - 1 :] = [fitted(rest, _NAME_ROOM_PT, SMALL_PT)]
    yield from (HeadingLine(line, SMALL_PT, Face.PLAIN) for line in lines)
    for attribute in wrong:
        words = fitted(f"found {attribute.span.text.strip()}", _NAME_ROOM_PT, SMALL_PT, Face.BOLD)
        yield HeadingLine(words, SMALL_PT, Face.BOLD)


def _rating(part: Part, attribute: Attribute) -> str:
    """Return an attribute as typed; a choice with its name, as “removed” alone says nothing."""
    if attribute.value in part.kind.attributes[attribute.name].choices:
        return f"{attribute.name} {attribute.value}".replace("-", " ")
    return attribute.span.text.strip()


def _splice_block(splice: Splice, landed: dict[Terminal, list[End]]) -> Block:
    name = fitted(splice.name, _LABEL_ROOM_PT, TERMINAL_PT, Face.BOLD)
    heading = (HeadingLine(name, TERMINAL_PT, Face.BOLD),)
    terminal = Terminal(splice.key, "")
    width = max(_SPLICE_PT, text_width(name, TERMINAL_PT, Face.BOLD) + 8)
    row = Row(terminal, "", tuple(landed.get(terminal, ())))
    title = f"splice {splice.name}"
    return Block("splice", splice.key, width, title, "", heading, (row,), both_sides=True)
