"""``wirecheck meter``: where to put the probes at this unit, and what they show."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Literal

import click

from wirecheck.cli.check import check_input
from wirecheck.cli.inputs import Input, find_inputs, problem_of
from wirecheck.cli.options import debug_option, files_argument
from wirecheck.cli.printing import page, print_json, print_lines, print_text
from wirecheck.cli.progress import told

if TYPE_CHECKING:
    from wirecheck.meter.reading import MeterSheet
    from wirecheck.report.meter_files import MeterFile

Picture = Literal["svg", "png"]


@click.command("meter")
@files_argument
@click.option(
    "--as",
    "form",
    type=click.Choice(["text", "json", "csv"]),
    default="text",
    show_default=True,
    help="Text for people, JSON for programs, CSV for a table.",
)
@click.option(
    "--picture",
    type=click.Choice(["svg", "png"]),
    help="Draw the sheet too, on A4 to write on: NAME-meter-1.svg or .png and so on.",
)
@click.option(
    "--out",
    "folder",
    type=click.Path(file_okay=False, path_type=Path),
    default=".",
    help="Folder for the pages; made if it is not there.  [default: this one]",
)
@debug_option
@click.pass_context
def command(
    ctx: click.Context, *, files: tuple[str, ...], form: str, picture: Picture | None, folder: Path
) -> None:
    """Say where to put the probes at this unit, stage by stage, and what they show.

    Takes what check takes. Every value is computed for the wiring as drawn.
    """
    from wirecheck.report.meter_files import exit_code

    inputs = find_inputs(files)
    taken: dict[Path, str] = {}
    measured = [
        _measure(each, picture, folder, taken) for each in told(inputs, len(inputs), "measuring")
    ]
    if form == "json":
        from wirecheck.report.meter_json import meters_json

        print_json(meters_json(measured))
    elif form == "csv":
        from wirecheck.report.meter_csv import meters_csv

        print_text(meters_csv(measured))
    else:
        from wirecheck.report.meter_text import meters_text

        print_lines(meters_text(measured, page()))
    ctx.exit(exit_code(measured))


def _measure(
    given: Input, picture: Picture | None, folder: Path, taken: dict[Path, str]
) -> MeterFile:
    """Measure one input; ``taken`` says which file stands for which input already."""
    import wirecheck
    from wirecheck.report.meter_files import MeterFile

    checked = check_input(given)
    if checked.checked is None:
        return MeterFile(given.name, checked.problems, None)
    sheet = wirecheck.meter(checked.checked)
    file = MeterFile(given.name, checked.problems, sheet)
    if picture is None:
        return file
    paths, refused = _draw(sheet, picture, folder / f"{given.stem}-meter", taken, given.name)
    problems = [problem_of(given.name, reason) for reason in refused]
    return file._replace(problems=(*file.problems, *problems), pictures=tuple(paths))


def _draw(
    sheet: MeterSheet, picture: Picture, stem: Path, taken: dict[Path, str], name: str
) -> tuple[list[str], list[str]]:
    """Write the pages: the paths of those written, and why others could not be."""
    import wirecheck
    from wirecheck.report.whole_file import write_whole

    if taken.setdefault(stem, name) != name:
        return [], [f"{stem} is the sheet of {taken[stem]} already; draw into another folder"]
    written: list[str] = []
    for number, drawn in enumerate(wirecheck.draw_meter(sheet, picture), 1):
        path = stem.with_name(f"{stem.name}-{number}.{picture}")
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            write_whole(path, drawn)
        except OSError as error:
            reason = (error.strerror or "it failed").lower()
            return written, [f"{path} cannot be written: {reason}"]
        written.append(str(path))
    return written, []
