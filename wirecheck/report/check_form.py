"""The JSON form of ``wirecheck check``."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from wirecheck.report.forms import Count, FindingForm, Form, Place, ProblemForm, Version, Word

#: Whether a claim holds: ``never`` says that what it speaks of never comes.
Verdict = Literal["proved", "refuted", "never", "undecided"]


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


class ClaimForm(Place):
    """What became of a claim; ``value`` is null for a state, and where nothing conducts."""

    claim: str
    verdict: Verdict
    computed: str
    value: float | None
    unit: Literal["", "V", "A", "ohm"]
    phase: str
    why: str
    sentence: str


class AcceptedForm(Form):
    """A finding that a comment in the file accepts, and the reason given there."""

    reason: str
    finding: FindingForm


class FileForm(Form):
    """What a check says about one file, or about one variant in it."""

    file: str
    variant: str | None
    title: str | None
    leads: Count
    problems: list[ProblemForm]
    findings: list[FindingForm]
    accepted: list[AcceptedForm]
    known: list[FindingForm]
    fixed: list[FixedForm]
    claims: list[ClaimForm]
    assumed: list[AssumedForm]
    not_checked: list[NotCheckedForm]


class CheckSummary(Form):
    """What the files come to together; a finding that variants of a file share counts once."""

    files: Count
    variants: Count
    leads: Count
    rules: Count
    findings: dict[Word, Count]
    problems: Count
    claims: dict[Verdict, Count]
    accepted: Count
    known: Count
    sentence: str


class CheckDocument(Form):
    """What ``wirecheck check --as json`` prints."""

    version: Version = Field(alias="schema")
    files: list[FileForm]
    summary: CheckSummary
