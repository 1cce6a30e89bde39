"""The JSON forms of the commands: ``python -m wirecheck.report.schemas`` writes their schemas.

The reports themselves are plain dictionaries, built without waiting for pydantic; a test holds
them to these models, and the published files in ``shared/schemas/`` to what the models say.
A reader of the JSON should pass over keys it does not know: some may be added, those here stay.
"""

from __future__ import annotations

import json
from typing import Literal

from pydantic import BaseModel, Field

from wirecheck.model.kind import Kind
from wirecheck.report.check_form import CheckDocument
from wirecheck.report.compare_form import CompareDocument
from wirecheck.report.correct_form import CorrectDocument
from wirecheck.report.faults_form import FaultsDocument
from wirecheck.report.forms import (
    Count,
    DrawingForm,
    FindingForm,
    Form,
    ProblemForm,
    Version,
    Word,
)
from wirecheck.report.grade_form import GradeDocument
from wirecheck.report.html.form import ReportDocument
from wirecheck.report.lists_form import ListsDocument
from wirecheck.report.meter_form import MeterDocument
from wirecheck.report.notes_form import NotesDocument
from wirecheck.report.practice_form import PracticeDocument
from wirecheck.report.published_form import BaselineDocument, SchemaDocument
from wirecheck.report.replace_form import ReplaceDocument
from wirecheck.report.troubleshoot_form import TroubleshootDocument
from wirecheck.report.whole_file import write_whole
from wirecheck.resources import shared_file


class DrawnFileForm(Form):
    """The sheets of one file; ``findings`` are those marked on them."""

    file: str
    variant: str | None
    problems: list[ProblemForm]
    findings: dict[Word, Count]
    drawings: list[DrawingForm]


class DrawSummary(Form):
    """What the files come to together."""

    files: Count
    drawings: Count
    problems: Count


class DrawDocument(Form):
    """What ``wirecheck draw --as json`` prints."""

    version: Version = Field(alias="schema")
    files: list[DrawnFileForm]
    summary: DrawSummary


class FormattedFileForm(Form):
    """One file in the canonical form, and whether that differs from what is there."""

    file: str
    changes: bool
    text: str
    problems: list[ProblemForm]


class FormatSummary(Form):
    """What the files come to together."""

    files: Count
    changes: Count
    problems: Count


class FormatDocument(Form):
    """What ``wirecheck format --as json`` prints."""

    version: Version = Field(alias="schema")
    files: list[FormattedFileForm]
    summary: FormatSummary


class KindsDocument(Form):
    """What ``wirecheck kinds --as json`` prints: what the part library states."""

    version: Version = Field(alias="schema")
    kinds: list[Kind]


class SourceForm(Form):
    """Where a requirement comes from; ``words`` is how a report prints it."""

    title: str
    kind: Literal["standard", "law", "textbook", "practice", "judgement"]
    clause: str
    from_memory: bool
    words: str


class FaultForm(Form):
    """One way of breaking a rule; ``{fields}`` are filled in a finding."""

    fault: str
    message: str
    seen_at_unit: str
    breaks: Word


class ExampleForm(Form):
    """A diagram and what a check finds in it."""

    text: str
    findings: list[FindingForm]


class RuleForm(Form):
    """A rule: the mistake it names, why that matters, a wrong diagram and the right one."""

    rule: str
    title: str
    family: str
    breaks: Word
    why: str
    blind_spots: str
    caution: str
    sources: list[SourceForm]
    faults: list[FaultForm]
    bad: list[ExampleForm]
    good: list[ExampleForm]


class ExplainDocument(Form):
    """What ``wirecheck explain --as json`` prints."""

    version: Version = Field(alias="schema")
    rules: list[RuleForm]
    no_certificate: str


class OutcomeForm(Form):
    """How a run ends for one control, in a word and in a sentence."""

    control: str
    outcome: str
    sentence: str


class DangerForm(Form):
    """Something dangerous in a run, and when it is first seen, in seconds from the call."""

    danger: str
    sentence: str
    time_s: float


class ChangeForm(Form):
    """At a time, in seconds from the call, a track became something, for a reason or none."""

    time_s: float
    track: str
    state: str
    reason: str


class RunForm(Form):
    """A run: looked at for whether it works, or for danger."""

    view: Literal["operation", "danger"]
    from_s: float
    until_s: float
    cut_short: bool
    outcomes: list[OutcomeForm]
    dangers: list[DangerForm]
    changes: list[ChangeForm]


class SequenceFileForm(Form):
    """What a call for heat does at one diagram; ``picture`` is the timeline drawn, if one was."""

    file: str
    variant: str | None
    problems: list[ProblemForm]
    runs: list[RunForm]
    picture: str | None


class SequenceSummary(Form):
    """What the files come to together."""

    files: Count
    dangers: Count
    problems: Count


class SequenceDocument(Form):
    """What ``wirecheck sequence --as json`` prints."""

    version: Version = Field(alias="schema")
    files: list[SequenceFileForm]
    summary: SequenceSummary


#: The document of each command; ``faults`` is that of ``check --faults``, ``baseline`` the file
#: that ``check --write-baseline`` writes.
DOCUMENTS: dict[str, type[BaseModel]] = {
    "baseline": BaselineDocument,
    "check": CheckDocument,
    "compare": CompareDocument,
    "correct": CorrectDocument,
    "draw": DrawDocument,
    "explain": ExplainDocument,
    "faults": FaultsDocument,
    "format": FormatDocument,
    "grade": GradeDocument,
    "kinds": KindsDocument,
    "lists": ListsDocument,
    "meter": MeterDocument,
    "notes": NotesDocument,
    "practice": PracticeDocument,
    "report": ReportDocument,
    "replace": ReplaceDocument,
    "schema": SchemaDocument,
    "sequence": SequenceDocument,
    "troubleshoot": TroubleshootDocument,
}


def schema_text(command: str) -> str:
    """Return the JSON Schema (draft 2020-12) of a command's document, as published."""
    schema = DOCUMENTS[command].model_json_schema(by_alias=True, mode="serialization")
    schema["$schema"] = "https://json-schema.org/draft/2020-12/schema"
    for described in (schema, *schema.get("$defs", {}).values()):
        # What follows the first line of a docstring is for whoever reads the code.
        described["description"] = described["description"].partition("\n")[0]
    return json.dumps(schema, indent=2) + "\n"


def write_schemas() -> None:
    """Write the published files anew."""
    for command in DOCUMENTS:
        write_whole(shared_file(f"schemas/{command}.json"), schema_text(command).encode("utf-8"))


if __name__ == "__main__":
    write_schemas()
