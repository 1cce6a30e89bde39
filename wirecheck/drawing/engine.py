"""Have Graphviz render a canvas: the embedded engine by default, a system Graphviz on request.

The embedded engine is the program `graphviz-pure`, which the package of that name installs among
the scripts of the Python environment: the same bytes on every platform, SVG and PNG. A system
Graphviz (`dot` on the search path) also gives PDF. Both are run by the `graphviz` package, never
through a shell, and with a time limit.
"""

from __future__ import annotations

import html
import re
import shutil
import sys
import sysconfig
from functools import cache
from pathlib import Path
from typing import Literal

from wirecheck.drawing.canvas import Canvas, Item, Lettering
from wirecheck.drawing.dot_source import item_names, write
from wirecheck.drawing.lettering import printable

Format = Literal["svg", "png", "pdf"]
Engine = Literal["embedded", "system"]

FORMATS: dict[Engine, tuple[Format, ...]] = {
    "embedded": ("svg", "png"),
    "system": ("svg", "png", "pdf"),
}
EMBEDDED_PROGRAM = "graphviz-pure"
SYSTEM_PROGRAM = "dot"

PNG_DPI = 144
"""Twice the point size: lettering of 9 points is 18 pixels high, crisp on a screen and on paper."""

TIME_LIMIT_S = 60.0
"""No sheet takes more than a second or two; beyond this something hangs."""


class DrawingError(Exception):
    """A drawing that could not be rendered, with a message for the user."""


def render(
    canvas: Canvas,
    file_format: Format,
    *,
    engine: Engine = "embedded",
    dpi: int = PNG_DPI,
    time_limit_s: float = TIME_LIMIT_S,
) -> bytes:
    """Return the canvas as a finished SVG, PNG or PDF file.

    Args:
        canvas: what to draw.
        file_format: `pdf` needs the system engine.
        engine: `embedded`, or `system` for a Graphviz installed on the machine.
        dpi: resolution of a PNG, in pixels an inch.
        time_limit_s: how long Graphviz may take.

    Raises:
        DrawingError: the engine is missing, cannot give the format, fails, or takes too long.
    """
    if file_format not in FORMATS[engine]:
        raise DrawingError(_no_such_format(file_format, engine))
    dpi_option = [f"-Gdpi={dpi}"] if file_format == "png" else []
    picture = _run(program(engine), [f"-T{file_format}", *dpi_option], write(canvas), time_limit_s)
    if file_format != "svg":
        return picture
    return _titled(picture.decode("utf-8"), canvas).encode("utf-8")


def program(engine: Engine) -> Path:
    """Return the program of an engine.

    Raises:
        DrawingError: it is not installed; the message says how to get it.
    """
    if engine == "system":
        found = shutil.which(SYSTEM_PROGRAM)
        if found is None:
            raise DrawingError(
                "no Graphviz is installed on this machine (there is no program 'dot' on the search "
                "path); install it, or draw with the embedded engine"
            )
        return Path(found)
    return embedded_program()


@cache
def embedded_program() -> Path:
    """Look among the scripts of this environment, beside the interpreter, then on the path."""
    places = [sysconfig.get_path("scripts"), str(Path(sys.executable).parent), None]
    if sysconfig.get_preferred_scheme("user") in sysconfig.get_scheme_names():
        places.insert(2, sysconfig.get_path("scripts", sysconfig.get_preferred_scheme("user")))
    for place in places:
        found = shutil.which(EMBEDDED_PROGRAM, path=place)
        if found is not None:
            return Path(found)
    raise DrawingError(
        f"the drawing engine '{EMBEDDED_PROGRAM}' is missing from this installation; "
        f"install it with: python -m pip install {EMBEDDED_PROGRAM}"
    )


def _no_such_format(wanted: str, engine: Engine) -> str:
    can = " and ".join(name.upper() for name in FORMATS[engine])
    if wanted in FORMATS["system"]:
        return (
            f"the embedded engine draws {can}, not {wanted.upper()}; "
            f"for {wanted.upper()} choose the system engine (an installed Graphviz)"
        )
    return f"there is no drawing format '{wanted}'; the {engine} engine draws {can}"


def _run(executable: Path, options: list[str], source: str, time_limit_s: float) -> bytes:
    """Run Graphviz as the `graphviz` package does, which itself can only call a program "dot"."""
    import subprocess

    from graphviz.backend import execute

    # -n2: every node and every edge stays where it is.
    command = [str(executable), "-Kneato", "-n2", *options]
    try:
        done = execute.run_check(
            command, input=source.encode(), capture_output=True, quiet=True, timeout=time_limit_s
        )
    except execute.ExecutableNotFound as error:
        raise DrawingError(f"the drawing engine {executable} is gone") from error
    except subprocess.TimeoutExpired as error:
        raise DrawingError(f"the drawing engine took longer than {time_limit_s:g} s") from error
    except subprocess.CalledProcessError as error:
        raise DrawingError(f"the drawing engine failed: {_last_words(error.stderr)}") from error
    except OSError as error:
        reason = error.strerror or "unknown reason"
        raise DrawingError(f"the drawing engine {executable} does not run: {reason}") from error
    return bytes(done.stdout)


def _last_words(stderr: bytes | None) -> str:
    """Return the last line that is not one of Graphviz's remarks about letter widths."""
    lines = (stderr or b"").decode("utf-8", "replace").splitlines()
    told = [line for line in lines if line.strip() and not line.startswith("Warning")]
    return told[-1].strip() if told else "it gave no reason"


_TITLE = re.compile(r"<title>([^<]*)</title>\n?")
_COMMENT = re.compile(r"<!--.*?-->\n?", re.DOTALL)
_OWN_ID = re.compile(r'<g id="(?:node|edge)\d+" ')


def _titled(svg: str, canvas: Canvas) -> str:
    """Replace Graphviz's titles, the names of nodes and edges, by those of the tags.

    A browser shows a title when its item is pointed at, and a screen reader reads it; an item
    without one must not show an inner name instead. Ids of Graphviz's own (node1, edge1) go, as
    they would clash with those of another sheet in the same page.
    """
    titles = {name: _title_of(item) for name, item in item_names(canvas).items()}
    titles["sheet"] = printable(canvas.title)

    def told(match: re.Match[str]) -> str:
        name = match[1].partition("&#45;&#45;")[0]
        title = titles.get(name, "")
        return f"<title>{html.escape(title)}</title>\n" if title else ""

    return _TITLE.sub(told, _OWN_ID.sub("<g ", _COMMENT.sub("", svg)))


def _title_of(item: Item) -> str:
    if item.tag.title:
        return item.tag.title
    return item.text if isinstance(item, Lettering) and item.tag.id else ""
