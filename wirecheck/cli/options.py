"""What the commands take in common."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

import click

FC = TypeVar("FC", bound=Callable[..., Any] | click.Command)

DEBUG = "--debug"

#: The input of a command.
files_argument = click.argument("files", nargs=-1, required=True, metavar="FILE|FOLDER|- ...")

form_option = click.option(
    "--as",
    "form",
    type=click.Choice(["text", "json"]),
    default="text",
    show_default=True,
    help="Text for people, or JSON for programs.",
)

#: From which class of findings on a check ends with 1.
fail_on_option = click.option(
    "--fail-on",
    type=click.Choice(["safety", "operation", "workmanship"]),
    default="workmanship",
    show_default=True,
    help="End with 1 only for findings of this class or a graver one.",
)


def baseline_options(command: FC) -> FC:
    """Findings that are known already."""
    write = click.option(
        "--write-baseline", is_flag=True, help="Write what is found into that file, as known."
    )
    read = click.option(
        "--baseline",
        type=click.Path(dir_okay=False, path_type=Path),
        metavar="FILE",
        help="Known findings, which are set aside; new ones show.",
    )
    return read(write(command))


sheet_format_option = click.option(
    "--format",
    "file_format",
    type=click.Choice(["svg", "png"]),
    default="svg",
    show_default=True,
    help="Of the sheets.",
)

sheets_folder_option = click.option(
    "--out",
    "folder",
    type=click.Path(file_okay=False, path_type=Path),
    default=".",
    help="Folder for the sheets; made if it is not there.  [default: this one]",
)

#: Read by `wirecheck.cli.main.run`, which catches the error; a command has nothing to do for it.
debug_option = click.option(
    DEBUG,
    is_flag=True,
    expose_value=False,
    help="On an error of ours print all that we know of it.",
)
