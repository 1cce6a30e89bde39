"""The JSON forms of ``wirecheck schema`` and of a baseline."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from wirecheck.report.forms import Form, Version


class PublishedForm(Form):
    """A schema by its name, and what it is of."""

    name: str
    about: str


class SchemaDocument(Form):
    """What ``wirecheck schema --as json`` prints."""

    version: Version = Field(alias="schema")
    schemas: list[PublishedForm]


class KnownForm(Form):
    """A finding that is known: by its file from the baseline's folder, its rule, and its place."""

    file: str
    rule: str
    fault: str
    at: list[str]
    text: str
    count: Annotated[int, Field(ge=1)]


class BaselineDocument(Form):
    """What ``wirecheck check --write-baseline`` writes."""

    version: Version = Field(alias="schema")
    known: list[KnownForm]
