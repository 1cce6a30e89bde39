"""``wirecheck troubleshoot``: from what is seen and measured to what is broken."""

from __future__ import annotations

from typing import TYPE_CHECKING

import click

from wirecheck.cli.check import check_input
from wirecheck.cli.inputs import Input, find_inputs, problem_of
from wirecheck.cli.options import debug_option, files_argument, form_option
from wirecheck.cli.printing import page, print_json, print_lines
from wirecheck.cli.progress import told

if TYPE_CHECKING:
    from wirecheck.report.troubleshoot_files import TroubleshootFile
    from wirecheck.troubleshoot.conversation import Conversation


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
    form: str,
) -> None:
    """Say what may be broken in a unit that is wired as drawn, and which reading to take next.

    Takes what check takes. What observe statements in the file say counts as seen.
    """
    from wirecheck.report.troubleshoot_files import exit_code

    inputs = find_inputs(files)
    found = [_troubleshoot(each, seen, answers, calling) for each in inputs]
    if form == "json":
        from wirecheck.report.troubleshoot_json import troubleshoot_json

        print_json(troubleshoot_json(found))
    else:
        from wirecheck.report.troubleshoot_text import troubleshoot_text

        print_lines(troubleshoot_text(found, page()))
    ctx.exit(exit_code(found))


def _troubleshoot(
    given: Input, seen: tuple[str, ...], answers: tuple[str, ...], calling: tuple[str, ...]
) -> TroubleshootFile:
    """Diagnose one input."""
    import wirecheck
    from wirecheck.report.troubleshoot_files import TroubleshootFile
    from wirecheck.sequence.named import NotThereError
    from wirecheck.troubleshoot.answers import NotAnAnswerError
    from wirecheck.troubleshoot.seen import NotUnderstoodError

    checked = check_input(given)
    if checked.checked is None:
        return TroubleshootFile(given.name, checked.problems)
    diagram = checked.checked.diagram
    try:
        talk = wirecheck.troubleshoot(diagram, seen=seen, calling=calling)
        talk = prepared(talk)
        for answer in answers:
            talk = _answered(talk, answer)
    except (NotUnderstoodError, NotAnAnswerError, NotThereError) as error:
        problem = problem_of(given.name, str(error))
        return TroubleshootFile(given.name, (*checked.problems, problem))
    return TroubleshootFile(
        given.name,
        checked.problems,
        talk.dictionary,
        talk.diagnosis,
        checked.checked.findings,
    )


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

    key, equals, value = answer.rpartition("=")
    reading = talk.dictionary.by_key.get(key.strip().casefold())
    if not equals or reading is None:
        near = nearest(key, list(talk.dictionary.by_key))
        hint = f"; did you mean {near}?" if near else ""
        raise NotAnAnswerError(f"there is no reading “{key}” here; write READING=VALUE{hint}")
    return talk.answer(reading, read_answer(reading, value))
