"""The JSON form of ``wirecheck report``."""

from __future__ import annotations

from pydantic import Field

from wirecheck.report.forms import Count, Form, ProblemForm, Version, Word


class ReportFileForm(Form):
    """The report of one file; no path: none was written."""

    file: str
    problems: list[ProblemForm]
    findings: dict[Word, Count]
    path: str | None


class ReportSummary(Form):
    """What the files come to together."""

    files: Count
    reports: Count
    problems: Count
    sentence: str


class ReportDocument(Form):
    """What ``wirecheck report --as json`` prints."""

    version: Version = Field(alias="schema")
    files: list[ReportFileForm]
    summary: ReportSummary
