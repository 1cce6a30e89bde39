"""What the user is told when we made a mistake, and what of it to send us."""

from __future__ import annotations

import platform
import traceback
from collections.abc import Sequence
from importlib.metadata import version
from pathlib import Path

import click

from wirecheck.report.visible import visible


def report_error(error: Exception, arguments: Sequence[str], *, debug: bool) -> None:
    """Print to standard error what happened and what to send us; with ``debug`` all of it."""
    if debug:
        click.echo("".join(traceback.format_exception(error)), err=True, nl=False)
    python, system = platform.python_version(), f"{platform.system()} {platform.machine()}"
    lines = (
        "wirecheck: this is an error of ours, not of your wiring; nothing was decided.",
        "Please send us the lines below and, if you may, the file that was checked:",
        f"  wirecheck {version('wirecheck')}, Python {python}, {system}",
        f"  called as: wirecheck {' '.join(arguments)}",
        f"  {type(error).__name__}: {error}",
        f"  at {_place(error)}",
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
