"""``wirecheck notes``: every diagram in installation notes, checked where it stands."""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import Final

import click

from wirecheck.cli.inputs import STANDARD_INPUT, Input, find_inputs
from wirecheck.cli.known import read_known, say_gone, write_known
from wirecheck.cli.note_work import (
    Done,
    Drawings,
    Task,
    Wish,
    as_text,
    leave_stopping_to_the_caller,
    lost,
    work,
)
from wirecheck.cli.options import baseline_options, debug_option, fail_on_option, files_argument
from wirecheck.cli.our_error import OurError, PassedOnError
from wirecheck.cli.printing import page, print_text
from wirecheck.cli.progress import told, wipe
from wirecheck.model.finding import Breaks
from wirecheck.report.baseline import Baseline, Mark, known_by_file
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
    "--all-combinations",
    "combined",
    is_flag=True,
    help="Besides each variant check all of them together that touch nothing in common.",
)
@click.option(
    "--jobs",
    type=click.IntRange(min=1),
    help="So many documents at once.  [default: of many documents one a core]",
)
@fail_on_option
@baseline_options
@click.option(
    "--as",
    "form",
    type=click.Choice(["text", "json", "sarif", "junit"]),
    default="text",
    show_default=True,
    help="Text for people, JSON, SARIF 2.1.0 or JUnit XML for programs.",
)
@debug_option
@click.pass_context
def command(  # noqa: PLR0913  # one for each option
    ctx: click.Context,
    *,
    files: tuple[str, ...],
    drawings: Drawings | None,
    assumed: bool,
    combined: bool,
    jobs: int | None,
    fail_on: str,
    baseline: Path | None,
    write_baseline: bool,
    form: str,
) -> None:
    """Check every diagram in installation notes, at the lines of the notes.

    Takes Markdown and plain text, folders of them (.md, .markdown, .txt, .text) or - for standard
    input. A diagram is a fenced block whose fence is followed by the word wiring; behind it may
    stand, with commas between, name NAME, on NAME (it builds on that block of the document), draw
    ladder or draw connections, and piece (it is checked only in the blocks that build on it).
    """
    from wirecheck.notes.document import SUFFIXES
    from wirecheck.report.notes_files import exit_code

    if drawings and form in _LOGS:
        raise click.UsageError(f"a log of findings has no drawings; leave --{drawings} out")
    if write_baseline and baseline is None:
        raise click.UsageError("--write-baseline needs --baseline FILE, where it is written")
    inputs = find_inputs(files, SUFFIXES, hidden=False)
    if drawings and any(each.name == STANDARD_INPUT for each in inputs):
        raise click.UsageError(f"standard input lies in no folder; leave --{drawings} out")
    known = read_known(baseline) if baseline and not write_baseline else None
    wish = Wish(drawings, form, page(), assumed, combined, baseline, write_baseline)
    tasks = _tasks(inputs, wish, known)
    run = _Run(told(_worked(tasks, jobs), len(tasks), "checking"))
    for text in _FORMS.get(form, _text)(run):
        if sys.stdout is not None and sys.stdout.isatty():
            wipe()
        print_text(text)
    if baseline and write_baseline:
        write_known(baseline, run.marks)
    say_gone(run.gone)
    if run.errors:
        raise PassedOnError(run.errors[0])
    ctx.exit(exit_code(run.tallies, Breaks[fail_on.upper()]))


class _Run:
    """What the documents come to, one after the other; their reports are not kept."""

    def __init__(self, done: Iterable[Done]) -> None:
        self._done = done
        self.tallies: list[NoteTally] = []
        self.errors: list[OurError] = []
        self.marks: Counter[Mark] = Counter()
        self.gone = 0

    def __iter__(self) -> Iterator[Done]:
        for each in self._done:
            self.tallies.append(each.tally)
            self.gone += each.gone
            self.marks.update(each.marks or {})
            if each.error is not None:
                self.errors.append(each.error)
            yield each

    @property
    def reports(self) -> Iterator[str]:
        """The part of each document, of those that have one."""
        return (each.report for each in self if each.report)


def _tasks(inputs: Sequence[Input], wish: Wish, known: Baseline | None) -> list[Task]:
    """What is to be done with each document."""
    rivals = _rivals(inputs)
    names = [each.name for each in inputs]
    by_file = known_by_file(known, names, wish.folder) if known else {}
    return [Task(each, wish, rivals.get(each.name, ""), by_file.get(each.name)) for each in inputs]


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
    from wirecheck.processes import cores, in_order

    if jobs is None:
        jobs = cores() if len(tasks) >= WORTH_PROCESSES else 1
    processes = min(jobs, len(tasks))
    return in_order(work, lost, tasks, processes, leave_stopping_to_the_caller)


def _rules() -> int:
    import wirecheck

    return len(wirecheck.rule_names())


def _text(run: _Run) -> Iterator[str]:
    """The reports as they come, the cautions above the first that tells what to move."""
    from wirecheck.report.notes_text import closing_text, opening_text

    cautioned = False
    for done in run:
        if done.cautions and not cautioned:
            cautioned = True
            yield as_text(opening_text(page()))
        if done.report:
            yield done.report
    yield as_text(closing_text(run.tallies, _rules(), page()))


def _json(run: _Run) -> Iterator[str]:
    from wirecheck.report.notes_json import closing_json, document_of

    return document_of(run.reports, lambda: closing_json(run.tallies, _rules()))


def _sarif(run: _Run) -> Iterator[str]:
    import json

    from wirecheck.report.notes_logs import sarif_log

    parts = list(run.reports)
    usable = not any(each.problems or each.failed for each in run.tallies)
    yield json.dumps(sarif_log(parts, usable=usable), indent=2) + "\n"


def _junit(run: _Run) -> Iterator[str]:
    from wirecheck.report.notes_logs import junit_document

    yield junit_document(run.reports)


#: How the forms are printed that programs read.
_FORMS: Final = {"json": _json, "sarif": _sarif, "junit": _junit}
#: Those that take findings and nothing else.
_LOGS: Final = ("sarif", "junit")
