"""What the user is told when we made a mistake, and what of it to send us."""

from __future__ import annotations

import platform
import traceback
from collections.abc import Sequence
from importlib.metadata import version
from pathlib import Path
from typing import NamedTuple

import click

from wirecheck.report.visible import visible


class OurError(NamedTuple):
    """An error of ours in words, so that it can be sent from one process to another.

    Attributes:
        what: its kind and what it says.
        place: the innermost place in our own code.
        trace: all that Python knows of it.
    """

    what: str
    place: str
    trace: str = ""


class PassedOnError(Exception):
    """An error of ours that another process put into words."""

    def __init__(self, error: OurError) -> None:
        super().__init__(error.what)
        self.error = error


def in_words(error: Exception) -> OurError:
    """Put an error into words."""
    if isinstance(error, PassedOnError):
        return error.error
    trace = "".join(traceback.format_exception(error))
    return OurError(f"{type(error).__name__}: {error}", _place(error), trace)


def report_error(error: Exception, arguments: Sequence[str], *, debug: bool) -> None:
    """Print to standard error what happened and what to send us; with ``debug`` all of it."""
    report_our_error(in_words(error), arguments, debug=debug)


def report_our_error(error: OurError, arguments: Sequence[str], *, debug: bool) -> None:
    """Print an error that was put into words, as `report_error` does."""
    if debug:
        click.echo(error.trace, err=True, nl=False)
    python, system = platform.python_version(), f"{platform.system()} {platform.machine()}"
    lines = (
        "wirecheck: this is an error of ours, not of your wiring; nothing was decided.",
        "Please send us the lines below and, if you may, the file that was checked:",
        f"  wirecheck {version('wirecheck')}, Python {python}, {system}",
        f"  called as: wirecheck {' '.join(arguments)}",
        f"  {error.what}",
        f"  at {error.place}",
    )
    for line in lines:
        click.echo(visible(line), err=True)
    if not debug:
        click.echo("The same call with --debug prints more.", err=True)


def _place(error: Exception) -> str:
    """The innermost place in our own code."""
    package = Path(__file__).parents[1]
    places = [
        frame
        for frame in traceback.extract_tb(error.__traceback__)
        if Path(frame.filename).is_relative_to(package)
    ]
    if not places:
        return "an unknown place"
    last = places[-1]
    return f"{Path(last.filename).relative_to(package).as_posix()}:{last.lineno} in {last.name}"
