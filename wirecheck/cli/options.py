"""What the commands take in common."""

from __future__ import annotations

import click

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

#: Read by `wirecheck.cli.main.run`, which catches the error; a command has nothing to do for it.
debug_option = click.option(
    DEBUG,
    is_flag=True,
    expose_value=False,
    help="On an error of ours print all that we know of it.",
)
