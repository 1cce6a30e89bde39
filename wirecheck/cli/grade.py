"""``wirecheck grade``: marks drawings of an exercise against keys."""

from __future__ import annotations

import os
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, NamedTuple

import click

from wirecheck.cli.inputs import STANDARD_INPUT, Input, read_input
from wirecheck.cli.options import debug_option
from wirecheck.cli.printing import page, print_aside, print_json, print_lines, print_text
from wirecheck.cli.progress import told

if TYPE_CHECKING:
    from wirecheck.grade.classroom import Classroom
    from wirecheck.grade.record import Record
    from wirecheck.grade.rubric import Rubric
    from wirecheck.grade.submission import Submission
    from wirecheck.model.diagram import Diagram
    from wirecheck.model.finding import Problem
    from wirecheck.report.grades import Setup, Sheets


class Wish(NamedTuple):
    """What is wished besides the marks."""

    folder: Path
    sheets: Sheets
    again: bool
    processes: int
    seconds: float


def _show_rubric(ctx: click.Context, _option: click.Parameter, value: bool) -> None:  # noqa: FBT001
    """Print the rubric that comes along, for a trainer to change."""
    if value:
        from wirecheck.grade.rubric import default_text

        print_text(default_text())
        ctx.exit(0)


@click.command("grade")
@click.argument("submissions", nargs=-1, required=True, metavar="FILE|FOLDER ...")
@click.option(
    "--key",
    "keys",
    multiple=True,
    required=True,
    metavar="FILE",
    help="A right drawing; give the option again for another one that is right too.",
)
@click.option("--rubric", metavar="FILE", help="How much each circuit weighs, as TOML.")
@click.option(
    "--show-rubric",
    is_flag=True,
    is_eager=True,
    expose_value=False,
    callback=_show_rubric,
    help="Print the rubric that comes along, to be changed, and end.",
)
@click.option(
    "--roster", metavar="FILE", help="Whose file is whose: a CSV with the columns file and name."
)
@click.option(
    "--out",
    "folder",
    type=click.Path(file_okay=False, path_type=Path),
    default="marks",
    show_default=True,
    help="Folder for sheets, gradebook.csv, grades.json and the summary.",
)
@click.option(
    "--sheets",
    type=click.Choice(["svg", "png", "none"]),
    default="svg",
    show_default=True,
    help="How the sheets are drawn; those in words are always written.",
)
@click.option(
    "--jobs",
    "processes",
    type=click.IntRange(1, 64),
    default=lambda: os.cpu_count() or 1,
    help="So many at once.  [default: as many as the machine has cores]",
)
@click.option("--again", is_flag=True, help="Mark anew what is marked already.")
@click.option(
    "--seconds",
    type=click.FloatRange(0.1, 3600),
    default=60.0,
    show_default=True,
    help="Give a submission up after so many of work.",
)
@click.option(
    "--as",
    "form",
    type=click.Choice(["text", "json", "csv"]),
    default="text",
    show_default=True,
    help="Text for people, JSON for programs, CSV for a gradebook.",
)
@debug_option
@click.pass_context
def command(  # noqa: PLR0913 - one for each option
    ctx: click.Context,
    submissions: tuple[str, ...],
    *,
    keys: tuple[str, ...],
    rubric: str | None,
    roster: str | None,
    folder: Path,
    sheets: Sheets,
    processes: int,
    again: bool,
    seconds: float,
    form: str,
) -> None:
    """Mark drawings of an exercise against one or several keys.

    Of a folder every file is a submission, whatever it is called; none is left out. Each gets a
    sheet with its lost points and the drawing with them marked, the class a gradebook and a
    summary. What is marked already, with the same key and rubric, is not marked again. It returns 0
    if all have full marks, 1 if somebody lost a point, 2 if something could not be read.
    """
    from wirecheck.grade.batch import batch
    from wirecheck.grade.classroom import classroom
    from wirecheck.report.grades import exit_code, mark

    wish = Wish(folder, sheets, again, processes, seconds)
    weights = _rubric(rubric)
    setup, title = _setup(keys, weights, wish)
    own = [*keys, *filter(None, (rubric, roster))]
    meant = _submissions(submissions, own, folder, roster)
    records = list(
        told(batch(mark, setup, meant, processes=processes, seconds=seconds), len(meant), "marking")
    )
    records = [each if each.sheets else _in_words(each, folder) for each in records]
    found = classroom(records, weights.out_of)
    names = [name for _file, name in setup.keys]
    pictures = _written(found, names, title, wish)
    _print(found, names, pictures, wish, form)
    ctx.exit(exit_code(records))


def _in_words(record: Record, folder: Path) -> Record:
    """One that was given up gets its sheet all the same, if it can be written."""
    from wirecheck.report.grades import with_words

    try:
        return with_words(folder, record)
    except OSError:
        return record


def _print(
    found: Classroom, keys: Sequence[str], pictures: Sequence[str], wish: Wish, form: str
) -> None:
    if form == "json":
        from wirecheck.report.grade_json import grades_json

        print_json(grades_json(found, keys, pictures))
    elif form == "csv":
        from wirecheck.report.grade_csv import gradebook_csv

        print_text(gradebook_csv(found.records))
    else:
        from wirecheck.report.grade_text import grades_text

        print_lines(grades_text(found, pictures, wish.folder.as_posix(), page()))


def _rubric(name: str | None) -> Rubric:
    from wirecheck.grade.rubric import RubricError, default_rubric, read_rubric

    if name is None:
        return default_rubric()
    try:
        return read_rubric(_text(name), name)
    except RubricError as error:
        raise click.UsageError(_told(error.problems)) from None


def _setup(keys: Sequence[str], rubric: Rubric, wish: Wish) -> tuple[Setup, str]:
    """What every process marks with, and the title; a key with a problem is none."""
    from importlib.metadata import version

    from wirecheck.report.grades import Setup

    titles = []
    for key in keys:
        if key == STANDARD_INPUT:
            raise click.UsageError("a key has to be a file")
        read = read_input(Input(key))
        if read.problems or read.built is None:
            raise click.UsageError(f"this key cannot be used:\n{_told(read.problems)}")
        if not read.built.diagram.leads:
            raise click.UsageError(f"{key}: this key has no lead")
        titles.append(read.built.diagram.title)
        _warn(key, read.built.diagram)
    files = tuple((key, Path(key).stem) for key in keys)
    made = version("wirecheck")
    return Setup(files, rubric, wish.folder, wish.sheets, wish.again, made), titles[0]


def _warn(name: str, key: Diagram) -> None:
    """Say so if a check finds something in the key: what it has too costs nobody anything."""
    import wirecheck
    from wirecheck.report.checks import counted

    found = wirecheck.check(key).findings
    if found:
        what = counted(len(found), "finding")
        print_aside([f"{name}: the key itself has {what}; wirecheck check tells them"])


def _submissions(
    names: Iterable[str], own: Sequence[str], folder: Path, roster: str | None
) -> list[Submission]:
    from wirecheck.grade.roster import name_of, read_roster
    from wirecheck.grade.submission import submissions

    people, problems = read_roster(_text(roster), roster) if roster else ({}, ())
    if problems:
        print_aside([f"{each.span}: {each.message}" for each in problems])
    files = list(dict.fromkeys(_files(names, {Path(each).resolve() for each in own}, folder)))
    if not files:
        raise click.UsageError("no submission is there")
    return submissions(files, lambda file: name_of(file, people))


def _files(names: Iterable[str], own: set[Path], folder: Path) -> Iterator[str]:
    """The files that are meant: of a folder all but hidden ones, the keys and what is made here."""
    made = folder.resolve()
    for name in names:
        path = Path(name)
        if not path.is_dir():
            yield path.as_posix()
            continue
        for at, folders, files in os.walk(path):
            folders[:] = sorted(
                each
                for each in folders
                if not each.startswith(".") and Path(at, each).resolve() != made
            )
            for file in sorted(files):
                if not file.startswith(".") and Path(at, file).resolve() not in own:
                    yield Path(at, file).as_posix()


def _written(found: Classroom, keys: Sequence[str], title: str, wish: Wish) -> list[str]:
    """Write gradebook, document and summary; the paths of the pictures."""
    import json

    from wirecheck.report.grade_csv import gradebook_csv
    from wirecheck.report.grade_json import grades_json
    from wirecheck.report.whole_file import write_whole

    pictures = {}
    if wish.sheets != "none" and len(found.records) > 1:
        from wirecheck.drawing.class_sheet import class_sheet

        path = wish.folder / f"summary.{wish.sheets}"
        pictures[path] = class_sheet(found, f"{title}: the class", wish.sheets)
    paths = [path.as_posix() for path in pictures]
    document = json.dumps(grades_json(found, keys, paths), indent=2) + "\n"
    book = gradebook_csv(found.records)
    try:
        wish.folder.mkdir(parents=True, exist_ok=True)
        write_whole(wish.folder / "gradebook.csv", b"\xef\xbb\xbf" + book.encode("utf-8"))
        write_whole(wish.folder / "grades.json", document.encode("utf-8"))
        for path, data in pictures.items():
            write_whole(path, data)
    except OSError as error:
        reason = (error.strerror or "it failed").lower()
        raise click.UsageError(f"{wish.folder} cannot be written: {reason}") from None
    return paths


def _text(name: str) -> str:
    try:
        return Path(name).read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError) as error:
        reason = (getattr(error, "strerror", None) or "it is no text in UTF-8").lower()
        raise click.UsageError(f"{name} cannot be read: {reason}") from None


def _told(problems: Iterable[Problem]) -> str:
    return "\n".join(f"{each.span}: {each.message}" for each in problems)
