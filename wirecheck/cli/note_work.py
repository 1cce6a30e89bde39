"""One document of notes, from its file to its report: what a process of a batch does."""

from __future__ import annotations

import signal
from collections import Counter
from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING, Literal, NamedTuple

from wirecheck.cli.inputs import STANDARD_INPUT, SUFFIX, Input, problem_of, read_bytes, unreadable
from wirecheck.cli.our_error import OurError, in_words
from wirecheck.report.baseline import Baseline, Mark, marks_of
from wirecheck.report.notes_files import (
    NoteDrawing,
    NoteFile,
    NoteTally,
    State,
    note_file,
    tally_note,
    with_known,
)
from wirecheck.report.page import Page

if TYPE_CHECKING:
    from wirecheck.notes.checked import CheckedDocument
    from wirecheck.notes.drawings import Wanted

Drawings = Literal["draw", "check"]


class Wish(NamedTuple):
    """What is asked of all documents of a call.

    Attributes:
        drawings: whether their drawings are made, or compared; None for neither.
        form: of the report.
        page: that the report is for.
        assumed: whether it lists what was taken as given.
        combined: whether variants are checked together too.
        baseline: the file of known findings; None for none.
        write: whether what is found is to be known from now on.
    """

    drawings: Drawings | None
    form: str
    page: Page
    assumed: bool
    combined: bool
    baseline: Path | None
    write: bool

    @property
    def folder(self) -> Path:
        """Where the baseline lies."""
        return self.baseline.parent if self.baseline else Path()


class Task(NamedTuple):
    """One document, and what is asked of it.

    Attributes:
        given: the document.
        wish: what is asked of all of them.
        rival: a document whose drawings would have the names of this one's; "" for none.
        known: what the baseline knows of it; None for no baseline.
    """

    given: Input
    wish: Wish
    rival: str
    known: Baseline | None


class Done(NamedTuple):
    """What came of one document.

    Attributes:
        tally: in numbers.
        report: in the form asked for.
        marks: what is found, as a baseline keeps it; None where none is written.
        gone: how much of the baseline is not found any more.
        error: an error of ours that spoiled it.
    """

    tally: NoteTally
    report: str = ""
    marks: Counter[Mark] | None = None
    gone: int = 0
    error: OurError | None = None

    @property
    def cautions(self) -> bool:
        """Whether it tells somebody what to move."""
        return any(count for _breaks, count in self.tally.findings)


def leave_stopping_to_the_caller() -> None:
    """Have the keyboard stop the process that waits, not each that works for it."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)


def work(task: Task) -> Done:
    """Check one document; whatever goes wrong spoils no other."""
    try:
        file = _checked(task)
        marks = marks_of(file.checks, task.wish.folder) if task.wish.write else None
        known = task.known if marks is None else Baseline(marks)
        gone = 0
        if known is not None:
            file, gone = with_known(file, known, task.wish.folder)
        return Done(tally_note(file), _report(file, task), marks, gone)
    except Exception as error:  # noqa: BLE001 - the other documents are still checked
        told = in_words(error)
        told = told._replace(what=f"{told.what} (in checking {task.given.name})")
        return Done(NoteTally(task.given.name, failed=True), error=told)


def lost(task: Task) -> Done:
    """What came of a document that ended the process that checked it."""
    error = OurError("the process that checked this document ended", task.given.name)
    return Done(NoteTally(task.given.name, failed=True), error=error)


def _checked(task: Task) -> NoteFile:
    import wirecheck

    given = task.given
    path = None if given.name == STANDARD_INPUT else Path(given.name)
    try:
        data = read_bytes(given)
    except OSError as error:
        return NoteFile(given.name, (unreadable(given.name, error),), None)
    if given.name.lower().endswith(SUFFIX):
        reason = "a wiring file is no document: wirecheck check reads it"
        return NoteFile(given.name, (problem_of(given.name, reason),), None)
    document = wirecheck.check_note_bytes(data, given.name, path, combined=task.wish.combined)
    file = note_file(given.name, document)
    return _with_drawings(file, document, path, task) if task.wish.drawings and path else file


def _with_drawings(file: NoteFile, document: CheckedDocument, path: Path, task: Task) -> NoteFile:
    """Make the drawings that the document asks for, or see whether they are as it says."""
    if task.rival and document.drawings:
        reason = f"its drawings would have the names of those of {task.rival}; rename one of them"
        return file._replace(problems=(*file.problems, problem_of(file.file, reason)))
    drawings: list[NoteDrawing] = []
    refused: list[str] = []
    for wanted in document.drawings:
        target = wanted.path(path)
        try:
            state = _state(target, _picture(document, wanted), write=task.wish.drawings == "draw")
        except OSError as error:
            reason = (error.strerror or "it failed").lower()
            refused.append(f"{target} cannot be read or written: {reason}")
        else:
            drawings.append(NoteDrawing(wanted, str(target), state))
    problems = (*file.problems, *(problem_of(file.file, reason) for reason in refused))
    return file._replace(problems=problems, drawings=tuple(drawings))


def _state(target: Path, picture: bytes, *, write: bool) -> State:
    """Whether a file holds this picture; with ``write`` it does afterwards."""
    from wirecheck.report.whole_file import write_whole

    there = target.read_bytes() if target.is_file() else None
    if there == picture:
        return "current"
    if not write:
        return "missing" if there is None else "stale"
    write_whole(target, picture)
    return "drawn"


def _picture(document: CheckedDocument, wanted: Wanted) -> bytes:
    """The drawing: no date, and the same whatever the call named the document."""
    import wirecheck
    from wirecheck.notes.drawings import as_drawn

    checked = document.diagrams[wanted.number].drawn
    return wirecheck.draw(as_drawn(document.document.source.name, wanted, checked), wanted.sheet)


def _report(file: NoteFile, task: Task) -> str:
    """The document's part of what is printed."""
    wish = task.wish
    if wish.form == "json":
        from wirecheck.report.notes_json import note_json, written

        return written(note_json(file))
    if wish.form == "sarif":
        from wirecheck.report.notes_logs import sarif_part

        return sarif_part(file, with_baseline=wish.baseline is not None)
    if wish.form == "junit":
        from wirecheck.report.notes_logs import junit_part

        return junit_part(file)
    from wirecheck.report.notes_text import note_text

    return as_text(note_text(file, wish.page, assumed=wish.assumed))


def as_text(lines: Iterable[str]) -> str:
    """Lines as one text, each ended."""
    return "".join(f"{line}\n" for line in lines)
