"""The frame of a sheet: cautions on top, the drawing, the list of findings, the title block.

A drawing is made on a canvas of its own, as large as it needs to be. `framed` chooses the smallest
paper of the ISO 216 A series (or of the North American one) that holds it at full size, in either
direction, and puts it there with its frame. Lettering of 9 points on A3 is 6.4 points when the
sheet is printed on A4, which can still be read.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from typing import Literal, NamedTuple

from wirecheck.check.engine import Checked
from wirecheck.drawing.canvas import (
    BLACK,
    HEAVY,
    LINE,
    THIN,
    Align,
    Canvas,
    Layer,
    Letters,
    Stroke,
)
from wirecheck.drawing.geometry import Box, Point
from wirecheck.drawing.lettering import LINE_PITCH, Face, fitted, wrapped
from wirecheck.drawing.marks import MARK_RADIUS, NumberedFinding, finding_mark
from wirecheck.model.finding import Finding

PaperSeries = Literal["a4", "letter"]

CAUTIONS = (
    (
        "Shut off the gas and the power before moving a lead. Wait about five minutes and smell for"
        " gas, low down for LP, before another trial. Never bypass a safety beyond a momentary"
        " test. The ignition lead carries high voltage (some 20 kV) while it sparks. Leak-test"
        " what was opened, then prove the burner through several full cycles, the safeties and a"
        " lockout."
    ),
    (
        "Local codes, the appliance maker's instructions and licensed people decide. This sheet"
        " shows what was typed in and what was found in it; it does not say that the unit is safe."
    ),
)
"""The usual cautions of the trade, in our own words (common practice, no source)."""

SIGNAL_WORD = "WARNING"
"""ANSI Z535.4: what could kill or seriously injure if it is not avoided; on orange."""
SIGNAL_COLOUR = "#ff7900"

MARGIN = 22.0
PADDING = 8.0
_CAUTION_PT = 7.5
_NOTE_PT = 8.0
_BLOCK_HEIGHT = 40.0
_SIGNAL_WIDTH = 84.0


class Paper(NamedTuple):
    """A sheet size in points."""

    name: str
    width: float
    height: float

    def turned(self) -> Paper:
        """Return the same sheet upright instead of lying, or the other way round."""
        return Paper(self.name, self.height, self.width)


# ISO 216 sizes (297 x 210 mm and so on) and ANSI/ASME Y14.1 sizes A to E, lying, in 1/72 inch.
PAPERS: dict[PaperSeries, tuple[Paper, ...]] = {
    "a4": (
        Paper("A4", 841.9, 595.3),
        Paper("A3", 1190.6, 841.9),
        Paper("A2", 1683.8, 1190.6),
        Paper("A1", 2383.9, 1683.8),
        Paper("A0", 3370.4, 2383.9),
    ),
    "letter": (
        Paper("Letter", 792.0, 612.0),
        Paper("Tabloid", 1224.0, 792.0),
        Paper("C", 1584.0, 1224.0),
        Paper("D", 2448.0, 1584.0),
        Paper("E", 3168.0, 2448.0),
    ),
}


@dataclass(frozen=True)
class TitleBlock:
    """What the frame says.

    Attributes:
        title: of the diagram.
        sheet: what kind of sheet this is ("Ladder").
        file: where the diagram came from.
        date: as it shall be printed; the caller knows the clock, the drawing does not.
        findings: those marked on the sheet, in the order of their numbers.
        summary: the line on findings in the title block ("3 findings: 1 safety, 2 operation").
        notes: remarks to the reader, below the findings.
        series: the paper to choose from.
    """

    title: str
    sheet: str
    file: str = ""
    date: str = ""
    findings: tuple[NumberedFinding, ...] = ()
    summary: str = ""
    notes: tuple[str, ...] = ()
    series: PaperSeries = "a4"


def title_block(
    checked: Checked, sheet: str, *, date: str = "", notes: tuple[str, ...] = ()
) -> TitleBlock:
    """Return the title block of a checked diagram, its findings numbered from 1 in their order."""
    findings = tuple(
        NumberedFinding(number, finding.breaks, finding.message)
        for number, finding in enumerate(checked.findings, 1)
    )
    diagram = checked.diagram
    noted = (*notes, *(f"Note: {note.text}" for note in diagram.notes))
    summary = _summary(checked.findings)
    return TitleBlock(diagram.title, sheet, diagram.source.name, date, findings, summary, noted)


def _summary(findings: Sequence[Finding]) -> str:
    """Return how many findings there are of each class, the worst first."""
    if not findings:
        return "no findings of the rules that were run"
    counts = Counter(finding.breaks for finding in findings)
    told = [f"{counts[breaks]} {breaks}" for breaks in sorted(counts, reverse=True)]
    return f"{len(findings)} finding{'s' * (len(findings) > 1)}: {', '.join(told)}"


def framed(content: Canvas, block: TitleBlock) -> Canvas:
    """Return a sheet with the content, cautions above it, findings and title block below it."""
    used = content.bounds()
    paper = paper_for(used.width, used.height, block)
    page = Canvas(paper.width, paper.height, f"{block.title}: {block.sheet}", content.id_prefix)
    frame = Box(0, 0, paper.width, paper.height).grown(-MARGIN)
    top = _cautions(page, frame)
    block_top = frame.bottom - _BLOCK_HEIGHT
    _title_block(page, Box(frame.left, block_top, frame.right, frame.bottom), block, paper)
    foot = _foot(block, frame.width)
    foot_top = block_top - _foot_height(foot)
    _draw_foot(page, Point(frame.left + PADDING, foot_top), foot)
    page.box(frame, stroke=HEAVY)
    room = Box(frame.left, top, frame.right, foot_top).grown(-PADDING)
    left = room.left + max(0.0, (room.width - used.width) / 2)
    page.place(content, left - used.left, room.top - used.top)
    return page


def paper_for(width: float, height: float, block: TitleBlock) -> Paper:
    """Return the smallest paper that holds such a drawing, or one of the drawing's own size."""
    papers = PAPERS[block.series]
    for paper in (turned for lying in papers for turned in (lying, lying.turned())):
        if width <= _room_width(paper) and height <= _room_height(paper, block):
            return paper
    largest = papers[-1]
    wide = max(largest.width, width + largest.width - _room_width(largest))
    taller = Paper("own size", wide, largest.height)
    missing = height - _room_height(taller, block)
    return taller._replace(height=largest.height + max(0.0, missing))


def _room_width(paper: Paper) -> float:
    return paper.width - 2 * (MARGIN + PADDING)


def _room_height(paper: Paper, block: TitleBlock) -> float:
    width = paper.width - 2 * MARGIN
    furniture = _cautions_height(width) + _foot_height(_foot(block, width)) + _BLOCK_HEIGHT
    return paper.height - 2 * (MARGIN + PADDING) - furniture


@lru_cache(maxsize=32)
def _caution_lines(width: float) -> list[str]:
    room = width - _SIGNAL_WIDTH - 2 * PADDING
    return [line for text in CAUTIONS for line in wrapped(text, room, _CAUTION_PT)]


def _cautions_height(width: float) -> float:
    return len(_caution_lines(width)) * _CAUTION_PT * LINE_PITCH + PADDING


def _cautions(page: Canvas, frame: Box) -> float:
    """Draw the cautions across the top of the frame and return where they end."""
    bottom = frame.top + _cautions_height(frame.width)
    panel = Box(frame.left, frame.top, frame.left + _SIGNAL_WIDTH, bottom)
    page.box(panel, fill=SIGNAL_COLOUR, layer=Layer.GROUND)
    _alert_sign(page, Point(panel.left + 15, panel.centre.y))
    word = Letters(11.0, Face.BOLD, Align.LEFT)
    page.text(Point(panel.left + 26, panel.centre.y), SIGNAL_WORD, word)
    pitch = _CAUTION_PT * LINE_PITCH
    first = Point(panel.right + PADDING, frame.top + PADDING / 2 + pitch / 2)
    for row, line in enumerate(_caution_lines(frame.width)):
        page.text(first.moved(0, row * pitch), line, Letters(_CAUTION_PT))
    page.line([Point(frame.left, bottom), Point(frame.right, bottom)], LINE)
    return bottom


def _alert_sign(page: Canvas, at: Point) -> None:
    corners = [at.moved(0, -8), at.moved(8, 6), at.moved(-8, 6), at.moved(0, -8)]
    page.line([*corners, corners[1]], Stroke(BLACK, 1.6))
    page.text(at.moved(0, 1), "!", Letters(10.0, Face.BOLD, Align.CENTRE))


class _FootLine(NamedTuple):
    finding: NumberedFinding | None
    text: str


@lru_cache(maxsize=32)
def _foot(block: TitleBlock, width: float) -> list[_FootLine]:
    """Return the lines below the drawing: findings with their numbers, then notes."""
    room = width - 2 * PADDING - 3 * MARK_RADIUS
    lines: list[_FootLine] = []
    for finding in block.findings:
        first, *rest = wrapped(f"{finding.breaks}: {finding.words}", room, _NOTE_PT)
        lines += [_FootLine(finding, first), *(_FootLine(None, line) for line in rest)]
    for note in block.notes:
        lines += [_FootLine(None, line) for line in wrapped(note, room, _NOTE_PT)]
    return lines


def _foot_pitches(lines: Sequence[_FootLine]) -> list[float]:
    """Return the height of each line: a numbered one is as high as its ring."""
    return [2 * MARK_RADIUS + 3 if line.finding else _NOTE_PT * LINE_PITCH for line in lines]


def _foot_height(lines: Sequence[_FootLine]) -> float:
    return sum(_foot_pitches(lines)) + PADDING if lines else 0.0


def _draw_foot(page: Canvas, corner: Point, lines: Sequence[_FootLine]) -> None:
    y = corner.y
    for line, pitch in zip(lines, _foot_pitches(lines), strict=True):
        at = Point(corner.x + MARK_RADIUS, y + pitch / 2)
        if line.finding is not None:
            finding_mark(page, at, line.finding, ring_id="listed")
        page.text(Point(corner.x + 3 * MARK_RADIUS, at.y), line.text, Letters(_NOTE_PT))
        y += pitch


def _title_block(page: Canvas, room: Box, block: TitleBlock, paper: Paper) -> None:
    """Draw the title block: title, sheet, file and date, findings, each in a field of its own."""
    fields = (
        (0.36, "diagram", block.title, 12.0, Face.BOLD),
        (0.18, "sheet", block.sheet, 10.0, Face.BOLD),
        (0.20, "file", block.file, 8.5, Face.PLAIN),
        (0.10, "date", block.date, 8.5, Face.PLAIN),
        (0.16, "check", block.summary, 8.5, Face.PLAIN),
    )
    page.line([Point(room.left, room.top), Point(room.right, room.top)], HEAVY)
    left = room.left
    for share, caption, words, size_pt, face in fields:
        width = room.width * share
        if left > room.left:
            page.line([Point(left, room.top), Point(left, room.bottom)], THIN)
        at = Point(left + PADDING / 2, room.top + 7)
        page.text(at, caption, Letters(6.5))
        room_pt = width - PADDING
        text = _near_end(words, room_pt, size_pt) if caption == "file" else words
        _field(page, at.moved(0, 8), text, room_pt, Letters(size_pt, face))
        left += width
    corner = Letters(6.5, align=Align.RIGHT)
    page.text(Point(room.right - 3, room.top + 7), f"{paper.name}, not to scale", corner)


def _field(page: Canvas, at: Point, text: str, width: float, style: Letters) -> None:
    """Letter a field in at most two lines, the second cut short if need be."""
    lines = wrapped(text, width, style.size_pt, style.face)
    pitch = style.size_pt * 1.15
    kept = [lines[0], " ".join(lines[1:])] if len(lines) > 1 else lines
    middle = at.moved(0, 9)
    for row, line in enumerate(kept):
        place = middle.moved(0, (row - (len(kept) - 1) / 2) * pitch)
        page.text(place, fitted(line, width, style.size_pt, style.face), style)


def _near_end(path: str, width: float, size_pt: float) -> str:
    """A path without as many of its first folders as it takes to fit a field of two lines."""
    *folders, name = path.replace("\\", "/").split("/")
    while folders and len(wrapped(path, width, size_pt)) > 2:
        folders.pop(0)
        path = "/".join(("...", *folders, name))
    return path
