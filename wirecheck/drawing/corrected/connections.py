"""The connection sheet of a correction: what runs where now, and where it is to run."""

from __future__ import annotations

from collections.abc import Iterator

from wirecheck.correct.rewired import Rewired
from wirecheck.drawing.canvas import Canvas, Tag
from wirecheck.drawing.connections.blocks import End
from wirecheck.drawing.connections.lead_lines import routed_line, stub_line
from wirecheck.drawing.connections.scene import Scene
from wirecheck.drawing.connections.sheet import drawn, notes_of, scene_of
from wirecheck.drawing.corrected.both import Both, both, corrected_block
from wirecheck.drawing.geometry import Point
from wirecheck.drawing.marks import lead_to_add, lead_to_take_away
from wirecheck.drawing.sheet import TitleBlock, framed

LEGEND = (
    "Dashed and crossed out: take this lead away and cap what stays in place. Hollow with plus"
    " signs: run this lead. A lead that moves is shown both ways."
)


def corrected_connections(state: Rewired, date: str = "") -> Canvas:
    """Draw what runs where, the leads to take away and those to add marked.

    Args:
        state: the diagram as found, with the changes that mend it.
        date: as it shall be printed in the title block.
    """
    shown = both(state)
    legend = (LEGEND,) if shown.away or shown.added else ()
    notes = (*legend, *notes_of(shown.checked.diagram))
    block = corrected_block(state, shown.checked, "Connections", date, notes)
    return marked_connections(shown, block)


def marked_connections(shown: Both, block: TitleBlock) -> Canvas:
    """Draw what runs where in a frame, the leads to take away and those to add marked."""
    scene = scene_of(shown.checked, block)
    canvas = drawn(scene, ())
    _mark(canvas, scene, shown)
    return framed(canvas, block)


def _mark(canvas: Canvas, scene: Scene, shown: Both) -> None:
    for numbers, mark, word in (
        (shown.away, lead_to_take_away, "take away"),
        (shown.added, lead_to_add, "add"),
    ):
        for lead in sorted(numbers):
            name = f"{word}: {scene.diagram.lead_name(scene.diagram.leads[lead])}"
            tag = Tag(f"edit-{lead}", ("edit", word.replace(" ", "-")), name)
            for line in lines_of(scene, lead):
                mark(canvas, line, tag, clear=lettered(scene, lead))


def lines_of(scene: Scene, lead: int) -> Iterator[list[Point]]:
    """Yield the line of a lead: between two blocks, or from one to earth or nowhere."""
    if lead in scene.routed.lines:
        yield routed_line(scene, lead)
        return
    for end in (End(lead, at_b=False), End(lead, at_b=True)):
        if end in scene.sketch.at:
            yield from filter(None, [stub_line(scene, end)])


def lettered(scene: Scene, lead: int) -> tuple[float, float]:
    """Return how far the lettering at either end of a lead reaches along it."""
    pins = scene.plan.faces.pins
    widths = [
        scene.strip(pins[end].block, pins[end].side).width if end in pins else 0.0
        for end in (End(lead, at_b=False), End(lead, at_b=True))
    ]
    return widths[0], widths[1]
