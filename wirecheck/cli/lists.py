"""``wirecheck lists``: the wire list, the parts list and the terminals of a diagram."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, Literal, NamedTuple

import click

from wirecheck.cli.draw import date_option
from wirecheck.cli.inputs import Input, find_inputs, problem_of, read_input
from wirecheck.cli.options import debug_option, files_argument
from wirecheck.cli.printing import page, print_aside, print_json, print_lines, print_text
from wirecheck.cli.progress import told

if TYPE_CHECKING:
    from wirecheck.lists.tables import What
    from wirecheck.report.lists_files import ListsFile

Picture = Literal["svg", "png"]


class Wish(NamedTuple):
    """How to draw the pages, and what their names begin with."""

    picture: Picture
    date: str
    stem: Path


@click.command("lists")
@files_argument
@click.option(
    "--what",
    type=click.Choice(["wires", "parts", "terminals", "all"]),
    default="all",
    show_default=True,
    help="Every lead from end to end; every device, and the wire it takes; every terminal.",
)
@click.option(
    "--as",
    "form",
    type=click.Choice(["text", "json", "csv"]),
    default="text",
    show_default=True,
    help="Text for people, JSON for programs, CSV for a spreadsheet: one list at a time.",
)
@click.option(
    "--picture",
    type=click.Choice(["svg", "png"]),
    help="Draw the lists too, on A4 to print: NAME-lists-1.svg or .png and so on.",
)
@click.option(
    "--out",
    "folder",
    type=click.Path(file_okay=False, path_type=Path),
    default=".",
    help="Folder for the pages; made if it is not there.  [default: this one]",
)
@date_option
@debug_option
@click.pass_context
def command(  # noqa: PLR0913 - one for each option
    ctx: click.Context,
    *,
    files: tuple[str, ...],
    what: Literal["wires", "parts", "terminals", "all"],
    form: str,
    picture: Picture | None,
    folder: Path,
    sheet_date: str,
) -> None:
    """List the wires, the parts and the terminals, under the wire numbers of the drawings.

    Takes what check takes, and lists each variant too. The diagram is listed as drawn, right or
    wrong.
    """
    from wirecheck.lists.tables import WHAT
    from wirecheck.report.lists_files import exit_code

    if form == "csv" and what == "all":
        raise click.UsageError("a CSV table holds one list; say which, as in --what wires")
    chosen = WHAT if what == "all" else (what,)
    inputs, taken = find_inputs(files), dict[Path, str]()
    listed = []
    for given in told(inputs, len(inputs), "listing"):
        for number, file in enumerate(_listed(given)):
            stem = f"{given.stem}-variant-{number}" if number else given.stem
            wish = Wish(picture, sheet_date, folder / f"{stem}-lists") if picture else None
            listed.append(_drawn(file, chosen, wish, taken) if wish else file)
    _print(listed, chosen, form)
    ctx.exit(exit_code(listed))


def _print(listed: list[ListsFile], chosen: tuple[What, ...], form: str) -> None:
    if form == "json":
        from wirecheck.report.lists_json import lists_json

        print_json(lists_json(listed, chosen))
    elif form == "csv":
        from wirecheck.report.check_text import problem_text
        from wirecheck.report.lists_csv import lists_csv

        print_text(lists_csv(listed, chosen[0]))
        problems = (problem for each in listed for problem in each.problems)
        print_aside(line for problem in problems for line in problem_text(problem, page()))
    else:
        from wirecheck.report.lists_text import lists_text

        print_lines(lists_text(listed, chosen, page()))


def _listed(given: Input) -> Iterator[ListsFile]:
    """List one input and each variant in it; one that cannot be read has a problem and no lists."""
    import wirecheck
    from wirecheck.report.lists_files import ListsFile

    read = read_input(given)
    if read.built is None:
        yield ListsFile(given.name, read.problems, None)
        return
    lists = wirecheck.lists(wirecheck.check(read.built.diagram))
    yield ListsFile(given.name, read.problems, lists)
    for each in wirecheck.variants(read.built):
        titled = replace(each.diagram, title=f"{each.diagram.title}, variant {each.name}")
        lists = wirecheck.lists(wirecheck.check(titled))
        yield ListsFile(given.name, each.problems, lists, variant=each.name)


def _drawn(
    file: ListsFile, chosen: tuple[What, ...], wish: Wish, taken: dict[Path, str]
) -> ListsFile:
    """Draw the pages of one file; ``taken`` says which pages are which input's already."""
    import wirecheck
    from wirecheck.report.whole_file import write_whole

    if file.lists is None:
        return file
    stem, name = wish.stem, f"{file.file} {file.variant or ''}".strip()
    if taken.setdefault(stem, name) != name:
        reason = f"{stem} is the sheet of {taken[stem]} already; draw into another folder"
        return file._replace(problems=(*file.problems, problem_of(file.file, reason)))
    written: list[str] = []
    pages = wirecheck.draw_lists(file.lists, chosen, wish.picture, date=wish.date)
    for number, drawn in enumerate(pages, 1):
        path = stem.with_name(f"{stem.name}-{number}.{wish.picture}")
        try:
            path.parent.mkdir(parents=True, exist_ok=True)
            write_whole(path, drawn)
        except OSError as error:
            reason = f"{path} cannot be written: {(error.strerror or 'it failed').lower()}"
            problems = (*file.problems, problem_of(file.file, reason))
            return file._replace(problems=problems, pictures=tuple(written))
        written.append(str(path))
    return file._replace(pictures=tuple(written))
