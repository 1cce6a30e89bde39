"""The sheet: title and end of the run on top, the bars, and the reasons below.

Everything is placed in points from the top left corner of a landscape A4 sheet; a run with very
many tracks gets a taller one.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Literal

import matplotlib as mpl
from matplotlib.figure import Figure
from matplotlib.font_manager import FontProperties
from matplotlib.patches import Circle, Rectangle

from wirecheck.drawing.lettering import Face, fitted, printable, text_width, wrapped
from wirecheck.drawing.timeline.axis import BAND_PT, TimeAxis
from wirecheck.drawing.timeline.notes import Note, notes
from wirecheck.drawing.timeline.paint import Paint, paint
from wirecheck.drawing.timeline.rows import Bar, Row, rows
from wirecheck.sequence.answers import View
from wirecheck.sequence.run import Run

#: A4, landscape, in points; the margin; the room for the names of the tracks.
WIDTH, HEIGHT, MARGIN, NAMES = 842.0, 595.0, 28.0, 132.0
LEAST_ROW, WIDEST_ROW, BAR = 19.0, 25.0, 12.0
LINE, KEY = 10.5, 18.0
TITLE_PT, TEXT_PT, SMALL_PT = 13.0, 8.0, 7.0
#: A bar is lettered if so much of it stays free.
LETTERS_FREE = 6.0
#: The face is so much wider than the one whose widths are known.
WIDER = 1.16

#: What stands at the foot.
NO_PROOF = (
    "What a run does not show is not thereby safe. Local codes, the appliance maker's instructions"
    " and licensed people decide."
)
#: What stands beside the title.
_VIEWS = {
    View.OPERATION: "as it works: rusty metal and weak coils count for nothing",
    View.DANGER: "as looked at for danger: rusty metal conducts, weak coils act",
}


def title(run: Run) -> str:
    """What the sheet is called."""
    return f"{printable(run.diagram.title)}: a call for heat"


@cache
def _face(name: str) -> FontProperties:
    """A face that comes with the plotting library, so that every machine letters alike."""
    return FontProperties(fname=Path(mpl.get_data_path(), "fonts", "ttf", f"{name}.ttf"))


class Sheet:
    """One sheet, drawn from the top down."""

    def __init__(self, run: Run) -> None:
        self.run = run
        self.rows = rows(run)
        self.notes = notes(run.trace, {row.name for row in self.rows})
        self.room = WIDTH - 2 * MARGIN
        head = self._head()
        foot = [
            line for number, note in enumerate(self.notes, 1) for line in self._note(number, note)
        ]
        top = MARGIN + 20 + LINE * len(head) + 26
        room = HEIGHT - top - 16 - KEY - LINE * (len(foot) + 1) / 2 - MARGIN - 12
        self.row = min(max(room / max(len(self.rows), 1), LEAST_ROW), WIDEST_ROW)
        below = top + self.row * len(self.rows) + 16
        height = max(HEIGHT, below + KEY + LINE * (len(foot) + 1) / 2 + MARGIN + 12)
        self.figure = Figure(figsize=(WIDTH / 72, height / 72))
        self.axes = self.figure.add_axes((0, 0, 1, 1))
        self.axes.set_xlim(0, WIDTH)
        self.axes.set_ylim(height, 0)
        self.axes.set_axis_off()
        self.axis = TimeAxis(run.trace, MARGIN + NAMES, self.room - NAMES)
        self.unnamed: dict[tuple[str, Paint], None] = {}
        self._letter_head(head)
        self._draw_rows(top)
        self._letter_foot(foot, below + self._key(below))
        self._text(MARGIN, height - MARGIN, NO_PROOF, SMALL_PT, colour="#505050")

    # ---- lettering -------------------------------------------------------------------------

    def _text(  # noqa: PLR0913 - where, what and how
        self,
        x: float,
        y: float,
        text: str,
        size: float = TEXT_PT,
        *,
        align: Literal["left", "center", "right"] = "left",
        colour: str = "#101010",
        bold: bool = False,
    ) -> None:
        self.axes.text(
            x,
            y,
            printable(text),
            fontsize=size,
            ha=align,
            va="center_baseline",
            color=colour,
            fontproperties=_face("DejaVuSans-Bold" if bold else "DejaVuSans"),
            zorder=5,
        )

    def _head(self) -> list[tuple[str, bool]]:
        """Lines on how it ends, each with whether it is an alarm."""
        lines = [(f"{told.control}: {told.outcome.sentence}", False) for told in self.run.told]
        if not lines:
            lines = [("no ignition control is drawn: only contacts and loads are shown", False)]
        lines += [
            (f"DANGER, at {danger.time_s:g} s: {danger.sentence}", True)
            for danger in self.run.dangers
        ]
        return [
            (line, alarm)
            for text, alarm in lines
            for line in wrapped(
                text, self.room / WIDER, TEXT_PT, Face.BOLD if alarm else Face.PLAIN
            )
        ]

    def _letter_head(self, lines: list[tuple[str, bool]]) -> None:
        y = MARGIN + 6
        self._text(
            MARGIN, y, fitted(title(self.run), self.room * 0.55, TITLE_PT), TITLE_PT, bold=True
        )
        self._text(
            WIDTH - MARGIN, y, _VIEWS[self.run.view], SMALL_PT, align="right", colour="#505050"
        )
        for number, (line, alarm) in enumerate(lines):
            colour = "#a02000" if alarm else "#101010"
            self._text(MARGIN, y + 16 + LINE * number, line, colour=colour, bold=alarm)

    def _note(self, number: int, note: Note) -> list[str]:
        room = (self.room / 2 - 14) / WIDER
        first, *rest = wrapped(f"{note.time_s:g} s  {note.words}", room - 16, SMALL_PT)
        return [f"{number}\t{first}", *(f"\t{line}" for line in rest)]

    def _letter_foot(self, lines: list[str], top: float) -> None:
        """Two columns of notes; a note is not cut in two."""
        half = (len(lines) + 1) // 2
        while half < len(lines) and lines[half].startswith("\t"):
            half += 1
        for number, line in enumerate(lines):
            column, place = (0, number) if number < half else (1, number - half)
            x, y = MARGIN + column * self.room / 2, top + 14 + LINE * place
            mark, _tab, words = line.partition("\t")
            if mark:
                self._badge(x + 5, y, mark)
            self._text(x + 16, y, words, SMALL_PT)

    # ---- bars ------------------------------------------------------------------------------

    def _draw_rows(self, top: float) -> None:
        bottom = top + self.row * len(self.rows)
        self._draw_times(top, bottom)
        for number, row in enumerate(self.rows):
            y = top + self.row * (number + 0.5)
            if number % 2 == 0:
                stripe = Paint("#f6f6f6", edge="none")
                self._box((MARGIN, WIDTH - MARGIN), y, stripe, height=self.row, layer=0)
            self._text(MARGIN + 3, y, fitted(row.name, (NAMES - 8) / WIDER, TEXT_PT))
            self._draw_row(row, y)
        for each in self.axis.breaks:
            self._draw_break(each.left, each.right, each.words, top, bottom)
        for number, note in enumerate(self.notes, 1):
            place = [row.name for row in self.rows].index(note.track)
            x = self.axis.place(note.time_s)
            self._badge(x + 1, top + self.row * (place + 0.5) - BAR / 2 - 0.5, str(number))

    def _draw_times(self, top: float, bottom: float) -> None:
        free = 0.0
        for time_s in self.axis.times:
            x = self.axis.place(time_s)
            self.axes.plot((x, x), (top - 3, bottom), color="#c8c8c8", lw=0.5, zorder=1)
            words = f"{time_s:g}"
            half = text_width(words, SMALL_PT) * WIDER / 2
            x = min(x, WIDTH - MARGIN - half)
            if x - half >= free:
                self._text(x, top - 9, words, SMALL_PT, align="center")
                free = x + half + 3
        self._text(MARGIN + 3, top - 9, "seconds from the call", SMALL_PT, colour="#505050")

    def _draw_row(self, row: Row, y: float) -> None:
        moves = any(bar.state in ("opening", "closing", "shut") for bar in row.bars)
        for bar in row.bars:
            for start_s, end_s in self._seen(bar):
                left, right = self.axis.place(start_s), self.axis.place(end_s)
                if bar.quiet:
                    low = y + BAR / 2
                    self.axes.plot((left, right), (low, low), color="#707070", lw=0.8, zorder=2)
                else:
                    self._draw_bar(
                        left, right, y, bar.state, paint(row.name, bar.state, moves=moves)
                    )

    def _seen(self, bar: Bar) -> list[tuple[float, float]]:
        """The parts of a bar that do not lie in a stretch left out as it repeats."""
        pieces = [(bar.start_s, bar.end_s)]
        for hidden_from_s, hidden_to_s in self.axis.hidden:
            pieces = [
                piece
                for start_s, end_s in pieces
                for piece in (
                    (start_s, min(end_s, hidden_from_s)),
                    (max(start_s, hidden_to_s), end_s),
                )
                if piece[0] < piece[1]
            ]
        return pieces

    def _draw_bar(self, left: float, right: float, y: float, state: str, look: Paint) -> None:
        self._box((left, right), y, look)
        wide = text_width(state, SMALL_PT) * WIDER
        near, far = max(self.axis.pieces(left, right), key=lambda piece: piece[1] - piece[0])
        if wide + LETTERS_FREE > far - near:
            if state != "on" and not state.endswith("uA"):
                self.unnamed.setdefault((state, look))
            return
        middle = (near + far) / 2
        if look.hatch:
            ground = look._replace(hatch="", edge="none")
            ends = (middle - wide / 2 - 2, middle + wide / 2 + 2)
            self._box(ends, y, ground, height=BAR - 3)
        self._text(middle, y, state, SMALL_PT, align="center", colour=look.letters)

    def _box(
        self,
        ends: tuple[float, float],
        y: float,
        look: Paint,
        *,
        height: float = BAR,
        layer: int = 3,
    ) -> None:
        self.axes.add_patch(
            Rectangle(
                (ends[0], y - height / 2),
                ends[1] - ends[0],
                height,
                facecolor=look.fill,
                edgecolor=look.edge,
                hatch=look.hatch,
                lw=0.0 if look.edge == "none" else 0.9,
                ls=(0, (3, 2)) if look.dashed else "-",
                zorder=layer,
            )
        )

    def _draw_break(self, left: float, right: float, words: str, top: float, bottom: float) -> None:
        """A white band with slanted edges through all rows."""
        middle = (left + right) / 2
        corners = ((-1, 2), (1, 2), (1, -2), (-1, -2))
        xs = [middle + side * (BAND_PT - 2) + slant for side, slant in corners]
        self.axes.fill(xs, [top - 2, top - 2, bottom + 2, bottom + 2], color="#ffffff", zorder=6)
        for near, far in ((xs[0], xs[3]), (xs[1], xs[2])):
            self.axes.plot((near, far), (top - 2, bottom + 2), color="#505050", lw=0.8, zorder=7)
        for number, line in enumerate(words.split("\n")):
            self._text(middle, bottom + 8 + 8 * number, line, 6.0, align="center", colour="#505050")

    def _key(self, top: float) -> float:
        """Samples of what had no room for its name; the height they take."""
        x, y = MARGIN, top + 14
        for state, look in self.unnamed:
            self._box((x, x + 18), y, look)
            self._text(x + 22, y, state, SMALL_PT)
            x += 22 + text_width(state, SMALL_PT) * WIDER + 16
        return KEY if self.unnamed else 0.0

    def _badge(self, x: float, y: float, words: str) -> None:
        self.axes.add_patch(
            Circle((x, y), 4.6, facecolor="#ffffff", edgecolor="#101010", lw=0.7, zorder=8)
        )
        self.axes.text(
            x,
            y,
            words,
            fontproperties=_face("DejaVuSans"),
            fontsize=5.6,
            ha="center",
            va="center_baseline",
            zorder=9,
        )
