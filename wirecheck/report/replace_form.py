"""The JSON form of ``wirecheck replace``."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from wirecheck.report.forms import FindingForm, Form, ProblemForm, Version


class DeviceForm(Form):
    """A device that goes in or comes out; ``stated`` is how the new text states it."""

    part: str
    happens: Literal["replaced", "fitted", "taken-out"]
    old: str | None
    new: str | None
    stated: str | None


class CrossingForm(Form):
    """One end of a lead: what it comes off and where it goes, null if it is left over.

    ``wrong`` says that it carries a mistake of the old wiring over; null if it does not.
    """

    wire: str
    colour: str
    other_end: str
    off: str
    to: str | None
    wrong: str | None


class NewLeadForm(Form):
    """A lead to run: size and colour as suggested, and what it is for."""

    a: str
    b: str
    lead: str
    why: str


class StateForm(Form):
    """The unit as found, or then: what each control does, and what a check and a run find."""

    does: list[str]
    findings: list[FindingForm]
    trouble: list[str]


class VariantForm(Form):
    """A variant with the new devices: what a check and a run find, and problems of its text."""

    variant: str
    findings: list[FindingForm]
    trouble: list[str]
    problems: list[str]


class ReplaceDocument(Form):
    """What ``wirecheck replace --as json`` prints; without a result most of it is empty."""

    version: Version = Field(alias="schema")
    file: str
    variant: str | None
    title: str
    problems: list[ProblemForm]
    refused: list[str]
    cautions: list[str]
    old_mistakes: str | None
    devices: list[DeviceForm]
    crossings: list[CrossingForm]
    left_over: list[str]
    to_run: list[NewLeadForm]
    tasks: list[str]
    gas_side: list[str]
    old_comments: list[str]
    set_aside: list[str]
    before: StateForm | None
    after: StateForm | None
    refuted: list[str]
    variants: list[VariantForm]
    text: str | None
    text_problems: list[str]
    written: str | None
    drawings: list[str]
    sentence: str
