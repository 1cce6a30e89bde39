"""The JSON form of ``wirecheck grade``, as its schema is made from it."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from wirecheck.report.forms import Count, Form, Position, Version, Word

Points = Annotated[float, Field(ge=0)]


class TextProblemForm(Form):
    """Something in a submission that could not be read, and where it stands."""

    file: str
    line: Position
    column: Position
    message: str


class CircuitMarkForm(Form):
    """The mark of one circuit; of workmanship ``units`` are findings."""

    circuit: str
    units: Count
    right: Count
    points: Points
    out_of: Points


class LostForm(Form):
    """One mistake, its cost, what the unit would have done; ``what`` is in the key's terms."""

    number: Position
    circuit: str
    points: Points
    what: str
    reason: str
    effect: str
    breaks: Word
    line: Position | None
    leads: list[str]
    places: list[str]
    caution: str


class SubmissionForm(Form):
    """One submission; without a mark ``mark`` is null and ``reason`` or ``problems`` say why."""

    file: str
    name: str
    status: Literal["marked", "mended", "partly read", "unreadable", "not marked"]
    reason: str
    problems: list[TextProblemForm]
    key: str | None
    same_as_key: Literal["structure", "function"] | None
    mark: Points | None
    out_of: Points
    if_it_were_safe: Points | None
    unsafe: list[str]
    circuits: list[CircuitMarkForm]
    lost: list[LostForm]
    does: list[str]
    key_does: list[str]
    remarks: list[str]
    sheets: list[str]


class CommonForm(Form):
    """A common mistake: in how many drawings, and in how many of them as one of safety."""

    what: str
    circuit: str
    drawings: Count
    unsafe: Count


class GradeSummary(Form):
    """What the class comes to; shares go from 0 to 1."""

    submissions: Count
    marked: Count
    capped: Count
    mean: Points | None
    median: Points | None
    out_of: Points
    marks_by_tenth: list[Count]
    right_by_circuit: dict[str, Annotated[float, Field(ge=0, le=1)]]
    commonest_mistakes: list[CommonForm]
    pictures: list[str]


class GradeDocument(Form):
    """What ``wirecheck grade --as json`` prints, and writes as ``grades.json``."""

    version: Version = Field(alias="schema")
    keys: list[str]
    submissions: list[SubmissionForm]
    summary: GradeSummary
