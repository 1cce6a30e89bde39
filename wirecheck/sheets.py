"""The sheets of the Python API: each function draws one thing and returns finished files.

The drawing knows no clock: a date is given as it shall be printed, so that the same diagram gives
the same bytes.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:
    from collections.abc import Sequence

    from wirecheck.check.engine import Checked
    from wirecheck.correct.answer import Answer
    from wirecheck.drawing.engine import Engine, Format
    from wirecheck.lists.lists import Lists
    from wirecheck.lists.tables import What
    from wirecheck.meter.reading import MeterSheet
    from wirecheck.model.diagram import Diagram
    from wirecheck.practice.exercise import Exercise
    from wirecheck.replace.replacement import Replacement
    from wirecheck.sequence.run import Run
    from wirecheck.troubleshoot.chart import Step
    from wirecheck.troubleshoot.conversation import Conversation

    Sheet = Literal["ladder", "connections"]

__all__ = [
    "draw",
    "draw_blank",
    "draw_corrected",
    "draw_exercise",
    "draw_fault_chart",
    "draw_lists",
    "draw_meter",
    "draw_record",
    "draw_replacement",
    "draw_timeline",
]


def draw(
    checked: Checked,
    sheet: Sheet = "ladder",
    file_format: Format = "svg",
    *,
    engine: Engine = "embedded",
    date: str = "",
) -> bytes:
    """Draw a checked diagram, its findings marked, and return the finished file.

    Args:
        checked: what `check` gave.
        sheet: ``ladder``, how it works, or ``connections``, what runs where.
        file_format: ``svg``, ``png``, or ``pdf``, which needs the system engine.
        engine: ``embedded``, or ``system`` for a Graphviz installed on the machine.
        date: for the title block, as it shall be printed; the drawing knows no clock, so that the
            same diagram gives the same bytes.

    Raises:
        wirecheck.drawing.engine.DrawingError: the engine is missing, cannot give the format or
            fails.
    """
    from wirecheck.drawing.engine import render

    if sheet == "ladder":
        from wirecheck.drawing.ladder import ladder_sheet as lay_out
    else:
        from wirecheck.drawing.connections import connection_sheet as lay_out
    return render(lay_out(checked, date=date), file_format, engine=engine)


def draw_corrected(
    answer: Answer,
    sheet: Sheet = "ladder",
    file_format: Literal["svg", "png"] = "svg",
    *,
    date: str = "",
) -> bytes:
    """Draw a diagram as an answer of `correct` mends it, and return the finished file.

    What is to be taken away and what is to go in is marked so that it reads in black and white.
    """
    from wirecheck.drawing.corrected import corrected_connections, corrected_ladder
    from wirecheck.drawing.engine import render

    lay_out = corrected_ladder if sheet == "ladder" else corrected_connections
    return render(lay_out(answer.state, date=date), file_format)


def draw_timeline(run: Run, file_format: Literal["svg", "png"] = "svg") -> bytes:
    """Draw what `simulate` gave as bars over time, and return the finished file."""
    from wirecheck.drawing.timeline import draw

    return draw(run, file_format)


def draw_meter(
    sheet: MeterSheet,
    file_format: Format = "svg",
    *,
    engine: Engine = "embedded",
) -> tuple[bytes, ...]:
    """Draw what `meter` gave on pages of A4 to write on, and return the finished files.

    Raises:
        wirecheck.drawing.engine.DrawingError: the engine is missing, cannot give the format or
            fails.
    """
    from wirecheck.drawing.engine import render
    from wirecheck.drawing.meter_sheet import meter_pages

    return tuple(render(page, file_format, engine=engine) for page in meter_pages(sheet))


def draw_exercise(
    exercise: Exercise,
    sheet: Literal["exercise", "answers"] = "exercise",
    file_format: Literal["svg", "png"] = "svg",
    *,
    date: str = "",
) -> bytes:
    """Draw the wiring of an exercise with nothing marked, or the page for the answers."""
    from wirecheck.drawing.engine import render
    from wirecheck.drawing.exercise import answer_sheet, exercise_sheet

    lay_out = exercise_sheet if sheet == "exercise" else answer_sheet
    return render(lay_out(exercise, date=date), file_format)


def draw_blank(
    right: Diagram, file_format: Literal["svg", "png"] = "svg", *, date: str = ""
) -> bytes:
    """Draw the devices of a diagram and none of its leads, as a sheet to be wired."""
    from wirecheck.drawing.engine import render
    from wirecheck.drawing.exercise import blank_sheet

    return render(blank_sheet(right, date=date), file_format)


def draw_lists(
    lists: Lists,
    what: Sequence[What] = ("wires", "parts", "terminals"),
    file_format: Format = "svg",
    *,
    engine: Engine = "embedded",
    date: str = "",
) -> tuple[bytes, ...]:
    """Draw what `lists` gave, or some of it, on pages of A4, and return the finished files.

    Raises:
        wirecheck.drawing.engine.DrawingError: the engine is missing, cannot give the format or
            fails.
    """
    from wirecheck.drawing.engine import render
    from wirecheck.drawing.lists_sheet import lists_pages

    pages = lists_pages(lists, what, date)
    return tuple(render(page, file_format, engine=engine) for page in pages)


def draw_replacement(
    done: Replacement, file_format: Literal["svg", "png"] = "svg", *, date: str = ""
) -> dict[str, bytes]:
    """Draw what `replace` gave: each finished file by its name.

    ``found-connections`` is there if a lead is left over, ``replaced-connections`` and
    ``replaced-ladder`` always, then the pages of the cross-reference: ``cross-reference-1`` and so
    on.
    """
    from wirecheck.drawing.engine import render
    from wirecheck.drawing.replaced import sheets

    return {name: render(sheet, file_format) for name, sheet in sheets(done, date).items()}


def draw_fault_chart(
    talk: Conversation,
    top: Step,
    file_format: Literal["svg", "png"] = "svg",
    *,
    date: str = "",
) -> tuple[bytes, ...]:
    """Draw the chart ``top`` of a conversation: the picture first, then the pages with its steps.

    ``top`` is what `wirecheck.troubleshoot.chart.chart` made of the conversation.
    """
    from wirecheck.drawing.engine import render
    from wirecheck.drawing.faults.picture import chart_picture
    from wirecheck.drawing.faults.steps import chart_pages

    diagram = talk.dictionary.diagram
    seen = "; ".join(observation.words for observation in talk.observations)
    sheets = (chart_picture(diagram, top, seen, date), *chart_pages(diagram, top, seen, date))
    return tuple(render(sheet, file_format) for sheet in sheets)


def draw_record(
    talk: Conversation, file_format: Literal["svg", "png"] = "svg", *, date: str = ""
) -> tuple[bytes, ...]:
    """Draw the record of a conversation on pages of A4: readings, repair, proof, room to sign."""
    from wirecheck.drawing.engine import render
    from wirecheck.drawing.faults.record import record_pages

    return tuple(render(page, file_format) for page in record_pages(talk, date))
