"""The published JSON Schemas: of what each command prints as JSON, and of a baseline."""

from __future__ import annotations

import json
from collections.abc import Iterator
from functools import cache
from typing import Any, Final

from wirecheck.report.page import Page
from wirecheck.resources import shared_file, shared_text

#: The version of this form; it changes when a key goes or changes its meaning.
SCHEMA: Final = 1


@cache
def published_names() -> tuple[str, ...]:
    """List what has a schema, in alphabetical order."""
    return tuple(sorted(file.stem for file in shared_file("schemas").glob("*.json")))


def published(name: str) -> dict[str, Any]:
    """Return a schema (draft 2020-12) by its name.

    Raises:
        KeyError: there is none of that name.
    """
    if name not in published_names():
        raise KeyError(name)
    schema: dict[str, Any] = json.loads(shared_text(f"schemas/{name}.json"))
    return schema


def about(name: str) -> str:
    """What a schema is of, in a line of plain text."""
    return str(published(name)["description"]).replace("``", "")


def schemas_text(page: Page) -> Iterator[str]:
    """Write what there are schemas of."""
    for name in published_names():
        yield from page.item(f"{name}: {about(name)}", "")


def schemas_json() -> dict[str, Any]:
    """Return what there are schemas of."""
    return {
        "schema": SCHEMA,
        "schemas": [{"name": name, "about": about(name)} for name in published_names()],
    }


def all_schemas() -> dict[str, Any]:
    """Return every schema by its name."""
    return {name: published(name) for name in published_names()}
