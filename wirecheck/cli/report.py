"""``wirecheck report``: one HTML file of a unit, to hand over or to print."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import click

from wirecheck.cli.draw import date_option, make_folder
from wirecheck.cli.inputs import Input, find_inputs, problem_of, read_input
from wirecheck.cli.options import debug_option, files_argument, form_option
from wirecheck.cli.printing import page, print_json, print_lines
from wirecheck.cli.progress import told

if TYPE_CHECKING:
    from wirecheck.report.html.files import ReportFile


@click.command("report")
@files_argument
@click.option(
    "--out",
    "folder",
    type=click.Path(file_okay=False, path_type=Path),
    default=".",
    help="Folder for the reports; made if it is not there.  [default: this one]",
)
@click.option(
    "--seconds",
    type=click.FloatRange(0.1, 3600),
    default=20.0,
    show_default=True,
    help="Look no longer than this for the correction of one file.",
)
@date_option
@form_option
@debug_option
@click.pass_context
def command(  # noqa: PLR0913 - one for each option
    ctx: click.Context,
    *,
    files: tuple[str, ...],
    folder: Path,
    seconds: float,
    sheet_date: str,
    form: str,
) -> None:
    """Write a report of each unit as one HTML file that needs nothing beside it.

    Takes what check takes; writes NAME-report.html: findings, the sheets as found and corrected, a
    call for heat step by step with what is live, the meter sheet, the lists.
    """
    from wirecheck.report.html.files import exit_code, reports_json, reports_text

    inputs = find_inputs(files)
    make_folder(folder)
    taken: dict[Path, str] = {}
    done = [
        _report(each, folder, seconds, sheet_date, taken)
        for each in told(inputs, len(inputs), "reporting")
    ]
    if form == "json":
        print_json(reports_json(done))
    else:
        print_lines(reports_text(done, page()))
    ctx.exit(exit_code(done))


def _report(
    given: Input, folder: Path, seconds: float, date: str, taken: dict[Path, str]
) -> ReportFile:
    """Write the report of one input; ``taken`` says which file is which input's already."""
    import wirecheck
    from wirecheck.report.html.files import ReportFile
    from wirecheck.report.whole_file import write_whole

    read = read_input(given)
    if read.built is None:
        return ReportFile(given.name, read.problems, (), "")
    path = folder / f"{given.stem}-report.html"
    checked = wirecheck.check(read.built.diagram)
    if taken.setdefault(path, given.name) != given.name:
        reason = f"{path} is the report of {taken[path]} already; write into another folder"
        return ReportFile(given.name, (*read.problems, problem_of(given.name, reason)), (), "")
    text = wirecheck.report_page(
        checked, given.name, problems=read.problems, seconds=seconds, date=date
    )
    try:
        write_whole(path, text.encode("utf-8"))
    except OSError as error:
        reason = f"{path} cannot be written: {(error.strerror or 'it failed').lower()}"
        problems = (*read.problems, problem_of(given.name, reason))
        return ReportFile(given.name, problems, checked.findings, "")
    return ReportFile(given.name, read.problems, checked.findings, str(path))
