"""The JSON form of ``wirecheck compare``, as its schema is made from it."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from wirecheck.report.forms import Form, Place, ProblemForm, Version

CircuitWord = Literal[
    "supply",
    "call and safety chain",
    "burner ground",
    "ignition leads",
    "valve",
    "damper",
    "relays, zones and loads",
]


class LeadForm(Place):
    """A lead, and where it is typed."""

    lead: str


class PairForm(Form):
    """Two parts that are one and the same, and what says so."""

    first: str
    second: str
    by: Literal["name", "kind and wiring", "structure"]


class DifferenceForm(Form):
    """A difference in the wiring, under the circuit it lies in."""

    circuit: CircuitWord
    message: str
    first_leads: list[LeadForm]
    second_leads: list[LeadForm]


class SeenForm(Form):
    """A position of the switches, or a time in a call, and what each does then."""

    when: str
    first: str
    second: str


class CompareDocument(Form):
    """What ``wirecheck compare --as json`` prints; ``same`` is null if it could not compare."""

    version: Version = Field(alias="schema")
    first: str
    second: str
    problems: list[ProblemForm]
    same: bool | None
    how: Literal["structure", "function"] | None
    parts: list[PairForm]
    differences: list[DifferenceForm]
    seen: list[SeenForm]
    does_first: list[str]
    does_second: list[str]
    remarks: list[str]
    sentence: str
