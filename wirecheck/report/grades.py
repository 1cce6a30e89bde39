"""Marks one submission and draws its sheets: what each process of a batch does."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from wirecheck.grade.key import Key
from wirecheck.grade.marked import Marked
from wirecheck.grade.record import Record, as_data, from_data
from wirecheck.grade.rubric import Rubric
from wirecheck.grade.submission import Submission, grade, read, unreadable
from wirecheck.language.load import load_path
from wirecheck.report.checks import FINDINGS, NOTHING_FOUND, OUR_ERROR, UNUSABLE
from wirecheck.report.grade_sheet import sheet_text
from wirecheck.report.page import Page
from wirecheck.report.whole_file import write_whole

#: Where what is marked already is kept, in the folder of the sheets.
MARKED_ALREADY = ".marked"
#: Raised when marks or sheets change, so that nothing marked before it is taken for done.
GENERATION = 1

Sheets = Literal["svg", "png", "none"]


@dataclass(frozen=True)
class Setup:
    """What a process needs to mark with.

    Attributes:
        keys: files of the keys, each with the name it is called by.
        rubric: how much each circuit weighs.
        folder: where sheets go.
        sheets: how they are drawn.
        again: mark anew what is marked already.
        version: of the program.
    """

    keys: tuple[tuple[str, str], ...]
    rubric: Rubric
    folder: Path
    sheets: Sheets
    again: bool
    version: str

    def __call__(self) -> Desk:
        """Read the keys, in the process that marks with them."""
        keys = [Key(load_path(Path(file)).diagram, name) for file, name in self.keys]
        return Desk(self, keys)


class Desk:
    """Keys and rubric, where submissions are marked one after the other."""

    def __init__(self, setup: Setup, keys: list[Key]) -> None:
        """Work out what every submission is marked with."""
        self.setup, self.keys = setup, keys
        sources = [source for key in keys for source in key.diagram.sources]
        texts = [text for each in sources for text in (each.name, each.text)]
        names = [key.name for key in keys]
        about = [*names, *texts, repr(setup.rubric), setup.sheets, setup.version, str(GENERATION)]
        self._about = json.dumps(about)

    def kept(self, submission: Submission, data: bytes) -> Path:
        """Where the record of a submission is kept once it is marked."""
        digest = hashlib.sha256(self._about.encode())
        digest.update(json.dumps(submission).encode())
        digest.update(data)
        return self.setup.folder / MARKED_ALREADY / f"{digest.hexdigest()[:32]}.json"


def mark(desk: Desk, submission: Submission) -> Record:
    """Mark a submission, unless it is marked already, and write its sheets."""
    try:
        data = read(submission)
    except (OSError, ValueError) as error:
        return _with_sheets(desk, unreadable(submission, error), None)
    kept = desk.kept(submission, data)
    if not desk.setup.again and (known := _known(kept)) is not None:
        return known
    result = grade(submission, data, desk.keys, desk.setup.rubric)
    record = _with_sheets(desk, result.record, result.marked)
    kept.parent.mkdir(parents=True, exist_ok=True)
    write_whole(kept, json.dumps(as_data(record), sort_keys=True).encode())
    return record


def _known(kept: Path) -> Record | None:
    """A record that is kept, if all that was made of it is there."""
    try:
        record = from_data(json.loads(kept.read_bytes()))
    except (OSError, ValueError, TypeError, KeyError, AttributeError):
        return None
    return record if all(Path(path).is_file() for path in record.sheets) else None


def _with_sheets(desk: Desk, record: Record, found: Marked | None) -> Record:
    setup = desk.setup
    setup.folder.mkdir(parents=True, exist_ok=True)
    paths = []
    if found is not None and setup.sheets != "none":
        for name, data in _drawn(record, found, setup.sheets):
            path = setup.folder / f"{record.stem}-{name}.{setup.sheets}"
            write_whole(path, data)
            paths.append(path.as_posix())
    return with_words(setup.folder, record._replace(sheets=tuple(paths)))


def with_words(folder: Path, record: Record) -> Record:
    """Write the sheet of a submission in words; its path comes first.

    Raises:
        OSError: it cannot be written.
    """
    path = folder / f"{record.stem}.txt"
    text = "".join(f"{line}\n" for line in sheet_text(record, Page()))
    write_whole(path, text.encode("utf-8", "backslashreplace"))
    return record._replace(sheets=(path.as_posix(), *record.sheets))


def _drawn(
    record: Record, found: Marked, file_format: Literal["svg", "png"]
) -> Iterator[tuple[str, bytes]]:
    from wirecheck.drawing.engine import render
    from wirecheck.drawing.mark_sheet import mark_pages

    *tables, drawing = mark_pages(found, record.name, record.file)
    for number, page in enumerate(tables, 1):
        yield f"mark-{number}", render(page, file_format)
    yield "drawing", render(drawing, file_format)


def exit_code(records: list[Record]) -> int:
    """2 if something could not be read, 1 if somebody lost a point, 0 if nobody did.

    3 if it is our fault that something was not marked.
    """
    if any(each.reason.startswith("an error of ours") for each in records):
        return OUR_ERROR
    if not records or any(each.status != "marked" for each in records):
        return UNUSABLE
    full = all(each.mark == each.out_of for each in records)
    return NOTHING_FOUND if full else FINDINGS
