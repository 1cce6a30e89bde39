"""A piece of the ladder being drawn: its canvas, the numbers, and where things have come to lie."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from wirecheck.circuit.nets import Nets
from wirecheck.drawing.canvas import LINE, Align, Canvas, Letters, Stroke, Tag
from wirecheck.drawing.geometry import Point
from wirecheck.drawing.ladder.branches import Branch
from wirecheck.drawing.ladder.plan import real_net
from wirecheck.drawing.lettering import Face
from wirecheck.drawing.symbols import joints
from wirecheck.drawing.symbols.symbol import Pose, place
from wirecheck.model.diagram import EARTH, Diagram, Part, Terminal

CELL = 84.0
ROW = 50.0
SMALL_PT = 7.0
TERMINAL_SIZES_PT = (7.0, 6.5, 6.0)
"""A terminal's label is lettered in the largest size that its room allows."""
NUMBER = Letters(7.5, Face.BOLD)
_LEADS_TOLD = 6


@dataclass(frozen=True)
class Work:
    """A piece of the ladder while it is drawn, and what all pieces share.

    Attributes:
        canvas: where the piece is drawn.
        nets: of the diagram.
        numbers: wire number of each net that has one.
        branches: everything the ladder draws.
        lines: number of the line on which each branch stands, by the branch's number.
        contacts: for each coil, by its part and name, the lines of its contacts; true: breaks.
        places: where each terminal came to lie.
    """

    canvas: Canvas
    nets: Nets
    numbers: Mapping[int, str]
    branches: tuple[Branch, ...]
    lines: Mapping[int, int]
    contacts: Mapping[tuple[str, str], set[tuple[int, bool]]]
    places: dict[Terminal, Point] = field(default_factory=dict)

    def anew(self) -> Work:
        """Return an empty piece that shares what is shared."""
        return replace(self, canvas=Canvas(id_prefix=self.canvas.id_prefix), places={})

    @property
    def diagram(self) -> Diagram:
        """The diagram that is drawn."""
        return self.nets.diagram

    def number(self, net: int) -> str:
        """Return the wire number of a net of the plan; empty where no lead lands."""
        return self.numbers.get(real_net(net), "")

    def wire(self, net: int, points: Sequence[Point], stroke: Stroke = LINE) -> None:
        """Draw wire of a net."""
        self.canvas.line(points, stroke, tag=self.wire_tag(net))

    def wire_tag(self, net: int) -> Tag:
        """Return classes and title by which a page finds the wire of a net."""
        number = self.number(net)
        if not number:
            return Tag(classes=("wire",))
        return Tag("", ("wire", f"wire-{number}"), f"wire {number}: {self._leads_of(net)}")

    def _leads_of(self, net: int) -> str:
        members = self.nets.members[real_net(net)]
        found = sorted({lead for terminal in members for lead in self.nets.leads_at(terminal)})
        told = [self.diagram.lead_name(self.diagram.leads[lead]) for lead in found[:_LEADS_TOLD]]
        more = len(found) - len(told)
        return "; ".join(told) + (f"; and {more} more" if more > 0 else "")

    def write_number(self, net: int, at: Point, align: Align) -> None:
        """Letter the wire number of a net beside its wire."""
        self.canvas.text(at, self.number(net), NUMBER._replace(align=align), tag=self.wire_tag(net))

    def terminals_at(self, part: Part, terminal: Terminal) -> list[Terminal]:
        """Return the terminals of the part on the net of `terminal` that a technician finds there.

        Those on which leads land, else the terminal itself; for the burner ground, and a point
        inside the device that is joined to it, always the burner ground.
        """
        net = self.nets.net(terminal)
        same = [
            Terminal(part.key, name)
            for name, spec in part.structure.terminals.items()
            if not spec.inner and self.nets.net(Terminal(part.key, name)) == net
        ]
        ground = [one for one in same if one in part.with_role("burner-ground")]
        if ground and (terminal in ground or terminal not in same):
            return ground
        if terminal in same and self.nets.is_wired(terminal):
            return [terminal]
        return [other for other in same if self.nets.is_wired(other)] or [terminal]

    def label(self, part: Part, terminal: Terminal) -> str:
        """Return what is printed at a terminal, without the part's name."""
        printed = part.labels.get(terminal.name)
        return printed.text if printed else terminal.name

    def put_terminal(
        self, part: Part, terminal: Terminal, at: Point, *, circle: bool = True
    ) -> str:
        """Draw a terminal's circle, remember its place, and return its label."""
        found = self.terminals_at(part, terminal)
        for one in (terminal, *found):
            self.places.setdefault(one, at)
        name = "/".join(self.label(part, one) for one in found)
        tag = Tag(classes=("terminal",), title=f"{part.name}.{name}")
        if circle:
            place(self.canvas, joints.TERMINAL, Pose(at), tag=tag)
        return name

    def is_earthed(self, net: int) -> bool:
        """Say whether a net is joined to the unit's earth."""
        return self.nets.net(EARTH) == real_net(net)

    def primary_lines(self, part: Part) -> list[int]:
        """Return the lines on which primary windings of a part stand."""
        windings = (b for b in self.branches if b.type == "winding" and b.part is part)
        return [self.lines[branch.number] for branch in windings if branch.number in self.lines]
