"""``wirecheck draw``: the ladder and the connection sheet, with the findings marked."""

from __future__ import annotations

from datetime import date, datetime
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

import click

from wirecheck.cli.check import check_input
from wirecheck.cli.inputs import Input, find_inputs, problem_of
from wirecheck.cli.options import debug_option, files_argument, form_option, sheets_folder_option
from wirecheck.cli.printing import page, print_json, print_lines
from wirecheck.cli.progress import told

if TYPE_CHECKING:
    from wirecheck.drawing.engine import Engine, Format
    from wirecheck.report.drawings import DrawnFile
    from wirecheck.sheets import Sheet

SHEETS: dict[str, tuple[Sheet, ...]] = {
    "both": ("ladder", "connections"),
    "ladder": ("ladder",),
    "connections": ("connections",),
}


def _date(_ctx: click.Context, _option: click.Parameter, value: str) -> str:
    """The date as printed; "" for none."""
    if value == "today":
        return datetime.now().astimezone().date().isoformat()
    if value == "none":
        return ""
    try:
        return date.fromisoformat(value).isoformat()
    except ValueError:
        raise click.BadParameter(f"{value!r} is no date; write it like 2026-11-25") from None


date_option = click.option(
    "--date",
    "sheet_date",
    default="today",
    metavar="YYYY-MM-DD|none",
    callback=_date,
    help="Date for the title block.  [default: today]",
)


class Wish(NamedTuple):
    """How to draw, and where to put it."""

    sheets: tuple[Sheet, ...]
    file_format: Format
    engine: Engine
    folder: Path
    date: str


@click.command("draw")
@files_argument
@click.option(
    "--sheet",
    type=click.Choice(list(SHEETS)),
    default="both",
    show_default=True,
    help="The ladder shows how it works, the connection sheet what runs where.",
)
@click.option(
    "--format",
    "file_format",
    type=click.Choice(["svg", "png", "pdf"]),
    default="svg",
    show_default=True,
    help="PDF needs the system engine.",
)
@click.option(
    "--engine",
    type=click.Choice(["embedded", "system"]),
    default="embedded",
    show_default=True,
    help="The engine that comes along, or a Graphviz installed on the machine.",
)
@sheets_folder_option
@date_option
@form_option
@debug_option
@click.pass_context
def command(  # noqa: PLR0913 - one for each option
    ctx: click.Context,
    files: tuple[str, ...],
    *,
    sheet: str,
    file_format: Format,
    engine: Engine,
    folder: Path,
    sheet_date: str,
    form: str,
) -> None:
    """Draw the ladder and the connection sheet, with the findings marked.

    Takes what check takes; writes NAME-ladder.svg and NAME-connections.svg for each file.
    """
    from wirecheck.drawing.engine import DrawingError
    from wirecheck.report.drawings import drawings_json, drawings_text, exit_code

    wish = Wish(SHEETS[sheet], file_format, engine, folder, sheet_date)
    inputs = find_inputs(files)
    taken: dict[Path, str] = {}
    make_folder(folder)
    try:
        drawn = [_draw(each, wish, taken) for each in told(inputs, len(inputs), "drawing")]
    except DrawingError as error:
        raise click.UsageError(str(error)) from error
    if form == "json":
        print_json(drawings_json(drawn))
    else:
        print_lines(drawings_text(drawn, page()))
    ctx.exit(exit_code(drawn))


def make_folder(folder: Path) -> None:
    """Make the folder for the sheets, if it is not there."""
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        reason = (error.strerror or "it failed").lower()
        raise click.UsageError(f"{folder} cannot be made: {reason}") from None


def _draw(given: Input, wish: Wish, taken: dict[Path, str]) -> DrawnFile:
    """Draw the sheets of one input; ``taken`` says which file stands for which input already."""
    import wirecheck
    from wirecheck.report.drawings import Drawing, DrawnFile
    from wirecheck.report.whole_file import write_whole

    file = check_input(given)
    if file.checked is None:
        return DrawnFile(file, ())
    drawings: list[Drawing] = []
    refused: list[str] = []
    for sheet in wish.sheets:
        path = wish.folder / f"{given.stem}-{sheet}.{wish.file_format}"
        if taken.setdefault(path, given.name) != given.name:
            refused.append(f"{path} is a sheet of {taken[path]} already; draw into another folder")
            continue
        picture = wirecheck.draw(
            file.checked, sheet, wish.file_format, engine=wish.engine, date=wish.date
        )
        try:
            write_whole(path, picture)
        except OSError as error:
            refused.append(f"{path} cannot be written: {(error.strerror or 'it failed').lower()}")
        else:
            drawings.append(Drawing(sheet, wish.file_format, str(path)))
    problems = (*file.problems, *(problem_of(given.name, reason) for reason in refused))
    return DrawnFile(file._replace(problems=problems), tuple(drawings))
