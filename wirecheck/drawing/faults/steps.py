"""The fault chart as pages of A4 to follow at the unit: what to read, and where to go on."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace

from wirecheck.drawing.canvas import Canvas
from wirecheck.drawing.faults.words import block, end_words, share
from wirecheck.drawing.sheet import TitleBlock, framed
from wirecheck.drawing.table import (
    BAR,
    BOLD,
    PLAIN,
    WIDTH,
    Column,
    Row,
    Words,
    heading,
    lines,
    paged,
    room_for,
    table,
)
from wirecheck.model.diagram import Diagram
from wirecheck.troubleshoot.chart import Branch, Step

COLUMNS = (
    Column("step", 0.0, 26.0),
    Column("do this", 26.0, 236.0),
    Column("it comes to", 236.0, 336.0),
    Column("then", 336.0, WIDTH),
)
NUMBER, READING, COMES_TO, THEN = COLUMNS


def chart_pages(diagram: Diagram, top: Step, seen: str, date: str = "") -> list[Canvas]:
    """Draw a chart as steps, on as many pages as it takes.

    Args:
        diagram: of the unit.
        top: the first step.
        seen: what the chart begins with, in words.
        date: as it shall be printed in the title block.
    """
    frame = block(diagram, "Fault chart", seen, date)
    return table_pages(list(_rows(top, seen)), frame, "Steps", "steps")


def table_pages(rows: list[Row], frame: TitleBlock, name: str, id_prefix: str) -> list[Canvas]:
    """Rows on framed pages of A4, each with its number in the title block."""
    others = replace(frame, notes=())
    pages = list(paged(rows, frame, others))
    finished = []
    for number, page in enumerate(pages, 1):
        own = frame if number == 1 else others
        content = table(page, room_for(own), name, f"{id_prefix}-{number}-")
        sheet = f"{name} {number} of {len(pages)}"
        finished.append(framed(content, replace(own, sheet=sheet, summary="")))
    return finished


def _rows(top: Step, seen: str) -> Iterator[Row]:
    if seen:
        yield Row(across=tuple(lines(f"Seen: {seen}", BAR)))
    yield heading(COLUMNS)
    for step in top.steps:
        if step.reading is not None:
            yield _row(step)
    if top.reading is None:
        yield Row(across=tuple(words for text in end_words(top) for words in lines(text)))
    ending = next((step.ending for step in top.steps if step.ending), None)
    if ending is not None:
        yield Row(across=(Words("To prove, whatever was mended", BAR),), bar=True)
        yield from (Row(across=tuple(lines(text))) for text in ending.proof)


def _row(step: Step) -> Row:
    """A step; what it comes to and where that leads stand level with each other."""
    assert step.reading is not None  # noqa: S101 - ends are no rows
    asked = [*lines(step.reading.ask, BOLD, READING)]
    for caution in step.reading.cautions:
        asked += lines(f"! {caution}", PLAIN, READING)
    comes_to: list[Words] = []
    then: list[Words] = []
    for branch in step.branches:
        answer = f"{branch.words} ({share(branch.probability)})"
        said = list(lines(answer, BOLD, COMES_TO))
        leads = [words for text in _then(branch) for words in lines(text, PLAIN, THEN)]
        if comes_to:  # so that one sees which way on belongs to which answer
            comes_to.append(Words(""))
            then.append(Words(""))
        rows = max(len(said), len(leads))
        comes_to += said + [Words("")] * (rows - len(said))
        then += leads + [Words("")] * (rows - len(leads))
    return Row(
        (
            (NUMBER, (Words(str(step.number), BOLD),)),
            (READING, tuple(asked)),
            (COMES_TO, tuple(comes_to)),
            (THEN, tuple(then)),
        )
    )


def _then(branch: Branch) -> Iterator[str]:
    if branch.step.reading is not None:
        yield f"go to step {branch.step.number}"
    else:
        yield from end_words(branch.step)
