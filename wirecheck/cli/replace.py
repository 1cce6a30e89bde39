"""``wirecheck replace``: a device by another, lead by lead."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Literal, NamedTuple

import click

from wirecheck.cli.check import BYTE_ORDER_MARK
from wirecheck.cli.draw import date_option
from wirecheck.cli.inputs import Input, problem_of, read_input
from wirecheck.cli.options import debug_option, form_option, sheet_format_option
from wirecheck.cli.printing import page, print_aside, print_json, print_lines

if TYPE_CHECKING:
    from wirecheck.model.finding import Problem
    from wirecheck.replace.device import Device
    from wirecheck.replace.replacement import Replacement
    from wirecheck.report.replace_files import ReplaceFile


class Wish(NamedTuple):
    """What to do with the result: where to write and draw it, None for nowhere."""

    target: Path | None
    folder: Path | None
    file_format: Literal["svg", "png"]
    date: str


@click.command("replace")
@click.argument("old", metavar="OLD")
@click.option(
    "--with",
    "new",
    metavar="KIND|FILE",
    multiple=True,
    required=True,
    help="The new device: a kind with what is typed behind it, as in 'gas-valve-2-wire: 0.4 A', or"
    " a file that states one or several with the labels printed on them.",
)
@click.option("--part", metavar="NAME", help="Which part the one new device replaces.")
@click.option("--write", is_flag=True, help="Change OLD in place, whole or not at all.")
@click.option(
    "--out",
    "target",
    type=click.Path(dir_okay=False, path_type=Path),
    help="Write the new diagram to this file instead.",
)
@click.option("--diff", is_flag=True, help="Show only how the text would change.")
@click.option(
    "--draw",
    "folder",
    type=click.Path(file_okay=False, path_type=Path),
    help="Draw the sheets and the cross-reference into this folder; made if it is not there.",
)
@sheet_format_option
@date_option
@form_option
@debug_option
@click.pass_context
def command(  # noqa: PLR0913 - one for each option
    ctx: click.Context,
    *,
    old: str,
    new: tuple[str, ...],
    part: str | None,
    write: bool,
    target: Path | None,
    diff: bool,
    folder: Path | None,
    file_format: Literal["svg", "png"],
    sheet_date: str,
    form: str,
) -> None:
    """Replace a control, a valve, a burner or a whole pilot system: where each lead goes.

    OLD is the diagram with the old device, or - for standard input. A request that cannot be met is
    refused with the reason. The new diagram is checked and run. It returns 0 if nothing of safety
    or operation is found in it, 1 if something is, 2 if it was refused or could not be read.
    """
    from wirecheck.report.replace_files import difference, exit_code

    given = Input(old)
    if write and (target or old == "-"):
        raise click.UsageError("--write changes the file OLD; take either --write or --out")
    wish = Wish(Path(old) if write else target, folder, file_format, sheet_date)
    file = _replace(given, new, part, wish)
    if form == "json":
        from wirecheck.report.replace_json import replace_json

        print_json(replace_json(file))
    elif diff:
        from wirecheck.report.visible import visible

        print_lines(visible(line) for line in difference(file))
        print_aside(visible(line) for line in _refusals(file))
    else:
        from wirecheck.report.replace_text import replace_text

        print_lines(replace_text(file, page()))
    ctx.exit(exit_code(file))


def _refusals(file: ReplaceFile) -> list[str]:
    told = [f"{problem.span}: problem: {problem.message}" for problem in file.problems]
    return [*told, *(f"refused: {reason}" for reason in file.refused)]


def _replace(given: Input, new: tuple[str, ...], part: str | None, wish: Wish) -> ReplaceFile:
    """Read what is given and replace; what cannot be read or met is told."""
    import wirecheck
    from wirecheck.replace.call_told import call_told
    from wirecheck.replace.request import CannotReplaceError
    from wirecheck.report.replace_files import ReplaceFile

    read = read_input(given)
    if read.built is None:
        return ReplaceFile(given.name, "", read.problems, (), None)
    title = read.built.diagram.title
    try:
        offered, problems = _offered(new)
        problems = (*read.problems, *problems)
        if problems:
            return ReplaceFile(given.name, title, problems, (), None)
        done = wirecheck.replace(read.built.diagram, offered, part=part)
    except CannotReplaceError as refused:
        return ReplaceFile(given.name, title, read.problems, refused.reasons, None)
    file = ReplaceFile(
        given.name, title, (), (), done, call_told(done.found), call_told(done.after)
    )
    file = _written(file, done, wish.target) if wish.target else file
    return _drawn(file, done, given.stem, wish) if wish.folder else file


def _offered(new: tuple[str, ...]) -> tuple[list[Device], tuple[Problem, ...]]:
    """The new devices, and what of their files cannot be used."""
    from wirecheck.replace.offered import device_typed, devices_of, leads_among

    offered: list[Device] = []
    problems: list[Problem] = []
    for each in new:
        if not _names_a_file(each):
            offered.append(device_typed(each))
            continue
        read = read_input(Input(each))
        problems += read.problems
        if read.built is not None:
            offered += devices_of(read.built.diagram)
            problems += leads_among(read.built.diagram)
    return offered, tuple(problems)


def _names_a_file(text: str) -> bool:
    """Whether a file is meant, and not a kind with what is typed behind it."""
    return Path(text).is_file() or bool({".", "/", "\\"} & set(text.partition(":")[0]))


def _written(file: ReplaceFile, done: Replacement, target: Path) -> ReplaceFile:
    """Write the new diagram, unless it has mistakes that were not there before."""
    from wirecheck.report.whole_file import write_whole

    if done.problems or done.new_mistakes:
        reason = "not written: the new diagram has mistakes that were not there before"
        return file._replace(problems=(problem_of(file.file, reason),))
    try:
        old = Path(file.file)
        data = done.text.encode("utf-8")
        if old.is_file() and old.read_bytes().startswith(BYTE_ORDER_MARK):
            data = BYTE_ORDER_MARK + data
        write_whole(target, data)
    except OSError as error:
        return file._replace(problems=(_refused(str(target), error),))
    return file._replace(written=str(target))


def _drawn(file: ReplaceFile, done: Replacement, stem: str, wish: Wish) -> ReplaceFile:
    """Draw the sheets."""
    import wirecheck
    from wirecheck.report.whole_file import write_whole

    drawn: list[str] = []
    sheets = wirecheck.draw_replacement(done, wish.file_format, date=wish.date)
    for name, picture in sheets.items():
        path = Path(wish.folder or ".") / f"{stem}-{name}.{wish.file_format}"
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            write_whole(path, picture)
        except OSError as error:
            problems = (*file.problems, _refused(str(path), error))
            return file._replace(problems=problems, drawings=tuple(drawn))
        drawn.append(str(path))
    return file._replace(drawings=tuple(drawn))


def _refused(name: str, error: OSError) -> Problem:
    return problem_of(name, f"cannot be written: {(error.strerror or 'it failed').lower()}")
