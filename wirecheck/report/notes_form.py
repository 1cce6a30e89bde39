"""The JSON form of ``wirecheck notes``."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from wirecheck.report.check_form import FileForm
from wirecheck.report.forms import Count, Form, Place, ProblemForm, Version, Word


class PassedOverForm(Form):
    """What looks like a block of wiring and was not read as one, and why."""

    place: Place
    reason: str


class NoteDiagramForm(FileForm):
    """A diagram of a document, as a check gives it: ``place`` is the fence that opens its block."""

    block: str | None
    on: list[str]
    place: Place


class NoteDrawingForm(Form):
    """A sheet that a block asks for; ``state`` says whether its file is as the document says."""

    block: str
    variant: str | None
    sheet: Literal["ladder", "connections"]
    path: str
    state: Literal["drawn", "current", "stale", "missing"]
    place: Place


class NoteForm(Form):
    """One document; each problem stands here once, not with its diagrams."""

    file: str
    problems: list[ProblemForm]
    passed_over: list[PassedOverForm]
    diagrams: list[NoteDiagramForm]
    drawings: list[NoteDrawingForm]


class VerdictForm(Form):
    """What one document comes to, in words."""

    file: str
    verdict: str


class NotesSummary(Form):
    """What the documents come to together; a finding of several diagrams counts once."""

    documents: Count
    diagrams: Count
    leads: Count
    rules: Count
    findings: dict[Word, Count]
    claims: Count
    proved: Count
    problems: Count
    accepted: Count
    known: Count
    stale: Count
    drawn: Count
    failed: list[str]
    by_document: list[VerdictForm]
    sentence: str


class NotesDocument(Form):
    """What ``wirecheck notes --as json`` prints."""

    version: Version = Field(alias="schema")
    documents: list[NoteForm]
    summary: NotesSummary
