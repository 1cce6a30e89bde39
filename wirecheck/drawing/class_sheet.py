"""The summary sheet of a class: how its marks lie, what it has right, its commonest mistakes.

The same class gives the same bytes: no clock, no random names, no settings or faces of the machine.
"""

from __future__ import annotations

import logging
import warnings
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import TYPE_CHECKING, Any, Literal

import matplotlib as mpl
from matplotlib.figure import Figure
from matplotlib.font_manager import FontProperties

from wirecheck.drawing.lettering import fitted, printable
from wirecheck.grade.classroom import STEPS, Classroom

if TYPE_CHECKING:
    from matplotlib.axes import Axes

PIXELS_PER_INCH = 150
#: A4, landscape, in inches.
WIDTH, HEIGHT = 842 / 72, 595 / 72
TITLE_PT, TEXT_PT, SMALL_PT = 14.0, 9.0, 8.0
INK, BAR, ALARM = "#222222", "#7f9fbf", "#b00000"
#: So many points a mistake's name may take beside its bar.
NAME_PT = 250.0

_SETTINGS: dict[Any, Any] = {
    "svg.hashsalt": "wirecheck",
    "svg.fonttype": "path",
    "hatch.linewidth": 0.6,
    "text.parse_math": False,
}


def class_sheet(found: Classroom, title: str, file_format: Literal["svg", "png"] = "svg") -> bytes:
    """Draw the summary of a class and return the finished file.

    Args:
        found: the class.
        title: of the exercise.
        file_format: ``svg`` or ``png``.
    """
    logging.getLogger("matplotlib").setLevel(logging.ERROR)
    with mpl.rc_context(), warnings.catch_warnings():
        mpl.rcdefaults()
        mpl.rcParams.update(_SETTINGS)
        warnings.filterwarnings("ignore", message=".*missing from.*font")
        figure = Figure(figsize=(WIDTH, HEIGHT))
        _head(figure, found, title)
        _marks(figure.add_axes((0.07, 0.47, 0.33, 0.36)), found)
        _circuits(figure.add_axes((0.19, 0.08, 0.21, 0.28)), found)
        _mistakes(figure.add_axes((0.74, 0.08, 0.22, 0.75)), found)
        out = BytesIO()
        about: dict[str, Any] = {"Title": printable(title)}
        about |= (
            {"Date": None, "Creator": "wirecheck"}
            if file_format == "svg"
            else {"Software": "wirecheck"}
        )
        figure.savefig(out, format=file_format, dpi=PIXELS_PER_INCH, metadata=about)
    return out.getvalue()


@cache
def _face(name: str) -> FontProperties:
    """A face that comes with the plotting library, so that every machine letters alike."""
    return FontProperties(fname=Path(mpl.get_data_path(), "fonts", "ttf", f"{name}.ttf"))


def _style(size_pt: float, *, bold: bool = False) -> dict[str, Any]:
    face = _face("DejaVuSans-Bold" if bold else "DejaVuSans").copy()
    face.set_size(size_pt)
    return {"fontproperties": face, "color": INK}


def _head(figure: Figure, found: Classroom, title: str) -> None:
    figure.text(
        0.04, 0.945, fitted(printable(title), 600.0, TITLE_PT), **_style(TITLE_PT, bold=True)
    )
    words = [f"{len(found.records)} submissions, {len(found.marks)} marked"]
    if found.average is not None and found.middle is not None:
        words.append(f"mean {found.average:.1f}, median {found.middle:.1f} of {found.out_of:g}")
    if found.capped:
        words.append(f"{found.capped} capped as unsafe")
    figure.text(0.04, 0.91, "; ".join(words), **_style(TEXT_PT))


def _bare(axes: Axes, heading: str) -> None:
    axes.set_title(heading, loc="left", pad=8, **_style(10.0, bold=True))
    for side in ("top", "right"):
        axes.spines[side].set_visible(False)


def _ticks(axes: Axes) -> None:
    for label in (*axes.get_xticklabels(), *axes.get_yticklabels()):
        label.set(**_style(SMALL_PT))


def _marks(axes: Axes, found: Classroom) -> None:
    """How many marks lie in each tenth."""
    _bare(axes, "Marks")
    width = found.out_of / STEPS
    axes.bar(
        [width * (step + 0.5) for step in range(STEPS)],
        found.steps,
        width * 0.9,
        color=BAR,
        edgecolor=INK,
        linewidth=0.6,
    )
    most = max(found.steps, default=0)
    for step, count in enumerate(found.steps):
        if count:
            at = (width * (step + 0.5), count + 0.02 * max(most, 1))
            axes.text(*at, str(count), ha="center", va="bottom", **_style(SMALL_PT))
    if found.middle is not None:
        axes.axvline(found.middle, color=ALARM, linewidth=1.2, linestyle="--")
        at = (found.middle, most * 1.16 if most else 1.0)
        side = "right" if found.middle > found.out_of / 2 else "left"
        words = f" median {found.middle:.1f} "
        axes.text(*at, words, ha=side, va="center", **{**_style(SMALL_PT), "color": ALARM})
    axes.set_xlim(0, found.out_of)
    axes.set_ylim(0, most * 1.25 if most else 1.0)
    axes.set_xticks([width * step for step in range(0, STEPS + 1, 2)])
    axes.set_yticks([])
    axes.spines["left"].set_visible(False)
    axes.set_xlabel("mark", **_style(SMALL_PT))
    _ticks(axes)


def _circuits(axes: Axes, found: Classroom) -> None:
    """How much of each circuit the class has right."""
    _bare(axes, "Right, by circuit")
    rows = list(reversed(found.circuits))
    axes.barh(
        range(len(rows)),
        [each.share for each in rows],
        0.7,
        color=BAR,
        edgecolor=INK,
        linewidth=0.6,
    )
    for row, each in enumerate(rows):
        axes.text(1.03, row, f"{each.share:.0%}", va="center", **_style(SMALL_PT))
    axes.set_yticks(range(len(rows)), [each.circuit for each in rows])
    axes.set_xlim(0, 1)
    axes.set_ylim(-0.6, max(len(rows), 1) - 0.4)
    axes.set_xticks([])
    axes.spines["bottom"].set_visible(False)
    axes.tick_params(length=0)
    _ticks(axes)


def _mistakes(axes: Axes, found: Classroom) -> None:
    """The commonest mistakes; those where somebody can be hurt are hatched."""
    _bare(axes, "Commonest mistakes: in how many drawings (hatched: unsafe)")
    axes.title.set_position((0.0, 1.0))
    axes.set_title(axes.get_title(loc="left"), loc="left", x=-1.45, **_style(10.0, bold=True))
    rows = list(reversed(found.common))
    most = max((each.drawings for each in rows), default=1)
    for row, each in enumerate(rows):
        axes.barh(
            row,
            each.drawings,
            0.7,
            color="white" if each.unsafe else BAR,
            hatch="////" if each.unsafe else None,
            edgecolor=ALARM if each.unsafe else INK,
            linewidth=0.8,
        )
        words = str(each.drawings)
        axes.text(each.drawings + 0.03 * most, row, words, va="center", **_style(SMALL_PT))
    names = [fitted(printable(each.what), NAME_PT, SMALL_PT) for each in rows]
    axes.set_yticks(range(len(rows)), names)
    axes.set_xlim(0, most * 1.1)
    axes.set_ylim(-0.6, max(len(rows), 1) - 0.4)
    axes.set_xticks([])
    axes.spines["bottom"].set_visible(False)
    axes.tick_params(length=0)
    _ticks(axes)
    if not rows:
        axes.text(0.0, 0.0, "nobody lost a point", **_style(TEXT_PT))
