"""The ladder sheet as a whole: its pieces in columns, the findings marked, the frame round it."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator

from wirecheck.check.engine import Checked
from wirecheck.circuit.nets import Nets
from wirecheck.circuit.wire_numbers import wire_numbers
from wirecheck.drawing.canvas import Canvas
from wirecheck.drawing.geometry import Point
from wirecheck.drawing.ladder.branches import Branch, branches
from wirecheck.drawing.ladder.element import SAFETY_NOTE
from wirecheck.drawing.ladder.ignition import CABLE_WIDTH, LEAST_WIDTH, draw_ignition
from wirecheck.drawing.ladder.layout import Layout, lay_out
from wirecheck.drawing.ladder.lead_list import draw_lead_list, findings_by_lead
from wirecheck.drawing.ladder.links import draw_links
from wirecheck.drawing.ladder.marking import mark_findings
from wirecheck.drawing.ladder.packing import Arrangement, packed
from wirecheck.drawing.ladder.plan import Plan, plan
from wirecheck.drawing.ladder.rails import contact_lines
from wirecheck.drawing.ladder.section import draw_section
from wirecheck.drawing.ladder.work import Work
from wirecheck.drawing.sheet import PAPERS, TitleBlock, framed, paper_for, title_block
from wirecheck.model.diagram import Terminal

ID_PREFIX = "ladder-"
AT_REST = (
    "Switches are drawn at rest: power off, cold, no pressure, no flow, no call. The numbers at the"
    " left are lines; beside a coil stand the lines of its contacts, underlined where they break."
)
"""Practice of JIC EMP-1 and of the annexes of NFPA 79, from memory."""
_LEAST_WIDTH = 3.0
"""Rails are at least so many cells apart."""
_SHORT_RUNG = 8.0
"""Where that saves paper, rungs wider than so many cells are cut."""


def ladder_sheet(checked: Checked, *, date: str = "") -> Canvas:
    """Draw how a checked diagram works, its findings marked.

    Any diagram can be drawn, the wrong ones too: what is on no complete way between two rails has a
    section of its own, and every lead stands in the list of leads.

    Args:
        checked: the diagram and what was found in it.
        date: for the title block, as it shall be printed.
    """
    laid_out = plan(checked.nets)
    block = title_block(checked, "Ladder", date=date, notes=notes_of(laid_out))
    sheet, places = drawn(checked, laid_out, block)
    mark_findings(sheet, checked.diagram, checked.findings, places)
    return framed(sheet, block)


def notes_of(laid_out: Plan) -> tuple[str, ...]:
    """Say how the ladder is to be read, and what is not on it."""
    return (f"{AT_REST} {SAFETY_NOTE}", *_spare_note(laid_out.spare))


def drawn(
    checked: Checked, laid_out: Plan, block: TitleBlock
) -> tuple[Canvas, dict[Terminal, Point]]:
    """Draw the pieces without frame and marks, and return where each terminal came to lie."""
    sheet = Canvas(title=checked.diagram.title, id_prefix=ID_PREFIX)
    places: dict[Terminal, Point] = {}
    for piece, corner in _arranged(checked, laid_out, block):
        sheet.place(piece.canvas, *corner)
        for terminal, at in piece.places.items():
            places.setdefault(terminal, at.moved(*corner))
    return sheet, places


def _arranged(checked: Checked, laid_out: Plan, block: TitleBlock) -> Iterable[tuple[Work, Point]]:
    """Return the pieces in the style that needs the smallest paper, each with its corner on it."""
    smallest = min(paper.width * paper.height for paper in PAPERS[block.series])
    best: tuple[list[Work], Arrangement] | None = None
    for most, in_line in _STYLES:
        for pieces in _pieces(checked, laid_out, most, in_line=in_line):
            ends = [(box.right, box.bottom) for box in (piece.canvas.bounds() for piece in pieces)]
            arrangement = packed(ends, lambda width, height: paper_for(width, height, block))
            if best is None or arrangement.area < best[1].area:
                best = pieces, arrangement
        if best is None or best[1].area <= smallest:
            break
    return zip(best[0], best[1].corners, strict=True) if best else ()


_STYLES = tuple((most, in_line) for most in (math.inf, _SHORT_RUNG) for in_line in (True, False))
"""Which rungs are cut, and whether the rails of all circuits stand below each other.

From the plainest on; one further down must save paper to be chosen.
"""
_LIST_COLUMNS = (2, 1, 3, 4)


def _pieces(
    checked: Checked, laid_out: Plan, most: float, *, in_line: bool
) -> Iterator[list[Work]]:
    """Draw every section on a canvas of its own; the choices differ in the list of leads."""
    rungs = [section.tree for section in laid_out.sections if section.tree is not None]
    widths = [lay_out(tree, _LEAST_WIDTH, most).width for tree in rungs]
    least = max(widths, default=_LEAST_WIDTH) if in_line else _LEAST_WIDTH
    layouts = {id(tree): lay_out(tree, least, most) for tree in rungs}
    for tree in (one.tree for one in laid_out.ignition):
        if tree is not None:
            layouts[id(tree)] = lay_out(tree, max(lay_out(tree).width + CABLE_WIDTH, LEAST_WIDTH))
    links = [(link, lay_out(link.tree)) for link in laid_out.links]
    blank = _blank(checked.nets, [*layouts.values(), *(layout for _, layout in links)])
    works = []
    for section in laid_out.sections:
        works.append(blank.anew())
        draw_section(works[-1], section, layouts.get(id(section.tree)), least)
    for ignition in laid_out.ignition:
        works.append(blank.anew())
        draw_ignition(works[-1], ignition, layouts.get(id(ignition.tree)))
    if links:
        works.append(blank.anew())
        draw_links(works[-1], links)
    if not checked.diagram.leads and works:
        yield works
    for columns in _LIST_COLUMNS if checked.diagram.leads else ():
        lead_list = blank.anew()
        draw_lead_list(lead_list, columns, findings_by_lead(checked.findings))
        yield [*works, lead_list]


def _blank(nets: Nets, layouts: Iterable[Layout]) -> Work:
    """Return an empty piece that knows on which line everything stands."""
    everything = tuple(branches(nets))
    lines: dict[int, int] = {}
    first = 1
    for layout in layouts:
        lines |= {cell.leaf.branch.number: first + cell.row for cell in layout.cells}
        first += layout.rows
    contacts = contact_lines(lines, everything)
    return Work(Canvas(id_prefix=ID_PREFIX), nets, wire_numbers(nets), everything, lines, contacts)


def _spare_note(spare: Iterable[Branch]) -> tuple[str, ...]:
    """Name the contacts that are not drawn because no lead lands on one of their ends."""
    named = dict.fromkeys(f"{b.part.name} {b.name}".strip() for b in spare)
    return (f"Not drawn, as not wired: {', '.join(named)}.",) if named else ()
