"""The JSON form of ``wirecheck practice``."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from wirecheck.report.forms import Count, FindingForm, Form, ProblemForm, Version

DifficultyWord = Literal["easy", "medium", "hard"]
FormWord = Literal[
    "missing-lead", "wrong-terminal", "leads-exchanged", "jumper-left-in", "link-or-plug"
]


class HiddenForm(Form):
    """A mistake in an exercise: what was done, and the findings that tell of it."""

    kind: FormWord
    words: str
    difficulty: DifficultyWord
    findings: list[FindingForm]


class ExerciseForm(Form):
    """An exercise; ``hand_out`` and ``key`` are the files that were written."""

    name: str
    difficulty: DifficultyWord
    text: str
    mistakes: list[HiddenForm]
    hand_out: list[str]
    key: list[str]


class PracticeFileForm(Form):
    """What was made from one diagram."""

    file: str
    problems: list[ProblemForm]
    exercises: list[ExerciseForm]
    blank: list[str]


class PracticeSummary(Form):
    """What the files come to together."""

    files: Count
    exercises: Count
    problems: Count
    sentence: str


class PracticeDocument(Form):
    """What ``wirecheck practice --as json`` prints."""

    version: Version = Field(alias="schema")
    files: list[PracticeFileForm]
    summary: PracticeSummary
