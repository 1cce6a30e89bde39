"""From a run to the finished file of its timeline.

The same run gives the same bytes: no clock, no random names, no settings or faces of the machine.
"""

from __future__ import annotations

import logging
import warnings
from io import BytesIO
from typing import Any, Literal

import matplotlib as mpl

from wirecheck.drawing.timeline.sheet import Sheet, title
from wirecheck.sequence.run import Run

PIXELS_PER_INCH = 150

_SETTINGS: dict[Any, Any] = {
    "svg.hashsalt": "wirecheck",
    "svg.fonttype": "path",
    "hatch.linewidth": 0.6,
    "text.parse_math": False,
    "path.simplify": False,
}


def draw(run: Run, file_format: Literal["svg", "png"] = "svg") -> bytes:
    """Draw the timeline of a run and return the finished file."""
    # It logs where it keeps its list of faces, which nobody asked for.
    logging.getLogger("matplotlib").setLevel(logging.ERROR)
    with mpl.rc_context(), warnings.catch_warnings():
        mpl.rcdefaults()
        mpl.rcParams.update(_SETTINGS)
        # A letter that the face lacks is drawn as a box, and that is all there is to it.
        warnings.filterwarnings("ignore", message=".*missing from.*font")
        out = BytesIO()
        Sheet(run).figure.savefig(
            out, format=file_format, dpi=PIXELS_PER_INCH, metadata=_about(run, file_format)
        )
    return out.getvalue()


def _about(run: Run, file_format: str) -> dict[str, str | None]:
    """What the file says of itself; nothing that differs from one day to the next."""
    if file_format == "svg":
        return {"Date": None, "Creator": "wirecheck", "Title": title(run)}
    return {"Software": "wirecheck", "Title": title(run)}
