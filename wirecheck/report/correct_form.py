"""The JSON form of ``wirecheck correct``."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from wirecheck.report.forms import Count, DrawingForm, FindingForm, Form, ProblemForm, Version


class CorrectingEditForm(Form):
    """An edit of the wiring: which terminals leads come off and land on, in words for people."""

    action: Literal["move", "exchange", "add", "remove", "set"]
    words: str
    off: list[str]
    on: list[str]


class AnswerForm(Form):
    """A way to mend it; ``as_good`` are others that join the same terminals."""

    edits: list[CorrectingEditForm]
    text: str | None
    why_no_text: str
    left: list[FindingForm]
    as_good: list[list[CorrectingEditForm]]


class NearestForm(Form):
    """The try that left the fewest findings, where nothing mends it."""

    edits: list[CorrectingEditForm]
    left: list[FindingForm]


class TriedForm(Form):
    """How many ways to make so many edits were tried; of how many, if all were listed."""

    edits: Count
    number: Count
    out_of: Count | None
    all: bool


class CorrectedFileForm(Form):
    """What mends one diagram, the likelier mistake first."""

    file: str
    variant: str | None
    problems: list[ProblemForm]
    nothing_to_correct: bool
    findings: list[FindingForm]
    trouble: list[str]
    does_before: list[str]
    does_after: list[str]
    answers: list[AnswerForm]
    nearest: NearestForm | None
    tried: list[TriedForm]
    proved_fewest: bool
    in_time: bool
    proved: list[str]
    written: bool
    drawings: list[DrawingForm]


class CorrectSummary(Form):
    """What the files come to together."""

    files: Count
    right: Count
    corrected: Count
    problems: Count
    sentence: str


class CorrectDocument(Form):
    """What ``wirecheck correct --as json`` prints."""

    version: Version = Field(alias="schema")
    files: list[CorrectedFileForm]
    summary: CorrectSummary
