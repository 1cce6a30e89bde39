"""The connection sheet of a checked diagram: layout, leads, devices, frame."""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator, Sequence

from wirecheck.check.engine import Checked
from wirecheck.drawing.canvas import Canvas, Letters
from wirecheck.drawing.connections.blocks import UNIT_PT
from wirecheck.drawing.connections.device_boxes import draw_part, draw_splice
from wirecheck.drawing.connections.lead_lines import (
    draw_bundle,
    draw_routed,
    draw_stray,
    draw_stub,
)
from wirecheck.drawing.connections.lead_words import cable_of
from wirecheck.drawing.connections.placing import Placer
from wirecheck.drawing.connections.scene import Scene, SceneBuilder
from wirecheck.drawing.geometry import Point
from wirecheck.drawing.marks import NumberedFinding
from wirecheck.drawing.sheet import TitleBlock, framed, paper_for, title_block
from wirecheck.model.diagram import Diagram

ID_PREFIX = "connections-"
LEGEND = (
    "At each end of a lead: wire number (one for each net), colour in the letters of IEC 60757"
    " (BK black, BN brown, RD red, OG orange, YE yellow, GN green, BU blue, VT violet, GY grey,"
    " WH white, PK pink, TQ turquoise; WH/RD is white with a red tracer), gauge in AWG unless"
    " another unit stands there. The heaviest lines, lettered “line”, are at line voltage, or are"
    " once a contact closes. Leads that cross are not joined; a dot is a splice. A grey housing is"
    " a plug, a ring holds the leads of one cable. Positions are not those in the unit."
)

_COLUMN_PT = 320.0
"""What a column takes with the street beside it, roughly."""
_LYING, _UPRIGHT = 1.65, 1.25
"""Longer side of the room for a drawing by its shorter one, on a lying and an upright sheet."""
_IMPROVED = 3
"""So many numbers of columns are worked out in full: those whose first plan fits best."""


def connection_sheet(checked: Checked, date: str = "") -> Canvas:
    """Draw what runs where, with the findings marked.

    Any diagram can be drawn, the wrong ones and the unfinished ones too.

    Args:
        checked: the diagram with its nets and findings.
        date: as it shall be printed in the title block.

    Returns:
        The framed sheet; the same diagram gives the same sheet to the last byte.
    """
    block = title_block(checked, "Connections", date=date, notes=tuple(notes_of(checked.diagram)))
    return framed(drawn(scene_of(checked, block), block.findings), block)


def notes_of(diagram: Diagram) -> Iterator[str]:
    """Say what each cable holds, and how the leads are lettered."""
    yield from _cables(diagram)
    if diagram.leads:
        yield LEGEND


def _cables(diagram: Diagram) -> Iterator[str]:
    """Say of each cable how many conductors are used and how many are spare."""
    used = Counter(cable.key for lead in diagram.leads if (cable := cable_of(lead, diagram)))
    for key, cable in diagram.cables.items():
        length = f", {cable.given['length'].value}" if "length" in cable.given else ""
        spare = cable.conductors - used[key]
        rest = f"{spare} spare" if spare >= 0 else f"{-spare} more than it has"
        yield (
            f"Cable {cable.name}: {cable.gauge_awg:g}/{cable.conductors}{length};"
            f" {used[key]} used, {rest}."
        )


def scene_of(checked: Checked, block: TitleBlock) -> Scene:
    """Lay the diagram out in as many columns as need the smallest sheet."""
    builder = SceneBuilder(checked)
    placer = Placer(builder.sketch)
    first = [placer.first(count) for count in _counts(len(builder.sketch.blocks), placer.height)]
    sized = sorted((_scale(*builder.rough_size(plan)), n) for n, plan in enumerate(first))
    scenes = [builder.build(placer.improved(first[n])) for _, n in sized[:_IMPROVED]]
    return min(scenes, key=lambda scene: (*_paper(scene, block), scene.plan.cost))


def _counts(blocks: int, height: int) -> range:
    """Return the numbers of columns worth a look, for blocks that in one make so many units."""
    middle = math.sqrt(_LYING * height * UNIT_PT / _COLUMN_PT)
    least, most = (min(blocks, math.ceil(middle * share)) for share in (0.5, 1.7))
    return range(least, most + 1)


def _scale(width: float, height: float) -> float:
    """Return how large a sheet such a drawing needs, lying or upright, by its longer side."""
    return min(max(width, _LYING * height), max(height, _UPRIGHT * width))


def _paper(scene: Scene, block: TitleBlock) -> tuple[float, bool]:
    """Prefer the smaller paper, and a lying one, which is shaped like a screen."""
    paper = paper_for(scene.routed.width, scene.routed.height, block)
    return paper.width * paper.height, paper.height > paper.width


def drawn(scene: Scene, findings: Sequence[NumberedFinding]) -> Canvas:
    """Draw leads and devices without the frame."""
    canvas = Canvas(id_prefix=ID_PREFIX)
    for bundle in scene.bundles:
        draw_bundle(canvas, scene, bundle)
    # Broken leads first: their gaps must not open the leads that cross them.
    for lead in sorted(scene.routed.lines, key=lambda n: scene.diagram.leads[n].conducts):
        draw_routed(canvas, scene, lead)
    for end in scene.sketch.at:
        draw_stub(canvas, scene, end, findings)
    for number, block in enumerate(scene.sketch.blocks):
        if block.type == "part":
            draw_part(canvas, scene, number, findings)
        elif block.type == "splice":
            draw_splice(canvas, scene, number)
        else:
            draw_stray(canvas, scene, number, findings)
    if not scene.sketch.blocks:
        canvas.text(Point(0, 0), "no part and no lead is stated", Letters(10.0))
    return canvas
