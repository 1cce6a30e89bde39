"""The JSON form of ``wirecheck troubleshoot``."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from wirecheck.report.forms import Count, FindingForm, Form, Position, ProblemForm, Version

Share = Annotated[float, Field(ge=0, le=1)]


class ObservationForm(Form):
    """What a reading came to: null for an open circuit, and where it is not known."""

    reading: str
    low: float | None
    high: float | None
    words: str
    known: bool
    line: Position | None


class FaultForm(Form):
    """One fault, what mends it, and how likely its mode is beside others before all readings."""

    fault: str
    mode: str
    what: str
    repair: str
    likelihood: float
    likelihood_from: str


class SuspectForm(Form):
    """A fault, or two at once, and the observations against it."""

    probability: Share
    what: str
    faults: list[FaultForm]
    against: list[str]


class SuspectGroupForm(Form):
    """Suspects that one piece of work mends, or that no reading left tells apart."""

    probability: Share
    repair: list[str]
    suspects: list[SuspectForm]


class AskedReadingForm(Form):
    """A reading; answered in its unit, or by the number of the choice from 1, or its words."""

    reading: str
    how: Literal["watch", "look", "volts", "ohms", "microamps", "trial", "told"]
    stage: Literal["off", "idle", "trial", "run", "warm"]
    ask: str
    unit: Literal["V", "ohm", "uA", ""]
    choices: list[str]
    minutes: float
    cautions: list[str]


class OutcomeForm(Form):
    """What a reading may come to; ``value`` is null for an open circuit, choices count from 0."""

    words: str
    value: float | None
    probability: Share
    points_to: str


class AdviceForm(Form):
    """The next reading."""

    reading: AskedReadingForm
    gain_bits: float
    outcomes: list[OutcomeForm]
    after_that: list[AskedReadingForm]


class EndingForm(Form):
    """The repair and the proof; ``sure``: hardly anything else is left."""

    sure: bool
    repair: list[str]
    proof: list[str]
    cautions: list[str]


class DiagnosisForm(Form):
    """A diagnosis; either ``next`` or ``ending`` is there."""

    observations: list[ObservationForm]
    groups: list[SuspectGroupForm]
    next: AdviceForm | None
    ending: EndingForm | None
    remarks: list[str]
    left_bits: float


class ChartWayForm(Form):
    """A way out of a step of a chart."""

    words: str
    probability: Share
    then: ChartStepForm


class ChartStepForm(Form):
    """A step of a chart; at an end there is no reading, and the repair is told."""

    step: Count
    probability: Share
    reading: str | None
    ask: str | None
    repair: list[str]
    suspects: list[str]
    ways: list[ChartWayForm]


class TroubleshootFileForm(Form):
    """The diagnosis of one file; ``findings`` are mistakes of the drawing itself."""

    file: str
    problems: list[ProblemForm]
    findings: list[FindingForm]
    diagnosis: DiagnosisForm | None
    chart: ChartStepForm | None
    drawings: list[str]


class TroubleshootSummary(Form):
    """What the files come to together."""

    files: Count
    diagnoses: Count
    problems: Count
    sentence: str


class TroubleshootDocument(Form):
    """What ``wirecheck troubleshoot --as json`` prints."""

    version: Version = Field(alias="schema")
    files: list[TroubleshootFileForm]
    summary: TroubleshootSummary
