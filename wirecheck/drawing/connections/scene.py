"""Everything about a sheet that is known before its first line is drawn."""

from __future__ import annotations

from typing import NamedTuple

from wirecheck.check.engine import Checked
from wirecheck.circuit.line_leads import line_leads
from wirecheck.drawing.connections.blocks import UNIT_PT, Block, End, Sketch, sketch_of
from wirecheck.drawing.connections.edges import LEFT, Side
from wirecheck.drawing.connections.faces import Place
from wirecheck.drawing.connections.lead_words import LeadWriter
from wirecheck.drawing.connections.marking import Marks, marks_of
from wirecheck.drawing.connections.passages import Plan
from wirecheck.drawing.connections.routing import Routed, rough_size, routed
from wirecheck.drawing.connections.stubs import (
    Bundle,
    Strip,
    Stub,
    bundles,
    strips,
    stubs_of,
    with_cables,
)
from wirecheck.drawing.geometry import Box, Point
from wirecheck.model.diagram import Diagram


class Anchor(NamedTuple):
    """A place at the edge of a block, and which edge that is."""

    at: Point
    side: Side

    def out(self, distance: float) -> Point:
        """Return the place so far from the edge, away from the block."""
        return self.at.moved(-distance if self.side == LEFT else distance, 0)


class Scene(NamedTuple):
    """A laid-out diagram: what stands where, and what is lettered beside it.

    ``on_line`` are the numbers of the leads at line voltage.
    """

    diagram: Diagram
    sketch: Sketch
    plan: Plan
    routed: Routed
    stubs: dict[End, Stub]
    bundles: list[Bundle]
    strips: dict[tuple[int, Side], Strip]
    marks: Marks
    column_of: dict[int, int]
    on_line: frozenset[int]

    def block(self, number: int) -> Block:
        """Return a block by its number."""
        return self.sketch.blocks[number]

    def box(self, number: int) -> Box:
        """Return where a block lies."""
        return self.routed.boxes[number]

    def places(self, number: int) -> dict[int, Place]:
        """Return the places of a block's terminals by row."""
        rows = range(len(self.block(number).rows))
        return {row: self.plan.faces.places[number, row] for row in rows}

    def middle(self, number: int, row: int) -> float:
        """Return the height of a terminal on the sheet."""
        place = self.plan.faces.places[number, row]
        return self.box(number).top + (place.first + place.last) / 2 * UNIT_PT

    def edge(self, number: int, side: Side, y: float) -> Anchor:
        """Return a place at the edge of a block."""
        box = self.box(number)
        return Anchor(Point(box.left if side == LEFT else box.right, y), side)

    def anchor(self, end: End) -> Anchor:
        """Return where a lead's end leaves its block."""
        pin = self.plan.faces.pins[end]
        return self.edge(pin.block, pin.side, self.box(pin.block).top + pin.offset * UNIT_PT)

    def strip(self, number: int, side: Side) -> Strip:
        """Return the strip along a block's edge."""
        return self.strips[self.column_of[number], side]


class SceneBuilder:
    """Lays out one checked diagram for any plan."""

    def __init__(self, checked: Checked) -> None:
        """Work out what does not depend on the plan."""
        self.sketch = sketch_of(checked.diagram)
        self._diagram = checked.diagram
        self._marks = marks_of(checked.diagram, self.sketch, checked.findings)
        self._on_line = line_leads(checked.nets)
        writer = LeadWriter(checked.nets, self._on_line)
        self._stubs = stubs_of(checked.diagram, self.sketch, writer, self._marks)

    def rough_size(self, plan: Plan) -> tuple[float, float]:
        """Return about the width and height of a plan's layout."""
        _, strip_of = self._beside(plan, bundles(self._diagram, plan))
        return rough_size(self.sketch, plan, _widths(strip_of))

    def _beside(
        self, plan: Plan, held: list[Bundle]
    ) -> tuple[dict[End, Stub], dict[tuple[int, Side], Strip]]:
        stubs = with_cables(self._stubs, held)
        return stubs, strips(self.sketch, plan, stubs, self._marks, held)

    def build(self, plan: Plan) -> Scene:
        """Return the layout of a plan."""
        held = bundles(self._diagram, plan)
        stubs, strip_of = self._beside(plan, held)
        found = routed(self.sketch, plan, _widths(strip_of))
        column_of = {block: c for c, column in enumerate(plan.columns) for block in column}
        return Scene(
            self._diagram,
            self.sketch,
            plan,
            found,
            stubs,
            held,
            strip_of,
            self._marks,
            column_of,
            self._on_line,
        )


def _widths(strip_of: dict[tuple[int, Side], Strip]) -> dict[tuple[int, Side], float]:
    return {edge: strip.width for edge, strip in strip_of.items()}
