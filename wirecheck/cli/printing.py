"""Standard output: lines for people, one document for programs, and what happens if it is gone."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterable
from typing import Any

from wirecheck.report.page import NARROWEST, PLAIN_WIDTH, WIDEST, Page


class OutputLostError(Exception):
    """Standard output takes nothing more; no reason if its reader just stopped reading."""

    def __init__(self, reason: str) -> None:
        super().__init__(reason)
        self.reason = reason


def forgive_encoding() -> None:
    """Have a terminal that cannot show a character show its code instead of failing."""
    for stream in (sys.stdout, sys.stderr):
        if hasattr(stream, "reconfigure"):
            stream.reconfigure(errors="backslashreplace")


def page() -> Page:
    """Return the page that standard output is: colour only for a person who has not refused it.

    A ``NO_COLOR`` that is not empty refuses it (no-color.org), and so does a terminal of the type
    ``dumb``.
    """
    if sys.stdout is None or not sys.stdout.isatty():
        return Page(PLAIN_WIDTH)
    import shutil

    width = shutil.get_terminal_size((PLAIN_WIDTH, 24)).columns
    colour = not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"
    return Page(max(NARROWEST, min(width, WIDEST)), colour=colour, to_pipe=False)


def print_lines(lines: Iterable[str]) -> None:
    """Print lines.

    Raises:
        OutputLostError: standard output takes no more.
    """
    print_text("".join(f"{line}\n" for line in lines))


def print_text(text: str) -> None:
    """Print a text as it is, its line ends included; raises as `print_lines` does."""
    if sys.stdout is None:
        return
    try:
        sys.stdout.write(text)
        sys.stdout.flush()
    except BrokenPipeError:
        raise OutputLostError("") from None
    except OSError as error:
        raise OutputLostError((error.strerror or "it failed").lower()) from None


def print_aside(lines: Iterable[str]) -> None:
    """Print lines to standard error, where they do not get into the output proper."""
    if sys.stderr is not None:
        sys.stderr.write("".join(f"{line}\n" for line in lines))


def print_json(document: dict[str, Any]) -> None:
    """Print a document; raises as `print_lines` does."""
    import json

    print_text(json.dumps(document, indent=2) + "\n")


def give_up_output() -> None:
    """Send what is still buffered nowhere, so that the end of the process does not fail on it."""
    if sys.stdout is not None and hasattr(sys.stdout, "fileno"):
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, sys.stdout.fileno())
        os.close(nowhere)
