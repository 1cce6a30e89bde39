"""Sheets for a class: a wiring with mistakes hidden in it, a page for the answers, a blank to wire.

Nothing that was found is marked on them: who gets the sheet is to find it.
"""

from __future__ import annotations

from dataclasses import replace

from wirecheck.check.engine import Checked
from wirecheck.circuit.nets import Nets
from wirecheck.drawing.canvas import HEAVY, LINE, THIN, Canvas, Layer, Letters
from wirecheck.drawing.connections.device_boxes import draw_part
from wirecheck.drawing.connections.scene import Scene
from wirecheck.drawing.connections.sheet import ID_PREFIX, drawn, notes_of, scene_of
from wirecheck.drawing.geometry import Box, Point
from wirecheck.drawing.lettering import LINE_PITCH, Face, wrapped
from wirecheck.drawing.sheet import TitleBlock, framed, title_block
from wirecheck.model.diagram import Diagram
from wirecheck.practice.exercise import Exercise

#: Room between the margins of A4 upright, in points.
_WIDTH = 533.0
#: Room to write in for one mistake.
_ROW_PT = 176.0
_NUMBER_PT, _PAD_PT, _ASK_PT = 24.0, 4.0, 8.0
_PLAIN, _BOLD = Letters(_ASK_PT), Letters(_ASK_PT, Face.BOLD)
_HEADING_FILL = "#e4e4e4"

QUESTIONS = (
    "Which lead is it, or which is missing, and where is it now?",
    "Where does it belong?",
    "What does the unit do because of it when the thermostat calls?",
    "Who or what can come to harm by it?",
)


def exercise_sheet(exercise: Exercise, date: str = "") -> Canvas:
    """Draw the wiring of an exercise, what runs where, with nothing marked.

    Args:
        exercise: what to draw.
        date: as it shall be printed in the title block.
    """
    checked = exercise.checked._replace(findings=())
    block = _block(exercise, "Exercise", date)
    block = replace(block, notes=(*_task(exercise), *notes_of(checked.diagram)))
    return framed(drawn(scene_of(checked, block), ()), block)


def answer_sheet(exercise: Exercise, date: str = "") -> Canvas:
    """Draw the page to write the answers on, a field for each mistake."""
    rows = len(exercise.hidden)
    heading = _PAD_PT * 2 + _ASK_PT * LINE_PITCH
    canvas = Canvas(_WIDTH, heading + rows * _ROW_PT, "Answers", "answers-")
    canvas.box(Box(0, 0, _WIDTH, heading), fill=_HEADING_FILL, stroke=LINE, layer=Layer.GROUND)
    canvas.text(Point(_PAD_PT, heading / 2), "Name and date:", _BOLD)
    for row in range(rows):
        _answer(canvas, heading + row * _ROW_PT, row + 1)
    canvas.box(Box(0, 0, _WIDTH, heading + rows * _ROW_PT), stroke=HEAVY)
    return framed(canvas, _block(exercise, "Answers", date))


def blank_sheet(right: Diagram, date: str = "") -> Canvas:
    """Draw the devices of a diagram and none of its leads, as far apart as with them."""
    checked = Checked(right, Nets(right), (), (), ())
    note = (
        "Draw every lead from terminal to terminal, with its colour and gauge; where leads are"
        " joined outside a device, draw the splice. A square is a terminal. Some may stay empty."
    )
    block = replace(title_block(checked, "Blank", date=date), summary="to be wired", notes=(note,))
    scene = _without_leads(scene_of(checked, block))
    canvas = Canvas(id_prefix=ID_PREFIX)
    for number, each in enumerate(scene.sketch.blocks):
        if each.type == "part":
            draw_part(canvas, scene, number, ())
    return framed(canvas, block)


def _block(exercise: Exercise, sheet: str, date: str) -> TitleBlock:
    count = len(exercise.hidden)
    summary = f"{count} mistake{'s' * (count > 1)} to find"
    return replace(
        title_block(exercise.checked._replace(findings=()), sheet, date=date), summary=summary
    )


def _task(exercise: Exercise) -> tuple[str, ...]:
    count = len(exercise.hidden)
    hidden = "One mistake is" if count == 1 else f"{count} mistakes are"
    asked = "which lead, where it belongs, what the unit does because of it, who can come to harm"
    return (f"{hidden} hidden in this wiring. For each: {asked}.",)


def _answer(canvas: Canvas, top: float, number: int) -> None:
    canvas.box(Box(0, top, _NUMBER_PT, top + _ROW_PT), stroke=THIN)
    canvas.text(Point(_PAD_PT, top + _PAD_PT + _ASK_PT * LINE_PITCH / 2), str(number), _BOLD)
    height = _ROW_PT / len(QUESTIONS)
    for place, question in enumerate(QUESTIONS):
        line = top + place * height
        canvas.box(Box(_NUMBER_PT, line, _WIDTH, line + height), stroke=THIN)
        for step, words in enumerate(wrapped(question, _WIDTH - _NUMBER_PT, _ASK_PT)):
            y = line + _PAD_PT + (step + 0.5) * _ASK_PT * LINE_PITCH
            canvas.text(Point(_NUMBER_PT + _PAD_PT, y), words, _PLAIN)


def _without_leads(scene: Scene) -> Scene:
    """The same places with nothing landed on any terminal."""
    blocks = tuple(
        replace(block, rows=tuple(row._replace(ends=()) for row in block.rows))
        for block in scene.sketch.blocks
    )
    return scene._replace(sketch=scene.sketch._replace(blocks=blocks))
