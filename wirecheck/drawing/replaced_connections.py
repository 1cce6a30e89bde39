"""The connection sheet of a replacement: leads to run, and ends that are landed anew.

A lead to run is hollow, with a plus sign at both ends. One that is there already keeps its colour,
and bears the sign at each end that goes to a new device.
"""

from __future__ import annotations

from wirecheck.drawing.canvas import Canvas, Tag
from wirecheck.drawing.connections.blocks import End
from wirecheck.drawing.connections.lead_lines import routed_line, stub_line
from wirecheck.drawing.connections.scene import Scene
from wirecheck.drawing.connections.sheet import drawn, scene_of
from wirecheck.drawing.corrected.connections import lettered, lines_of
from wirecheck.drawing.geometry import Point
from wirecheck.drawing.marks import end_to_land, hollow_line
from wirecheck.drawing.sheet import TitleBlock, framed
from wirecheck.replace.replacement import Replacement


def replaced_connections(done: Replacement, block: TitleBlock) -> Canvas:
    """Draw what runs where then, in a frame."""
    scene = scene_of(done.proof.checked._replace(findings=()), block)
    canvas = drawn(scene, ())
    for lead in sorted(done.run):
        for line in lines_of(scene, lead):
            hollow_line(canvas, line, _tag(scene, "add", f"edit-{lead}", lead))
    for lead in sorted(done.landed):  # over all lines, so that every sign is seen whole
        _signs(canvas, scene, lead, done)
    return framed(canvas, block)


def _tag(scene: Scene, word: str, name: str, lead: int) -> Tag:
    shown = scene.diagram.lead_name(scene.diagram.leads[lead])
    return Tag(name, ("edit", word), f"{word}: {shown}")


def _signs(canvas: Canvas, scene: Scene, lead: int, done: Replacement) -> None:
    """Mark both ends of a lead to run, and of another those at new devices."""
    clear, is_new = lettered(scene, lead), lead in done.run
    word = "add" if is_new else "land"
    for at_b, terminal in enumerate((scene.diagram.leads[lead].a, scene.diagram.leads[lead].b)):
        line = _from(scene, End(lead, at_b=bool(at_b)))
        if line and (is_new or terminal.part in done.new_devices):
            tag = _tag(scene, word, f"{word}-{lead}", lead)
            end_to_land(canvas, line, tag, clear=clear[at_b])


def _from(scene: Scene, end: End) -> list[Point]:
    """The line of a lead from one of its ends; empty where that is on no block."""
    if end.lead in scene.routed.lines:
        line = routed_line(scene, end.lead)
        return line[::-1] if end.at_b else line
    return stub_line(scene, end) if end in scene.sketch.at else []
