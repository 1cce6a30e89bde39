"""``wirecheck check``: what is wrong in the wiring, at its line."""

from __future__ import annotations

import click

from wirecheck.cli.inputs import STANDARD_INPUT, Input, find_inputs, problem_of, read_input
from wirecheck.cli.options import debug_option, files_argument
from wirecheck.cli.printing import page, print_json, print_lines, print_text
from wirecheck.cli.progress import told
from wirecheck.report.checks import CheckedFile, tally

#: Some editors put it in front of a text; a file that had it keeps it.
BYTE_ORDER_MARK = b"\xef\xbb\xbf"


@click.command("check")
@files_argument
@click.option(
    "--fix",
    is_flag=True,
    help="Make the edits that are certain, one by one, then check what stands there.",
)
@click.option(
    "--faults",
    is_flag=True,
    help="Instead, try every single fault of leads and contacts: what the unit then does.",
)
@click.option(
    "--assumed",
    is_flag=True,
    help="List in the text every value that was taken as given because the file does not say it.",
)
@click.option(
    "--as",
    "form",
    type=click.Choice(["text", "json", "csv"]),
    default="text",
    show_default=True,
    help="Text for people, JSON for programs; a table of faults also as CSV.",
)
@debug_option
@click.pass_context
def command(  # noqa: PLR0913  # one for each option
    ctx: click.Context,
    files: tuple[str, ...],
    *,
    fix: bool,
    faults: bool,
    assumed: bool,
    form: str,
) -> None:
    """Name every wiring mistake at its line.

    Takes .wiring files, folders (every .wiring file below them) or - for standard input.
    """
    import wirecheck

    if faults and fix:
        raise click.UsageError("--faults changes nothing; leave --fix out")
    if form == "csv" and not faults:
        raise click.UsageError("only the table of --faults can be had as CSV")
    inputs = find_inputs(files)
    if faults:
        ctx.exit(_tell_faults(inputs, form))
    if fix and any(each.name == STANDARD_INPUT for each in inputs):
        raise click.UsageError("standard input cannot be changed in place; leave --fix out")
    checked = [check_input(each) for each in told(inputs, len(inputs), "checking")]
    if fix:
        checked = [_fixed(each) for each in checked]
    count = len(wirecheck.rule_names())
    if form == "json":
        from wirecheck.report.check_json import check_json

        print_json(check_json(checked, count))
    else:
        from wirecheck.report.check_text import check_text

        print_lines(check_text(checked, count, page(), assumed=assumed))
    ctx.exit(tally(checked, count).exit_code)


def _tell_faults(inputs: list[Input], form: str) -> int:
    """Try every single fault of the inputs and print what comes of them; the exit code."""
    import wirecheck
    from wirecheck.report.faults_files import FaultsFile, exit_code

    files = []
    for each in told(inputs, len(inputs), "trying faults"):
        read = read_input(each)
        tried = wirecheck.try_faults(read.built.diagram) if read.built else None
        files.append(FaultsFile(each.name, read.problems, tried))
    if form == "text":
        from wirecheck.report.faults_text import faults_text

        print_lines(faults_text(files, page()))
    elif form == "json":
        from wirecheck.report.faults_json import faults_json

        print_json(faults_json(files))
    else:
        from wirecheck.report.faults_json import faults_csv

        print_text(faults_csv(files))
    return exit_code(files)


def check_input(given: Input) -> CheckedFile:
    """Read and check one input; one that cannot be read has a problem and no result."""
    import wirecheck

    read = read_input(given)
    checked = wirecheck.check(read.built.diagram) if read.built else None
    return CheckedFile(given.name, read.problems, checked)


def _fixed(file: CheckedFile) -> CheckedFile:
    """Make the certain edits in one file, unless something of it was not understood."""
    from pathlib import Path

    from wirecheck.correct.certain import fixed
    from wirecheck.report.whole_file import write_whole

    if file.problems or file.checked is None:
        return file
    done = fixed(file.checked.diagram)
    if not done.steps:
        return file
    path = Path(file.file)
    try:
        mark = BYTE_ORDER_MARK if path.read_bytes().startswith(BYTE_ORDER_MARK) else b""
        write_whole(path, mark + done.text.encode("utf-8"))
    except OSError as error:
        reason = f"cannot be written: {(error.strerror or 'it failed').lower()}"
        return file._replace(problems=(problem_of(file.file, reason),))
    return file._replace(checked=done.checked, fixed=done.steps)
