"""``wirecheck troubleshoot``: from what is seen and measured to what is broken."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Literal, NamedTuple

import click

from wirecheck.cli.check import check_input
from wirecheck.cli.draw import date_option, make_folder
from wirecheck.cli.inputs import STANDARD_INPUT, Input, find_inputs, problem_of
from wirecheck.cli.options import (
    debug_option,
    files_argument,
    form_option,
    sheet_format_option,
    sheets_folder_option,
)
from wirecheck.cli.printing import page, print_json, print_lines
from wirecheck.cli.progress import told

if TYPE_CHECKING:
    from wirecheck.model.diagram import Diagram
    from wirecheck.model.finding import Problem
    from wirecheck.report.troubleshoot_files import TroubleshootFile
    from wirecheck.troubleshoot.chart import Step
    from wirecheck.troubleshoot.conversation import Conversation


class Known(NamedTuple):
    """What was said on the command line: what is seen, what readings came to, who calls."""

    seen: tuple[str, ...]
    answers: tuple[str, ...]
    calling: tuple[str, ...]


class Wish(NamedTuple):
    """What to do besides the diagnosis, and how to draw."""

    asks: bool
    records: bool
    tree: bool
    folder: Path
    file_format: Literal["svg", "png"]
    date: str


@click.command("troubleshoot")
@files_argument
@click.option(
    "--seen",
    multiple=True,
    metavar="WORDS",
    help="What is seen: 'pilot lights, main never does', or the words of an observe statement.",
)
@click.option(
    "--answer",
    "answers",
    multiple=True,
    metavar="READING=VALUE",
    help="What a reading came to, by the name it was asked for with; ? if it is not known.",
)
@click.option(
    "--calls",
    "calling",
    multiple=True,
    metavar="THERMOSTAT",
    help="Who calls; without it every thermostat does.",
)
@click.option("--ask", "asks", is_flag=True, help="Ask for one reading after the other.")
@click.option("--record", "records", is_flag=True, help="Draw what was read, and the end of it.")
@click.option("--tree", is_flag=True, help="Follow every answer: the whole chart, drawn too.")
@sheets_folder_option
@sheet_format_option
@date_option
@form_option
@debug_option
@click.pass_context
def command(  # noqa: PLR0913 - one for each option
    ctx: click.Context,
    *,
    files: tuple[str, ...],
    seen: tuple[str, ...],
    answers: tuple[str, ...],
    calling: tuple[str, ...],
    asks: bool,
    records: bool,
    tree: bool,
    folder: Path,
    file_format: Literal["svg", "png"],
    sheet_date: str,
    form: str,
) -> None:
    """Say what may be broken in a unit that is wired as drawn, and which reading to take next.

    Takes what check takes. What observe statements in the file say counts as seen. --record draws
    NAME-record-1.svg and so on; --tree draws NAME-fault-chart.svg, and NAME-fault-steps-1.svg and
    so on to follow at the unit.
    """
    from wirecheck.report.troubleshoot_files import exit_code

    inputs = find_inputs(files)
    if asks and (len(inputs) > 1 or inputs[0].name == STANDARD_INPUT or form == "json"):
        raise click.UsageError("--ask asks about one file, and answers come from standard input")
    if records or tree:
        make_folder(folder)
    known = Known(seen, answers, calling)
    wish = Wish(asks, records, tree, folder, file_format, sheet_date)
    taken: dict[Path, str] = {}
    found = [_troubleshoot(each, known, wish, taken) for each in inputs]
    if asks:
        from wirecheck.report.troubleshoot_text import after_asking_text

        print_lines(after_asking_text(found, page()))
    elif form == "json":
        from wirecheck.report.troubleshoot_json import troubleshoot_json

        print_json(troubleshoot_json(found))
    else:
        from wirecheck.report.troubleshoot_text import troubleshoot_text

        print_lines(troubleshoot_text(found, page()))
    ctx.exit(exit_code(found))


class _NotOfUseError(Exception):
    """Some words of the call cannot be used; the problem says where in them."""

    def __init__(self, option: str, words: str, reason: str) -> None:
        from wirecheck.model.finding import Problem
        from wirecheck.model.text import SourceFile, Span

        super().__init__(reason)
        self.problem: Problem = Problem(reason, Span(SourceFile(option, words), 0, len(words)))


def _begun(diagram: Diagram, known: Known) -> Conversation:
    """The conversation with all that the call says.

    Raises:
        _NotOfUseError: of some of its words.
    """
    import wirecheck
    from wirecheck.sequence.named import NotThereError
    from wirecheck.troubleshoot.answers import NotAnAnswerError
    from wirecheck.troubleshoot.conversation import Conversation
    from wirecheck.troubleshoot.seen import NotUnderstoodError, seen

    try:
        talk = wirecheck.troubleshoot(diagram, calling=known.calling)
    except NotThereError as error:
        raise _NotOfUseError("--calls", " ".join(known.calling), str(error)) from error
    given = [*talk.observations]
    for words in known.seen:
        try:
            given += seen(talk.dictionary, words)
        except NotUnderstoodError as error:
            raise _NotOfUseError("--seen", words, str(error)) from error
    talk = prepared(Conversation.begun(talk.dictionary, given))
    for answer in known.answers:
        try:
            talk = _answered(talk, answer)
        except NotAnAnswerError as error:
            raise _NotOfUseError("--answer", answer, str(error)) from error
    return talk


def _troubleshoot(
    given: Input, known: Known, wish: Wish, taken: dict[Path, str]
) -> TroubleshootFile:
    """Diagnose one input; ``taken`` says which sheet is which input's already."""
    from wirecheck.report.troubleshoot_files import TroubleshootFile
    from wirecheck.troubleshoot.chart import chart

    checked = check_input(given)
    if checked.checked is None:
        return TroubleshootFile(given.name, checked.problems)
    diagram = checked.checked.diagram
    try:
        talk = _begun(diagram, known)
    except _NotOfUseError as error:
        return TroubleshootFile(given.name, (*checked.problems, error.problem))
    if wish.asks:
        from wirecheck.cli.asking import asked

        talk = asked(talk, page())
    top = chart(talk) if wish.tree else None
    drawings, problems = _written(given, _drawn(talk, top, wish), wish, taken)
    return TroubleshootFile(
        given.name,
        (*checked.problems, *problems),
        talk.dictionary,
        talk.diagnosis,
        checked.checked.findings,
        top,
        drawings,
    )


def _drawn(talk: Conversation, top: Step | None, wish: Wish) -> Iterator[tuple[str, bytes]]:
    """The sheets that are wished for, each with what its name ends with."""
    import wirecheck

    if wish.records:
        pages = wirecheck.draw_record(talk, wish.file_format, date=wish.date)
        yield from ((f"record-{number}", drawn) for number, drawn in enumerate(pages, 1))
    if top is not None:
        picture, *steps = wirecheck.draw_fault_chart(talk, top, wish.file_format, date=wish.date)
        yield "fault-chart", picture
        yield from ((f"fault-steps-{number}", drawn) for number, drawn in enumerate(steps, 1))


def _written(
    given: Input, sheets: Iterable[tuple[str, bytes]], wish: Wish, taken: dict[Path, str]
) -> tuple[tuple[str, ...], tuple[Problem, ...]]:
    """Write sheets: the paths of those written, and why others could not be."""
    from wirecheck.report.whole_file import write_whole

    paths: list[str] = []
    for name, drawn in sheets:
        path = wish.folder / f"{given.stem}-{name}.{wish.file_format}"
        if taken.setdefault(path, given.name) != given.name:
            reason = f"{path} is a sheet of {taken[path]} already; draw into another folder"
            return tuple(paths), (problem_of(given.name, reason),)
        try:
            write_whole(path, drawn)
        except OSError as error:
            reason = f"{path} cannot be written: {(error.strerror or 'it failed').lower()}"
            return tuple(paths), (problem_of(given.name, reason),)
        paths.append(str(path))
    return tuple(paths), ()


def prepared(talk: Conversation) -> Conversation:
    """The same, its faults simulated; a waiting person is told how far that has come."""
    faults = talk.dictionary
    for _done in told(faults.preparing(), len(faults.faults), "trying faults:"):
        pass
    return talk


def _answered(talk: Conversation, answer: str) -> Conversation:
    """The conversation with an answer as it was typed: ``READING=VALUE``.

    Raises:
        NotAnAnswerError: there is no such reading, or it is no answer to it.
    """
    from wirecheck.model.nearest import nearest
    from wirecheck.troubleshoot.answers import NotAnAnswerError, read_answer

    key, equals, value = answer.partition("=")
    if not equals:
        raise NotAnAnswerError(
            f"“{answer}” says no value; write {answer.strip() or 'READING'}=VALUE"
        )
    reading = talk.dictionary.by_key.get(key.strip().casefold())
    if reading is None:
        near = nearest(key, list(talk.dictionary.by_key))
        hint = f"; did you mean {near}?" if near else ""
        raise NotAnAnswerError(f"there is no reading “{key}” here; write READING=VALUE{hint}")
    return talk.answer(reading, read_answer(reading, value))
