"""``wirecheck check``: what is wrong in the wiring, at its line."""

from __future__ import annotations

import click

from wirecheck.cli.inputs import STANDARD_INPUT, Input, find_inputs, problem_of, read_input
from wirecheck.cli.options import debug_option, files_argument, form_option
from wirecheck.cli.printing import page, print_json, print_lines
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
@form_option
@debug_option
@click.pass_context
def command(ctx: click.Context, files: tuple[str, ...], *, fix: bool, form: str) -> None:
    """Name every wiring mistake at its line.

    Takes .wiring files, folders (every .wiring file below them) or - for standard input.
    """
    import wirecheck

    inputs = find_inputs(files)
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

        print_lines(check_text(checked, count, page()))
    ctx.exit(tally(checked, count).exit_code)


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
