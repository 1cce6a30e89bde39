"""One document of notes, from its file to its report: what a process of a batch does."""

from __future__ import annotations

import signal
from collections.abc import Iterable
from pathlib import Path
from typing import TYPE_CHECKING, Literal, NamedTuple

from wirecheck.cli.inputs import STANDARD_INPUT, Input, problem_of, read_bytes, unreadable
from wirecheck.cli.our_error import OurError, in_words
from wirecheck.report.notes_files import NoteDrawing, NoteFile, NoteTally, State, tally_note
from wirecheck.report.page import Page

if TYPE_CHECKING:
    from wirecheck.notes.checked import CheckedDocument
    from wirecheck.notes.drawings import Wanted

Drawings = Literal["draw", "check"]


class Task(NamedTuple):
    """One document, and what is asked of it.

    Attributes:
        given: the document.
        drawings: whether its drawings are made, or compared; None for neither.
        form: of the report.
        page: that the report is for.
        assumed: whether it lists what was taken as given.
        rival: a document whose drawings would have the names of this one's; "" for none.
    """

    given: Input
    drawings: Drawings | None
    form: str
    page: Page
    assumed: bool
    rival: str


class Done(NamedTuple):
    """What came of one document.

    Attributes:
        tally: in numbers.
        report: in the form asked for.
        error: an error of ours that spoiled it.
    """

    tally: NoteTally
    report: str = ""
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
        return Done(tally_note(file), _report(file, task))
    except Exception as error:  # noqa: BLE001 - the other documents are still checked
        return Done(NoteTally(task.given.name, failed=True), error=in_words(error))


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
    document = wirecheck.check_note_bytes(data, given.name, path)
    file = NoteFile(given.name, document.problems, document)
    return _with_drawings(file, document, path, task) if task.drawings and path else file


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
            state = _state(target, _picture(document, wanted), write=task.drawings == "draw")
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

    checked = document.diagrams[wanted.number].checked
    return wirecheck.draw(as_drawn(document.document.source.name, wanted, checked), wanted.sheet)


def _report(file: NoteFile, task: Task) -> str:
    if task.form == "json":
        from wirecheck.report.notes_json import note_json, written

        return written(note_json(file))
    from wirecheck.report.notes_text import note_text

    return as_text(note_text(file, task.page, assumed=task.assumed))


def as_text(lines: Iterable[str]) -> str:
    """Lines as one text, each ended."""
    return "".join(f"{line}\n" for line in lines)
