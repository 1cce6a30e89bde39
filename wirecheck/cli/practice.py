"""``wirecheck practice``: exercises for those who learn, made from a right diagram."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Literal, NamedTuple

import click

from wirecheck.cli.draw import date_option, make_folder
from wirecheck.cli.inputs import Input, find_inputs, problem_of, read_input
from wirecheck.cli.options import debug_option, files_argument, form_option, sheet_format_option
from wirecheck.cli.printing import page, print_json, print_lines
from wirecheck.cli.progress import told
from wirecheck.model.finding import Problem

if TYPE_CHECKING:
    from wirecheck.language.build import Built
    from wirecheck.model.diagram import Diagram
    from wirecheck.practice.exercise import Exercise, Wish
    from wirecheck.report.practices import Made, PracticeFile

#: Folder, in that of the exercises, of what is not to be handed out.
KEY = "key"
FORMS = ("missing-lead", "wrong-terminal", "leads-exchanged", "jumper-left-in", "link-or-plug")
DIFFICULTIES = ("easy", "medium", "hard")
CIRCUITS = (
    "supply", "line-voltage", "call-and-safety-chain", "common", "burner-ground",
    "ignition-leads", "valve", "vent-damper", "control",
)  # fmt: skip


class Output(NamedTuple):
    """Where the files go, and how the sheets are drawn."""

    folder: Path
    file_format: Literal["svg", "png"]
    date: str
    blank: bool


@click.command("practice")
@files_argument
@click.option(
    "--exercises",
    "count",
    type=click.IntRange(0, 1000),
    default=5,
    show_default=True,
    help="So many of each diagram, no two alike.",
)
@click.option(
    "--mistakes",
    type=click.IntRange(1, 5),
    default=1,
    show_default=True,
    help="Hidden in each exercise.",
)
@click.option(
    "--kind", "forms", multiple=True, type=click.Choice(FORMS), help="Only such mistakes.  [repeat]"
)
@click.option(
    "--circuit",
    "circuits",
    multiple=True,
    type=click.Choice(CIRCUITS),
    help="Only mistakes in such circuits.  [repeat]",
)
@click.option(
    "--difficulty",
    type=click.Choice(DIFFICULTIES),
    help="Easy: nothing happens on a call; medium: it goes wrong; hard: a call goes as it should.",
)
@click.option(
    "--seed", default="1", show_default=True, help="The same seed gives the same exercises."
)
@click.option("--blank", is_flag=True, help="Make one with the parts and no leads too, to wire.")
@click.option(
    "--out",
    "folder",
    type=click.Path(file_okay=False, path_type=Path),
    default="exercises",
    show_default=True,
    help="Folder for what is handed out; the key goes to a folder in it.",
)
@sheet_format_option
@date_option
@form_option
@debug_option
@click.pass_context
def command(  # noqa: PLR0913 - one for each option
    ctx: click.Context,
    files: tuple[str, ...],
    *,
    count: int,
    mistakes: int,
    forms: tuple[str, ...],
    circuits: tuple[str, ...],
    difficulty: str | None,
    seed: str,
    blank: bool,
    folder: Path,
    file_format: Literal["svg", "png"],
    sheet_date: str,
    form: str,
) -> None:
    """Make exercises from right diagrams: the same wiring with mistakes hidden in it.

    Each mistake is one that people make, and is seen by the check and by the simulation to matter.
    """
    from wirecheck.practice.difficulty import Difficulty
    from wirecheck.practice.exercise import Wish
    from wirecheck.practice.mistake import Form
    from wirecheck.report.practices import exit_code

    wish = Wish(
        count,
        mistakes,
        tuple(map(Form, forms or FORMS)),
        tuple(circuit.replace("-", " ") for circuit in circuits),
        Difficulty(difficulty) if difficulty else None,
        seed,
    )
    output = Output(folder, file_format, sheet_date, blank)
    inputs = find_inputs(files)
    make_folder(folder / KEY)
    taken: dict[str, str] = {}
    done = [_make(each, wish, output, taken) for each in told(inputs, len(inputs), "making")]
    if form == "json":
        from wirecheck.report.practice_json import practice_json

        print_json(practice_json(done))
    else:
        from wirecheck.report.practice_text import practice_text

        print_lines(practice_text(done, page()))
    ctx.exit(exit_code(done))


def _make(given: Input, wish: Wish, output: Output, taken: dict[str, str]) -> PracticeFile:
    """Make the exercises of one diagram; ``taken`` says whose a name of files is already."""
    import wirecheck
    from wirecheck.practice.exercise import NotRightError
    from wirecheck.report.practices import PracticeFile

    read = read_input(given)
    if read.built is None or read.problems:
        return PracticeFile(given.name, "", read.problems)
    title = read.built.diagram.title
    if taken.setdefault(given.stem, given.name) != given.name:
        reason = f"its exercises would have the names of those of {taken[given.stem]}"
        return PracticeFile(given.name, title, (problem_of(given.name, reason),))
    try:
        exercises = wirecheck.practice(read.built.diagram, wish)
    except NotRightError as error:
        wrong = "exercises are made from a right diagram, and this one has a mistake"
        problems = [Problem(f"{wrong}: {each.message}", each.span) for each in error.findings]
        return PracticeFile(given.name, title, tuple(problems))
    return _written(given, read.built, exercises, wish, output)


def _written(
    given: Input, built: Built, exercises: list[Exercise], wish: Wish, output: Output
) -> PracticeFile:
    """Write all files of one diagram, as far as they can be written."""
    from wirecheck.report.practices import PracticeFile

    made: list[Made] = []
    blank: tuple[str, ...] = ()
    problems: list[Problem] = []
    if len(exercises) < wish.exercises:
        fewer = f"only {len(exercises)} of {wish.exercises} exercises can be made of it as wished"
        problems.append(problem_of(given.name, fewer))
    try:
        for exercise in exercises:
            # One by one: those that are written stay told when one cannot be.
            made += [_exercise_written(exercise, built.diagram, output)]
        if output.blank:
            blank = tuple(_put(_blank(given, built.diagram, output), output.folder))
    except OSError as error:
        reason = f"{error.filename} cannot be written: {(error.strerror or 'it failed').lower()}"
        problems.append(problem_of(given.name, reason))
    return PracticeFile(given.name, built.diagram.title, tuple(problems), tuple(made), blank)


def _exercise_written(exercise: Exercise, right: Diagram, output: Output) -> Made:
    """Write the files of one exercise.

    Raises:
        OSError: one of them cannot be written.
    """
    import wirecheck
    from wirecheck.report.page import Page
    from wirecheck.report.practice_key import key_text
    from wirecheck.report.practices import Made

    name, ending = exercise.name, output.file_format
    hand_out = [(f"{name}.wiring", exercise.text.encode())]
    for sheet in ("exercise", "answers"):
        drawn = wirecheck.draw_exercise(exercise, sheet, ending, date=output.date)
        hand_out.append((f"{name}-{sheet}.{ending}", drawn))
    lines = key_text(exercise, right, Page())
    key = [(f"{name}.txt", "".join(f"{line}\n" for line in lines).encode())]
    for marked in ("ladder", "connections"):
        drawn = wirecheck.draw(exercise.checked, marked, ending, date=output.date)
        key.append((f"{name}-{marked}.{ending}", drawn))
    return Made(
        exercise, tuple(_put(hand_out, output.folder)), tuple(_put(key, output.folder / KEY))
    )


def _blank(given: Input, right: Diagram, output: Output) -> Iterator[tuple[str, bytes]]:
    import wirecheck
    from wirecheck.language.lead_by_lead import lead_by_lead

    name = f"{given.stem}-blank"
    yield f"{name}.wiring", lead_by_lead(right, (), right.title, bare=True).encode()
    drawn = wirecheck.draw_blank(right, output.file_format, date=output.date)
    yield f"{name}.{output.file_format}", drawn


def _put(files: Iterable[tuple[str, bytes]], folder: Path) -> Iterator[str]:
    """Write files into a folder, each whole or not at all, and name them."""
    from wirecheck.report.whole_file import write_whole

    for name, data in files:
        path = folder / name
        write_whole(path, data)
        yield str(path)
