"""The JSON form of ``wirecheck check``."""

from __future__ import annotations

from typing import Any

from pydantic import Field

from wirecheck.report.forms import Count, FindingForm, Form, Place, ProblemForm, Version, Word


class AssumedForm(Form):
    """Something taken as given, and where that comes from."""

    what: str
    source: str
    place: Place | None


class NotCheckedForm(Form):
    """Something that was not looked at, and why."""

    what: str
    reason: str
    place: Place | None


class FixedForm(Form):
    """A finding that ``--fix`` mended in the file, and how."""

    rule: str
    words: list[str]


class FileForm(Form):
    """What a check says about one file, or about one variant in it."""

    file: str
    variant: str | None
    title: str | None
    leads: Count
    problems: list[ProblemForm]
    findings: list[FindingForm]
    fixed: list[FixedForm]
    claims: list[dict[str, Any]]
    assumed: list[AssumedForm]
    not_checked: list[NotCheckedForm]


class CheckSummary(Form):
    """What the files come to together."""

    files: Count
    leads: Count
    rules: Count
    findings: dict[Word, Count]
    problems: Count
    sentence: str


class CheckDocument(Form):
    """What ``wirecheck check --as json`` prints."""

    version: Version = Field(alias="schema")
    files: list[FileForm]
    summary: CheckSummary
