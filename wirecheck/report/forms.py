"""What the JSON forms of several commands are made of: places, problems, findings."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field

Word = Literal["safety", "operation", "workmanship"]
Position = Annotated[int, Field(ge=1)]
Count = Annotated[int, Field(ge=0)]
Version = Literal[1]


class Form(BaseModel):
    """A part of a document; it does not change."""

    model_config = ConfigDict(frozen=True)


class Place(Form):
    """Where something stands in a text; columns count characters, the end is just behind."""

    file: str
    line: Position
    column: Position
    end_line: Position
    end_column: Position


class ProblemForm(Place):
    """Something in a text that could not be used, and the nearest thing that would be right."""

    message: str
    nearest: str | None


class EditForm(Place):
    """A change that mends: put ``new_text`` in the place of what stands there."""

    action: Literal["add", "remove", "move", "set"]
    words: str
    new_text: str


class RelatedForm(Place):
    """Another place that belongs to a finding."""

    label: str


class FindingForm(Place):
    """A mistake in the wiring; ``breaks`` is the worst of what it breaks."""

    rule: str
    fault: str
    breaks: Word
    also_breaks: list[Word]
    message: str
    seen_at_unit: str
    leads: list[str]
    terminals: list[str]
    caution: str
    source: str
    edits: list[EditForm]
    related: list[RelatedForm]


class DrawingForm(Form):
    """A sheet that was written."""

    sheet: Literal["ladder", "connections"]
    format: Literal["svg", "png", "pdf"]
    path: str
