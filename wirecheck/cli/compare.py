"""``wirecheck compare``: whether two diagrams do the same."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from wirecheck.cli.inputs import STANDARD_INPUT, Input, Read, problem_of, read_input
from wirecheck.cli.options import debug_option, form_option
from wirecheck.cli.printing import page, print_json, print_lines

if TYPE_CHECKING:
    from wirecheck.report.compared import ComparedFiles


@click.command("compare")
@click.argument("first", metavar="FILE|-")
@click.argument("second", metavar="FILE|-")
@form_option
@debug_option
@click.pass_context
def command(ctx: click.Context, *, first: str, second: str, form: str) -> None:
    """Say whether two diagrams do the same, and where they do not.

    Splices and strips, the order of leads, names, labels and gauges do not count, nor does the
    order of switches in a row in the ungrounded lead. It returns 0 if they do the same, 1 if not.
    """
    from wirecheck.report.compared import exit_code

    if first == second == STANDARD_INPUT:
        raise click.UsageError("only one of the two can come from standard input")
    compared = _compared(first, second)
    if form == "json":
        from wirecheck.report.compare_json import compare_json

        print_json(compare_json(compared))
    else:
        from wirecheck.report.compare_text import compare_text

        print_lines(compare_text(compared, page()))
    ctx.exit(exit_code(compared))


def _compared(first: str, second: str) -> ComparedFiles:
    import wirecheck
    from wirecheck.report.compared import ComparedFiles

    one, other = _read(first), _read(second)
    problems = (*one.problems, *other.problems)
    if one.built is None or other.built is None:
        return ComparedFiles(first, second, problems, None)
    names = (one.name, other.name)
    comparison = wirecheck.compare(one.built.diagram, other.built.diagram, names=names)
    return ComparedFiles(first, second, problems, comparison)


def _read(name: str) -> Read:
    """Read one file; a folder is none."""
    if name != STANDARD_INPUT and Path(name).is_dir():
        return Read(name, None, (problem_of(name, "cannot be compared: it is a folder"),))
    return read_input(Input(name))
