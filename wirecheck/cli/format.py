"""``wirecheck format``: the same diagram in the canonical form."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from wirecheck.cli.inputs import (
    STANDARD_INPUT,
    Input,
    find_inputs,
    problem_of,
    read_bytes,
    unreadable,
)
from wirecheck.cli.options import debug_option, files_argument, form_option
from wirecheck.cli.printing import page, print_aside, print_json, print_lines, print_text

if TYPE_CHECKING:
    from wirecheck.report.formatted import FormattedFile


@click.command("format")
@files_argument
@click.option("--write", is_flag=True, help="Change the files in place, each whole or not at all.")
@click.option("--check", is_flag=True, help="Only name the files that would change; then exit 1.")
@click.option("--diff", is_flag=True, help="Show what would change; then exit 1.")
@form_option
@debug_option
@click.pass_context
def command(  # noqa: PLR0913 - one for each option
    ctx: click.Context,
    files: tuple[str, ...],
    *,
    write: bool,
    check: bool,
    diff: bool,
    form: str,
) -> None:
    """Print the same diagram in the canonical form; comments stay, no net changes.

    Takes what check takes. A statement that cannot be read stays as it is typed. Without --write
    the files stay as they are.
    """
    from wirecheck.report.check_text import problem_text
    from wirecheck.report.formatted import exit_code, formatted_json

    inputs = find_inputs(files)
    if write and (check or diff):
        raise click.UsageError("--write changes the files; --check and --diff only look")
    if write and any(each.name == STANDARD_INPUT for each in inputs):
        raise click.UsageError("standard input cannot be changed in place; leave --write out")
    done = [_format(each) for each in inputs]
    if write:
        done = [_write(each) for each in done]
    if form == "json":
        print_json(formatted_json(done))
    else:
        _print(done, quiet=write, check=check, diff=diff)
        aside = page()
        print_aside(
            line
            for each in done
            for problem in each.problems
            for line in problem_text(problem, aside)
        )
    ctx.exit(exit_code(done, judged=check or diff))


def _format(given: Input) -> FormattedFile:
    """Format one input; one that is no text stays as it is."""
    import wirecheck
    from wirecheck.report.formatted import FormattedFile

    try:
        data = read_bytes(given)
        piped = given.name == STANDARD_INPUT
        built = wirecheck.load_bytes(data, given.name) if piped else wirecheck.load(given.name)
    except OSError as error:
        return FormattedFile(given.name, "", "", (unreadable(given.name, error),))
    # What a file includes is not formatted with it, so its problems are not of this call.
    problems = tuple(each for each in built.problems if each.span.file == given.name)
    try:
        text = data.decode("utf-8")
    except UnicodeDecodeError:
        return FormattedFile(given.name, "", "", problems)
    return FormattedFile(given.name, text, wirecheck.format_text(text), problems)


def _write(file: FormattedFile) -> FormattedFile:
    """Put a file that changes in its place."""
    from wirecheck.report.whole_file import write_whole

    if not file.changes:
        return file
    try:
        write_whole(Path(file.file), file.after.encode("utf-8"))
    except OSError as error:
        reason = f"cannot be written: {(error.strerror or 'it failed').lower()}"
        return file._replace(problems=(*file.problems, problem_of(file.file, reason)))
    return file


def _print(done: list[FormattedFile], *, quiet: bool, check: bool, diff: bool) -> None:
    """Print the canonical texts, or of --check the names, of --diff the differences."""
    from wirecheck.report.formatted import difference
    from wirecheck.report.visible import visible

    if check or quiet:
        print_lines(visible(each.file) for each in done if each.changes)
    if diff:
        print_lines(visible(line) for each in done for line in difference(each))
    elif not check and not quiet:
        for each in done:
            print_text(each.after)
