"""Runs, corrects and draws a checked diagram for its report."""

from __future__ import annotations

from wirecheck.check.engine import Checked
from wirecheck.correct.answer import Bound
from wirecheck.correct.rewrite import mended
from wirecheck.correct.search import correct
from wirecheck.drawing.canvas import Canvas
from wirecheck.drawing.connections import connection_sheet
from wirecheck.drawing.corrected import corrected_connections, corrected_ladder
from wirecheck.drawing.engine import render
from wirecheck.drawing.ladder import ladder_sheet
from wirecheck.drawing.timeline import draw as draw_timeline
from wirecheck.model.diagram import Diagram
from wirecheck.model.finding import Breaks, Problem
from wirecheck.report.corrections import proved
from wirecheck.report.html.page import Corrected, Material, Sheets
from wirecheck.sequence.run import run
from wirecheck.sequence.script import heat_call

#: A correction looks no further than so many edits.
_EDITS = 3


def gathered(
    checked: Checked, file: str, problems: tuple[Problem, ...], seconds: float, date: str
) -> Material:
    """Gather what a report tells; ``seconds`` are the most for the correction."""
    call = run(checked.diagram, heat_call())
    sheets = _sheets(ladder_sheet(checked, date=date), connection_sheet(checked, date=date))
    is_grave = any(each.breaks > Breaks.WORKMANSHIP for each in checked.findings)
    return Material(
        file,
        checked,
        problems,
        call,
        draw_timeline(call, "svg"),
        sheets,
        _corrected(checked.diagram, seconds, date) if is_grave else None,
        date,
    )


def _corrected(diagram: Diagram, seconds: float, date: str) -> Corrected | None:
    """The first answer; None where nothing mends it in that time."""
    correction = correct(diagram, Bound(_EDITS, seconds))
    if not correction.answers:
        return None
    first = correction.answers[0]
    written = mended(first.state, first.proof)
    told = run(written.proof.checked.diagram, heat_call()).told
    return Corrected(
        written,
        _sheets(corrected_ladder(first.state, date), corrected_connections(first.state, date)),
        tuple(f"{each.control}: {each.outcome.sentence}" for each in told),
        tuple(proved(correction)),
    )


def _sheets(ladder: Canvas, connections: Canvas) -> Sheets:
    return Sheets(render(ladder, "svg"), render(connections, "svg"))
