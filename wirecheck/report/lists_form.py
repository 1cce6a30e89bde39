"""The JSON form of ``wirecheck lists``."""

from __future__ import annotations

from typing import Literal

from pydantic import Field

from wirecheck.report.forms import Count, FindingForm, Form, Position, ProblemForm, Version


class PlaceForm(Form):
    """Where a lead lands; ``label`` is what is printed there, if that is something else."""

    part: str
    terminal: str
    label: str
    shown: str


class RunForm(Form):
    """Leads that share one length, by their places in the list."""

    first: Position
    last: Position
    length: str


class WireForm(Form):
    """One lead under its wire number; ``run`` is null if its length is its own, or not known."""

    place: Position
    number: str
    start: PlaceForm
    end: PlaceForm
    kind: Literal["wire", "jumper", "harness"]
    colour: str
    size: str
    length: str
    run: RunForm | None
    cable: str
    voltage: Literal["line", "ignition", ""]
    remarks: list[str]


class ListedPartForm(Form):
    """A device, a splice or a cable."""

    place: Position
    name: str
    what: str
    kind: str
    ratings: list[str]
    taken: list[str]
    leads: Count


class WireNeedForm(Form):
    """How much wire of one sort it takes; ``unstated`` leads have no length."""

    sort: str
    leads: Count
    length: str
    unstated: Count


class LandingForm(Form):
    """A lead on a terminal, by its place in the wire list, and where its other end is."""

    wire: Position
    other: PlaceForm
    colour: str


class ListedTerminalForm(Form):
    """A terminal; ``inside`` are others of the device that are one conductor with it."""

    at: PlaceForm
    about: str
    number: str
    landings: list[LandingForm]
    inside: list[str]


class ListsForm(Form):
    """The lists of a diagram; one that was not asked for is null."""

    title: str
    findings: list[FindingForm]
    wires: list[WireForm] | None
    parts: list[ListedPartForm] | None
    wire_needs: list[WireNeedForm] | None
    terminals: list[ListedTerminalForm] | None


class ListsFileForm(Form):
    """The lists of one file, null where it could not be read, and the pages drawn of them."""

    file: str
    variant: str | None
    problems: list[ProblemForm]
    lists: ListsForm | None
    pictures: list[str]


class ListsSummary(Form):
    """What the files come to together."""

    files: Count
    leads: Count
    parts: Count
    terminals: Count
    problems: Count
    sentence: str


class ListsDocument(Form):
    """What ``wirecheck lists --as json`` prints."""

    version: Version = Field(alias="schema")
    files: list[ListsFileForm]
    summary: ListsSummary
