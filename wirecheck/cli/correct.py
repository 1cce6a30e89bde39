"""``wirecheck correct``: the fewest leads to move."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Literal, NamedTuple

import click

from wirecheck.cli.check import BYTE_ORDER_MARK
from wirecheck.cli.draw import SHEETS, date_option, make_folder
from wirecheck.cli.inputs import STANDARD_INPUT, Input, find_inputs, problem_of, read_input
from wirecheck.cli.options import (
    debug_option,
    files_argument,
    form_option,
    sheet_format_option,
    sheets_folder_option,
)
from wirecheck.cli.printing import page, print_aside, print_json, print_lines
from wirecheck.cli.progress import told

if TYPE_CHECKING:
    from wirecheck.correct.answer import Correction
    from wirecheck.correct.rewrite import Mended
    from wirecheck.model.diagram import Diagram
    from wirecheck.model.finding import Problem
    from wirecheck.report.corrections import CorrectedFile
    from wirecheck.report.drawings import Drawing


class Wish(NamedTuple):
    """How far to look, and what to do with what is found; no folder: nothing is drawn."""

    edits: int
    seconds: float
    write: bool
    folder: Path | None
    file_format: Literal["svg", "png"]
    date: str


@click.command("correct")
@files_argument
@click.option("--write", is_flag=True, help="Change the files in place, each whole or not at all.")
@click.option("--diff", is_flag=True, help="Show only how the texts would change.")
@click.option("--draw", is_flag=True, help="Draw the corrected sheets, what changes marked.")
@sheets_folder_option
@sheet_format_option
@date_option
@click.option(
    "--edits",
    type=click.IntRange(1, 4),
    default=3,
    show_default=True,
    help="Look no further than so many edits.",
)
@click.option(
    "--seconds",
    type=click.FloatRange(0.1, 3600),
    default=20.0,
    show_default=True,
    help="Look no longer than this at one file.",
)
@form_option
@debug_option
@click.pass_context
def command(  # noqa: PLR0913 - one for each option
    ctx: click.Context,
    files: tuple[str, ...],
    *,
    write: bool,
    diff: bool,
    draw: bool,
    folder: Path,
    file_format: Literal["svg", "png"],
    sheet_date: str,
    edits: int,
    seconds: float,
    form: str,
) -> None:
    """Say which leads to move, the fewest, until nothing of safety or operation is left.

    Takes what check takes. Every answer is proved on the result, by all rules and by the
    simulation. Without --write the files stay as they are. It returns 0 if nothing was to correct,
    1 if something was.
    """
    from wirecheck.report.check_text import problem_text
    from wirecheck.report.corrections import difference, exit_code

    inputs = find_inputs(files)
    if write and any(each.name == STANDARD_INPUT for each in inputs):
        raise click.UsageError("standard input cannot be changed in place; leave --write out")
    wish = Wish(edits, seconds, write, folder if draw else None, file_format, sheet_date)
    taken: dict[Path, str] = {}
    if draw:
        make_folder(folder)
    done = [_correct(each, wish, taken) for each in told(inputs, len(inputs), "correcting")]
    if form == "json":
        from wirecheck.report.correct_json import correct_json

        print_json(correct_json(done))
    elif diff:
        from wirecheck.report.visible import visible

        print_lines(visible(line) for each in done for line in difference(each))
        problems = (problem for each in done for problem in each.problems)
        print_aside(line for problem in problems for line in problem_text(problem, page()))
    else:
        from wirecheck.report.correct_text import correct_text

        print_lines(correct_text(done, page()))
    ctx.exit(exit_code(done))


def _correct(given: Input, wish: Wish, taken: dict[Path, str]) -> CorrectedFile:
    """Correct one input; one that cannot be read has a problem and no answer."""
    import wirecheck
    from wirecheck.correct.rewrite import mended
    from wirecheck.report.corrections import CorrectedFile

    read = read_input(given)
    if read.built is None:
        return CorrectedFile(given.name, "", read.problems, "", None)
    diagram = read.built.diagram
    correction = wirecheck.correct(diagram, edits=wish.edits, seconds=wish.seconds)
    answers = tuple(mended(each.state, each.proof) for each in correction.answers)
    file = CorrectedFile(
        given.name,
        diagram.title,
        read.problems,
        diagram.source.text,
        correction,
        answers,
        _does(diagram),
        _does(answers[0].proof.checked.diagram) if answers else (),
    )
    drawings, refused = _drawn(given, correction, wish, taken)
    file = _written(file, answers) if wish.write else file
    return file._replace(drawings=drawings, problems=(*file.problems, *refused))


def _does(diagram: Diagram) -> tuple[str, ...]:
    """What each control does on a call."""
    import wirecheck

    told_of = wirecheck.simulate(diagram).told
    return tuple(f"{each.control}: {each.outcome.sentence}" for each in told_of)


def _written(file: CorrectedFile, answers: tuple[Mended, ...]) -> CorrectedFile:
    """Put the first answer in the place of the file, unless something of it was not understood."""
    from wirecheck.report.whole_file import write_whole

    if file.problems or not answers or answers[0].text is None:
        return file
    path = Path(file.file)
    try:
        mark = BYTE_ORDER_MARK if path.read_bytes().startswith(BYTE_ORDER_MARK) else b""
        write_whole(path, mark + answers[0].text.encode("utf-8"))
    except OSError as error:
        return file._replace(problems=(_refused(file.file, error),))
    return file._replace(written=True)


def _refused(name: str, error: OSError) -> Problem:
    return problem_of(name, f"cannot be written: {(error.strerror or 'it failed').lower()}")


def _drawn(
    given: Input, correction: Correction, wish: Wish, taken: dict[Path, str]
) -> tuple[tuple[Drawing, ...], tuple[Problem, ...]]:
    """Draw the sheets of the first answer; ``taken`` says which file is which input's already."""
    import wirecheck
    from wirecheck.report.drawings import Drawing
    from wirecheck.report.whole_file import write_whole

    drawings: list[Drawing] = []
    refused: list[Problem] = []
    if not correction.answers or wish.folder is None:
        return (), ()
    for sheet in SHEETS["both"]:
        path = wish.folder / f"{given.stem}-corrected-{sheet}.{wish.file_format}"
        if taken.setdefault(path, given.name) != given.name:
            reason = f"{path} is a sheet of {taken[path]} already; draw into another folder"
            refused.append(problem_of(given.name, reason))
            continue
        picture = wirecheck.draw_corrected(
            correction.answers[0], sheet, wish.file_format, date=wish.date
        )
        try:
            write_whole(path, picture)
        except OSError as error:
            refused.append(_refused(str(path), error))
        else:
            drawings.append(Drawing(sheet, wish.file_format, str(path)))
    return tuple(drawings), tuple(refused)
