"""``wirecheck notes``: every diagram in installation notes, checked where it stands."""

from __future__ import annotations

import sys
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

import click

from wirecheck.cli.inputs import STANDARD_INPUT, Input, find_inputs
from wirecheck.cli.note_work import (
    Done,
    Drawings,
    Task,
    as_text,
    leave_stopping_to_the_caller,
    lost,
    work,
)
from wirecheck.cli.options import debug_option, files_argument, form_option
from wirecheck.cli.our_error import OurError, PassedOnError
from wirecheck.cli.printing import page, print_text
from wirecheck.cli.progress import told, wipe
from wirecheck.report.notes_files import NoteTally

#: A process of its own takes about as long to start as so many documents take.
WORTH_PROCESSES = 24


@click.command("notes")
@files_argument
@click.option(
    "--draw",
    "drawings",
    flag_value="draw",
    help="Make the drawings that the blocks ask for, beside their document: NOTE.BLOCK.ladder.svg.",
)
@click.option(
    "--check",
    "drawings",
    flag_value="check",
    help="Instead, say which of them are not what the document says now.",
)
@click.option(
    "--assumed",
    is_flag=True,
    help="List in the text every value that was taken as given because no block says it.",
)
@click.option(
    "--jobs",
    type=click.IntRange(min=1),
    help="So many documents at once.  [default: as many as there are cores]",
)
@form_option
@debug_option
@click.pass_context
def command(  # noqa: PLR0913  # one for each option
    ctx: click.Context,
    *,
    files: tuple[str, ...],
    drawings: Drawings | None,
    assumed: bool,
    jobs: int | None,
    form: str,
) -> None:
    """Check every diagram in installation notes, at the lines of the notes.

    Takes Markdown and plain text, folders of them (.md, .markdown, .txt, .text) or - for standard
    input. A diagram is a fenced block whose fence is followed by the word wiring; behind it may
    stand, with commas between, name NAME, on NAME (it builds on that block of the document), draw
    ladder or draw connections, and piece (it is checked only in the blocks that build on it).
    """
    import wirecheck
    from wirecheck.notes.document import SUFFIXES
    from wirecheck.report.notes_files import exit_code

    inputs = find_inputs(files, SUFFIXES, hidden=False)
    if drawings and any(each.name == STANDARD_INPUT for each in inputs):
        raise click.UsageError(f"standard input lies in no folder; leave --{drawings} out")
    rivals = _rivals(inputs)
    tasks = [
        Task(each, drawings, form, page(), assumed, rivals.get(each.name, "")) for each in inputs
    ]
    run = _Run(told(_worked(tasks, jobs), len(tasks), "checking"))
    rules = len(wirecheck.rule_names())
    for text in _json(run, rules) if form == "json" else _text(run, rules):
        if sys.stdout is not None and sys.stdout.isatty():
            wipe()
        print_text(text)
    if run.errors:
        raise PassedOnError(run.errors[0])
    ctx.exit(exit_code(run.tallies))


class _Run:
    """What the documents come to, one after the other; their reports are not kept."""

    def __init__(self, done: Iterable[Done]) -> None:
        self._done = done
        self.tallies: list[NoteTally] = []
        self.errors: list[OurError] = []

    def __iter__(self) -> Iterator[Done]:
        for each in self._done:
            self.tallies.append(each.tally)
            if each.error is not None:
                self.errors.append(each.error)
            yield each


def _rivals(inputs: Iterable[Input]) -> dict[str, str]:
    """Documents whose drawings would be named as those of an earlier one, and which that is."""
    first: dict[tuple[Path, str], str] = {}
    rivals: dict[str, str] = {}
    for each in inputs:
        path = Path(each.name)
        before = first.setdefault((path.parent.absolute(), path.stem.casefold()), each.name)
        if before != each.name:
            rivals[each.name] = before
    return rivals


def _worked(tasks: Sequence[Task], jobs: int | None) -> Iterator[Done]:
    """Every document's result, in the order of the documents."""
    from wirecheck.notes.batch import cores, in_order

    if jobs is None:
        jobs = cores() if len(tasks) >= WORTH_PROCESSES else 1
    processes = min(jobs, len(tasks))
    return in_order(work, lost, tasks, processes, leave_stopping_to_the_caller)


def _json(run: _Run, rules: int) -> Iterator[str]:
    from wirecheck.report.notes_json import closing_json, document_of

    entries = (done.report for done in run if done.report)
    return document_of(entries, lambda: closing_json(run.tallies, rules))


def _text(run: _Run, rules: int) -> Iterator[str]:
    """The reports as they come, the cautions above the first that tells what to move."""
    from wirecheck.report.notes_text import closing_text, opening_text

    cautioned = False
    for done in run:
        if done.cautions and not cautioned:
            cautioned = True
            yield as_text(opening_text(page()))
        if done.report:
            yield done.report
    yield as_text(closing_text(run.tallies, rules, page()))
