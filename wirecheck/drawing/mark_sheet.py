"""The sheet of a marked drawing: the mark and its lost points, and the drawing with them marked."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import PurePath

from wirecheck.check.engine import Checked
from wirecheck.drawing.canvas import Canvas
from wirecheck.drawing.connections.sheet import drawn, notes_of, scene_of
from wirecheck.drawing.sheet import TitleBlock, framed, title_block
from wirecheck.drawing.table import (
    BAR,
    BOLD,
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
from wirecheck.grade.marked import LostPoint, Marked

_CIRCUITS = (
    Column("circuit", 0.0, 230.0),
    Column("right", 230.0, 330.0),
    Column("points", 330.0, 430.0),
    Column("out of", 430.0, WIDTH),
)
_LOST = (
    Column("", 0.0, 22.0),
    Column("what is wrong", 22.0, 262.0),
    Column("line", 262.0, 292.0),
    Column("points", 292.0, 330.0),
    Column("what the unit would have done", 330.0, WIDTH),
)


def mark_pages(found: Marked, name: str, file: str) -> list[Canvas]:
    """The pages of a marked drawing: the table, as many as it takes, and the drawing last.

    Args:
        found: the drawing, marked.
        name: of the apprentice.
        file: of the drawing.
    """
    block = _block(found, name, file)
    table_block = replace(block, findings=(), notes=())
    pages = list(paged(list(_rows(found, name)), table_block, table_block))
    finished = []
    for number, rows in enumerate(pages, 1):
        named = replace(table_block, sheet=f"Mark, page {number} of {len(pages)}")
        content = table(rows, room_for(named), "Mark", f"mark-{number}-")
        finished.append(framed(content, named))
    checked = _marked_drawing(found)
    scene = scene_of(checked, block)
    return [*finished, framed(drawn(scene, block.findings), block)]


def mark_words(found: Marked) -> str:
    """The mark as it is printed: ``72.5 of 100``."""
    return f"{found.mark:g} of {found.out_of:g}"


def _marked_drawing(found: Marked) -> Checked:
    """The drawing with its lost points in the place of findings."""
    return found.checked._replace(findings=tuple(each.finding for each in found.lost))


def _block(found: Marked, name: str, file: str) -> TitleBlock:
    checked = _marked_drawing(found)
    notes = tuple(notes_of(checked.diagram))
    block = title_block(checked, "Drawing, marked", notes=notes)
    return replace(block, file=PurePath(file).name, summary=f"{mark_words(found)}: {name}")


def _rows(found: Marked, name: str) -> Iterator[Row]:
    yield Row(across=(Words(f"{name}: {mark_words(found)}", BAR),), bar=True)
    yield Row(across=tuple(_head(found)))
    yield heading(_CIRCUITS)
    for each in found.circuits:
        right = f"{each.right} of {each.units}" if each.circuit != "workmanship" else ""
        cells = (each.circuit, right, f"{each.points:.1f}", f"{each.out_of:.1f}")
        yield Row(
            tuple(
                (c, tuple(lines(text, column=c))) for c, text in zip(_CIRCUITS, cells, strict=True)
            )
        )
    if found.lost:
        yield Row(across=(Words("Lost points", BAR),), bar=True)
        yield heading(_LOST)
        told: set[str] = set()
        for lost in found.lost:
            yield _lost(lost, caution="" if lost.caution in told else lost.caution)
            told.add(lost.caution)
    if found.remarks:
        yield Row(across=(Words("Remarks that cost nothing", BAR),), bar=True)
        for remark in found.remarks:
            yield Row(across=tuple(lines(remark)))


def _head(found: Marked) -> Iterator[Words]:
    """What goes for the whole drawing."""
    if found.how == "structure":
        yield from lines("Wired as the key is.")
    elif found.how == "function":
        yield from lines("Wired otherwise than the key, and it does the same.")
    for reason in found.unsafe:
        yield from lines(f"Unsafe: {reason}", BOLD)
    if found.unsafe and found.mark < found.before_cap:
        yield from lines(f"Without that it would be {found.before_cap:g} of {found.out_of:g}.")
    for sentence in found.does:
        yield from lines(f"On a call for heat: {sentence}")


def _lost(each: LostPoint, caution: str) -> Row:
    """A mistake; what to mind is told with the first of which it holds."""
    number, wrong, line, points, done = _LOST
    what = [*lines(each.circuit, BOLD, wrong), *lines(each.reason, column=wrong)]
    effect = list(lines(each.effect, column=done)) if each.effect else []
    if caution:
        effect += lines(f"! {caution}", BOLD, done)
    return Row(
        (
            (number, (Words(str(each.number), BOLD),)),
            (wrong, tuple(what)),
            (line, (Words(str(each.line) if each.line else ""),)),
            (points, (Words(f"-{each.points:.1f}", BOLD),)),
            (done, tuple(effect)),
        )
    )
