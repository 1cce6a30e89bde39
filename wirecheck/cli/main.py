"""The ``wirecheck`` command: finds the subcommand, and turns whatever goes wrong into a message.

A start imports click and nothing else; a command's module is imported when it is called, and what
it needs when it runs.
"""

from __future__ import annotations

import gc
import sys
from collections.abc import Sequence
from importlib import import_module
from typing import cast

import click

from wirecheck.cli.options import DEBUG, debug_option
from wirecheck.cli.printing import OutputLostError, forgive_encoding, give_up_output
from wirecheck.report.checks import OUR_ERROR, UNUSABLE

#: The commands, in the order of the work: each is the module of its name.
COMMANDS = (
    "check",
    "draw",
    "sequence",
    "correct",
    "compare",
    "meter",
    "troubleshoot",
    "lists",
    "replace",
    "practice",
    "grade",
    "report",
    "notes",
    "format",
    "kinds",
    "explain",
    "schema",
    "lsp",
)
#: What a shell expects of a program that was stopped by the keyboard (128 + SIGINT).
STOPPED = 130


class Commands(click.Group):
    """The subcommands, each imported when it is asked for."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002
        """Name the commands in the order of the work."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:  # noqa: ARG002
        """Import a command; None if there is none of that name."""
        if cmd_name not in COMMANDS:
            return None
        return cast(click.Command, import_module(f"wirecheck.cli.{cmd_name}").command)

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """Find a command; for one that is not there say which was meant."""
        if args and args[0] not in COMMANDS and not args[0].startswith("-"):
            from wirecheck.model.nearest import nearest

            near = nearest(args[0], COMMANDS)
            hint = f"did you mean {near}?" if near else f"there are {', '.join(COMMANDS)}"
            raise click.UsageError(f"there is no command {args[0]!r}; {hint}", ctx)
        return super().resolve_command(ctx, args)


@click.command(
    cls=Commands,
    context_settings={"help_option_names": ["-h", "--help"]},
    epilog=(
        "It returns 0 if nothing was found, 1 if something was, 2 if some of the input or the "
        "call could not be used, 3 on an error of ours. "
        "A check that finds nothing does not make an installation safe: local codes, the "
        "appliance maker's instructions and licensed people decide."
    ),
)
@debug_option
@click.version_option(package_name="wirecheck", message="wirecheck %(version)s")
def commands() -> None:
    """Check and draw the 24 V wiring of gas burner controls, typed up as found."""


def main() -> None:
    """Run the command line and end the process with what it comes to."""
    # A call is over before unused rings of objects fill any memory: looking for them less often,
    # and not at all at the end, is a tenth of the time a check of one file takes.
    gc.set_threshold(100_000, 50, 100)
    code = run(sys.argv[1:])
    gc.freeze()
    sys.exit(code)


def run(arguments: Sequence[str]) -> int:
    """Run one command line and return its exit code: 0 to 3, or `STOPPED`."""
    forgive_encoding()
    try:
        code = commands.main(list(arguments), prog_name="wirecheck", standalone_mode=False)
    except click.ClickException as error:
        error.show()
        return error.exit_code
    except click.Abort:
        return STOPPED
    except OutputLostError as error:
        give_up_output()
        if error.reason:
            click.echo(f"wirecheck: the output could not be written: {error.reason}", err=True)
        return UNUSABLE
    except Exception as error:  # noqa: BLE001 - whatever it is, the user gets words
        from wirecheck.cli.our_error import report_error

        report_error(error, arguments, debug=DEBUG in arguments)
        return OUR_ERROR
    return int(code or 0)
