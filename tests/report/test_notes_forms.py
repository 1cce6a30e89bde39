"""What notes come to in every form, held to its published schema: the binder, and hostile text."""

from __future__ import annotations

import json
from collections.abc import Sequence
from functools import cache
from pathlib import Path

import pytest

from tests.contract.source import ROOT
from tests.report.hostile import TEXTS, diagram
from tests.report.test_check_junit import schema as junit_schema
from tests.report.test_check_sarif import validator as sarif_validator
from wirecheck import check_note, check_note_bytes
from wirecheck.notes.document import SUFFIXES
from wirecheck.report.notes_files import NoteDrawing, NoteFile, note_file, tally_note
from wirecheck.report.notes_form import NotesDocument
from wirecheck.report.notes_json import closing_json, document_of, note_json, written
from wirecheck.report.notes_logs import junit_document, junit_part, sarif_log, sarif_part
from wirecheck.report.notes_text import closing_text, note_text
from wirecheck.report.page import Page

BINDER = ROOT / "examples" / "binder"


@cache
def binder() -> tuple[NoteFile, ...]:
    paths = sorted(path for path in BINDER.iterdir() if path.suffix in SUFFIXES)
    return tuple(note_file(path.name, check_note(path)) for path in paths)


def hostile(text: str) -> NoteFile:
    """A note whose diagram, names and file are all one text."""
    quoted = text.replace('"', '""').replace("\r", " ").replace("\0", " ").replace("`", "'")
    note = (
        f'# {text}\n\n```wiring name "{quoted}", draw ladder\n{diagram(quoted)}\n```\n\n'
        f'```wiring name "{quoted}b", on "{quoted}"\n```\n\n```wiring on "{quoted}?"\n```\n'
        f"\n<div>\n```wiring {text}\n</div>\n"
    )
    document = check_note_bytes(note.encode("utf-8", "replace"), "note.md", Path("note.md"))
    drawings = tuple(NoteDrawing(each, f"{text}.svg", "stale") for each in document.drawings)
    return note_file("note.md", document)._replace(drawings=drawings)


def held_to_the_schemas(files: Sequence[NoteFile]) -> None:
    tallies = [tally_note(file) for file in files]
    printed = "".join(
        document_of(map(written, map(note_json, files)), lambda: closing_json(tallies, 3))
    )
    form = NotesDocument.model_validate_json(printed, strict=True)
    assert form.model_dump(mode="json", by_alias=True) == json.loads(printed)

    parts = [sarif_part(file, with_baseline=False) for file in files]
    log = json.loads(json.dumps(sarif_log(parts, usable=True)))
    sarif_validator().validate(log)
    results = log["runs"][0]["results"]
    found = sum(count for each in tallies for _breaks, count in each.findings)
    shown = [
        each
        for each in results
        if not each.get("message", {}).get("text", "").startswith("accepted")
    ]
    unsuppressed = [each for each in shown if "suppressions" not in each]
    assert len(unsuppressed) == found + sum(each.problems for each in tallies)

    junit = junit_document(map(junit_part, files))
    junit_schema().validate(junit)


def test_every_form_of_the_binder_is_as_published() -> None:
    held_to_the_schemas(binder())


@pytest.mark.parametrize("text", TEXTS)
def test_every_form_of_a_hostile_note_is_as_published(text: str) -> None:
    file = hostile(text)
    assert file.diagrams
    held_to_the_schemas([file])
    lines = [*note_text(file, Page(), assumed=True), *closing_text([tally_note(file)], 3, Page())]
    assert lines
    assert all(line.isprintable() for line in lines)
