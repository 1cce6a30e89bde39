"""``wirecheck check``: what is wrong in the wiring, at its line."""

from __future__ import annotations

import click

from wirecheck.cli.inputs import Input, find_inputs, read_input
from wirecheck.cli.options import debug_option, files_argument, form_option
from wirecheck.cli.printing import page, print_json, print_lines
from wirecheck.cli.progress import told
from wirecheck.report.checks import CheckedFile, tally


@click.command("check")
@files_argument
@form_option
@debug_option
@click.pass_context
def command(ctx: click.Context, files: tuple[str, ...], form: str) -> None:
    """Name every wiring mistake at its line.

    Takes .wiring files, folders (every .wiring file below them) or - for standard input.
    """
    import wirecheck

    inputs = find_inputs(files)
    checked = [check_input(each) for each in told(inputs, len(inputs), "checking")]
    count = len(wirecheck.rule_names())
    if form == "json":
        from wirecheck.report.check_json import check_json

        print_json(check_json(checked, count))
    else:
        from wirecheck.report.check_text import check_text

        print_lines(check_text(checked, count, page()))
    ctx.exit(tally(checked, count).exit_code)


def check_input(given: Input) -> CheckedFile:
    """Read and check one input; one that cannot be read has a problem and no result."""
    import wirecheck

    read = read_input(given)
    checked = wirecheck.check(read.built.diagram) if read.built else None
    return CheckedFile(given.name, read.problems, checked)
