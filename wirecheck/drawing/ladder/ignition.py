"""The high voltage and the flame signal of a burner: from the control, through the gap, and back.

The control's ground terminal is the left rail and the burner's metal the right one. The way back,
the burner ground lead, is drawn at the foot where a spark or a flame current would take it, or is
shown to be missing.
"""

from __future__ import annotations

import networkx as nx

from wirecheck.drawing.canvas import HEAVY, Align, Letters, Tag
from wirecheck.drawing.geometry import Point
from wirecheck.drawing.ladder.layout import Layout
from wirecheck.drawing.ladder.plan import Ignition, real_net
from wirecheck.drawing.ladder.rails import (
    ABOVE_ROW,
    Rails,
    draw_earth,
    draw_section_rungs,
    rails_for,
)
from wirecheck.drawing.ladder.section import HEADING_HEIGHT, draw_heading
from wirecheck.drawing.ladder.work import ROW, SMALL_PT, Work
from wirecheck.drawing.lettering import Face, fitted
from wirecheck.drawing.symbols import supply
from wirecheck.drawing.symbols.symbol import Pose, place
from wirecheck.model.diagram import Part, Terminal

CABLE_WIDTH = 1.6
"""Cells between the control and the burner."""
LEAST_WIDTH = 4.0
"""The rails are at least so many cells apart, for the words on the way back."""
_FOOT_DROP = 32.0


def draw_ignition(work: Work, ignition: Ignition, layout: Layout | None) -> None:
    """Draw the section from the top left of the canvas down."""
    control, burner = ignition.control, ignition.burner
    draw_heading(work, f"High voltage and flame signal, {control.name} to {burner.name}")
    top = HEADING_HEIGHT + ABOVE_ROW + 8
    width = layout.width if layout else LEAST_WIDTH
    rails = rails_for(width, top, (ignition.left, ignition.right))
    rows = layout.rows if layout else 1
    _draw_way_back(work, ignition, rails, top + (rows - 1) * ROW + _FOOT_DROP)
    if layout is not None:
        draw_section_rungs(work, rails, layout, top)
    else:
        note = "no complete way for spark or flame signal"
        middle = Point((rails.left_x + rails.right_x) / 2, top)
        work.canvas.text(middle, note, Letters(8.0, align=Align.CENTRE))


def _draw_way_back(work: Work, ignition: Ignition, rails: Rails, y: float) -> None:
    left, right = Point(rails.left_x, y), Point(rails.right_x, y)
    for net, end in ((rails.left, left), (rails.right, right)):
        work.wire(net, [Point(end.x, rails.top), end], HEAVY)
    middle = Point((left.x + right.x) / 2, y)
    if real_net(rails.left) == real_net(rails.right):
        work.wire(rails.left, [left, right], HEAVY)
        work.write_number(rails.left, middle.moved(0, -6), Align.CENTRE)
        words = "way back: " + _way_words(work, ignition)
    else:
        for end, aside in ((left, 1), (right, -1)):
            stop = end.moved(aside * 60, 0)
            work.wire(rails.left if aside == 1 else rails.right, [end, stop])
            work.canvas.line([stop.moved(0, -5), stop.moved(0, 5)])
        ends = (work.diagram.show(ignition.ground), work.diagram.show(ignition.metal))
        words = "no lead joins {} and {}".format(*ends)
    room = right.x - left.x - 150
    shown = fitted(words, room, 8.0)
    work.canvas.text(
        middle.moved(0, 9), shown, Letters(8.0, align=Align.CENTRE), tag=Tag(title=words)
    )
    _draw_corner(work, ignition.control, ignition.ground, left, rails.left)
    _draw_corner(work, ignition.burner, ignition.metal, right, rails.right)


def _draw_corner(work: Work, part: Part, terminal: Terminal, at: Point, net: int) -> None:
    """Draw a terminal at the foot of a rail, its name, and earth or frame below it."""
    name = work.put_terminal(part, terminal, at)
    inward = 6.0 if part.family == "ignition-control" else -6.0
    align = Align.LEFT if inward > 0 else Align.RIGHT
    style = Letters(SMALL_PT, Face.BOLD, align)
    work.canvas.text(at.moved(inward * 2, 9), f"{part.name}.{name}", style)
    if net >= 0:
        # The burner's half of a net that was split in two would show the same earth again.
        draw_earth(work, at, net)
    for bonded, strength in part.structure.bonds:
        if bonded == terminal.name and strength != "none" and not work.is_earthed(net):
            work.canvas.line([at, at.moved(0, 8)])
            place(work.canvas, supply.FRAME, Pose(at.moved(0, 8)), tag=Tag(classes=("bond",)))
            words = f"touches the appliance: {strength} bond"
            work.canvas.text(at.moved(inward * 2.6, 19), words, Letters(SMALL_PT, align=align))


def _way_words(work: Work, ignition: Ignition) -> str:
    """Return the leads of the way back from the burner to the control."""
    try:
        leads = work.nets.path(ignition.metal, ignition.ground)
    except nx.NetworkXNoPath:
        return ""
    told = [work.diagram.lead_name(work.diagram.leads[number]) for number in leads]
    return ", ".join(told) or "inside the device"
