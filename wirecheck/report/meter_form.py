"""The JSON form of ``wirecheck meter``."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from wirecheck.report.forms import Count, FindingForm, Form, Position, ProblemForm, Version


class ProbeForm(Form):
    """Where a probe goes: a terminal, or the end of the lead taken off it."""

    place: str
    lead_taken_off: bool


class OtherReadingForm(Form):
    """Another reading, and what it means."""

    reading: str
    means: str


class ReadingForm(Form):
    """One reading; ``value`` is null where nothing conducts, ``black`` null for a clamp."""

    step: Position
    meter: Literal["volts AC", "ohms", "amps AC", "microamps DC"]
    red: ProbeForm
    black: ProbeForm | None
    in_series: bool
    first: str
    value: float | None
    unit: Literal["V", "ohm", "A", "uA"]
    shows: str
    otherwise: list[OtherReadingForm]
    caution: str


class GroupForm(Form):
    """Readings that belong together: of the unit, or at one of several controls."""

    control: str | None
    notes: list[str]
    readings: list[ReadingForm]


class StageForm(Form):
    """A stage of the work, and how the unit is brought there."""

    stage: Literal["power-off", "idle", "call", "damper-opening", "trial", "stopped", "run"]
    title: str
    set_up: list[str]
    groups: list[GroupForm]


class MeterSheetForm(Form):
    """The meter sheet of a diagram; with mistakes in it the values are those as drawn."""

    title: str
    cautions: list[str]
    values_are: Literal["good-unit", "as-drawn"]
    findings: list[FindingForm]
    dangers: list[str]
    as_drawn: list[str]
    remarks: list[str]
    stages: list[StageForm]


class MeterFileForm(Form):
    """The sheet of one file, null where it could not be read, and the pages drawn of it."""

    file: str
    variant: str | None
    problems: list[ProblemForm]
    sheet: MeterSheetForm | None
    pictures: list[str]


class MeterSummary(Form):
    """What the files come to together."""

    files: Count
    readings: Count
    problems: Count
    sentence: str


class MeterDocument(Form):
    """What ``wirecheck meter --as json`` prints."""

    version: Version = Field(alias="schema")
    files: list[MeterFileForm]
    summary: MeterSummary
