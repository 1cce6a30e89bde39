"""The ladder sheet as a whole: its pieces in columns, the findings marked, the frame round it."""

from __future__ import annotations

from collections.abc import Iterable

from wirecheck.check.engine import Checked
from wirecheck.circuit.nets import Nets
from wirecheck.drawing.canvas import Canvas
from wirecheck.drawing.geometry import Point
from wirecheck.drawing.ladder.branches import Branch, branches
from wirecheck.drawing.ladder.columns import in_columns
from wirecheck.drawing.ladder.element import SAFETY_NOTE
from wirecheck.drawing.ladder.ignition import CABLE_WIDTH, draw_ignition
from wirecheck.drawing.ladder.layout import Layout, lay_out, size
from wirecheck.drawing.ladder.lead_list import draw_lead_list, findings_by_lead
from wirecheck.drawing.ladder.links import draw_links
from wirecheck.drawing.ladder.marking import mark_findings
from wirecheck.drawing.ladder.plan import Plan, plan
from wirecheck.drawing.ladder.rails import NOTES_WIDTH, contact_lines, rails_for
from wirecheck.drawing.ladder.section import draw_section
from wirecheck.drawing.ladder.work import Work
from wirecheck.drawing.sheet import framed, paper_for, title_block
from wirecheck.drawing.wire_numbers import wire_numbers
from wirecheck.model.diagram import Terminal

ID_PREFIX = "ladder-"
AT_REST = (
    "Switches are drawn at rest: power off, cold, no pressure, no flow, no call. The numbers at the"
    " left are lines; beside a coil stand the lines of its contacts, underlined where they break."
)
"""Practice of JIC EMP-1 and of the annexes of NFPA 79, from memory."""
_LEAST_WIDTH = 3.0
"""Rails are at least so many cells apart."""


def ladder_sheet(checked: Checked, *, date: str = "") -> Canvas:
    """Draw how a checked diagram works, its findings marked.

    Any diagram can be drawn, the wrong ones too: what is on no complete way between two rails has a
    section of its own, and every lead stands in the list of leads.

    Args:
        checked: the diagram and what was found in it.
        date: for the title block, as it shall be printed.
    """
    laid_out = plan(checked.nets)
    notes = (f"{AT_REST} {SAFETY_NOTE}", *_spare_note(laid_out.spare))
    block = title_block(checked, "Ladder", date=date, notes=notes)
    sheet = Canvas(title=checked.diagram.title, id_prefix=ID_PREFIX)
    places: dict[Terminal, Point] = {}
    pieces = _pieces(checked, laid_out)
    ends = [(box.right, box.bottom) for box in (piece.canvas.bounds() for piece in pieces)]
    corners = in_columns(ends, lambda width, height: paper_for(width, height, block))
    for piece, corner in zip(pieces, corners, strict=True):
        sheet.place(piece.canvas, *corner)
        for terminal, at in piece.places.items():
            places.setdefault(terminal, at.moved(*corner))
    mark_findings(sheet, checked.diagram, checked.findings, places)
    return framed(sheet, block)


def _pieces(checked: Checked, laid_out: Plan) -> list[Work]:
    """Draw every section on a canvas of its own."""
    rungs = [section.tree for section in laid_out.sections if section.tree is not None]
    width = max([_LEAST_WIDTH, *(size(tree)[0] for tree in rungs)])
    layouts = {id(tree): lay_out(tree, width) for tree in rungs}
    for ignition in laid_out.ignition:
        if ignition.tree is not None:
            own_width = size(ignition.tree)[0] + CABLE_WIDTH
            layouts[id(ignition.tree)] = lay_out(ignition.tree, own_width)
    links = [(link, lay_out(link.tree)) for link in laid_out.links]
    blank = _blank(checked.nets, [*layouts.values(), *(layout for _, layout in links)])
    works = []
    for section in laid_out.sections:
        works.append(blank.anew())
        draw_section(works[-1], section, layouts.get(id(section.tree)), width)
    for ignition in laid_out.ignition:
        works.append(blank.anew())
        draw_ignition(works[-1], ignition, layouts.get(id(ignition.tree)))
    if links:
        works.append(blank.anew())
        draw_links(works[-1], links)
    if checked.diagram.leads:
        works.append(blank.anew())
        across = rails_for(width, 0, (0, 0)).right_x + NOTES_WIDTH
        draw_lead_list(works[-1], across, findings_by_lead(checked.findings))
    return works


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
