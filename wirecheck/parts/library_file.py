"""From the text of a library file to what it states.

A file that is in order is built into plain dataclasses at once.  One that is not is handed to
pydantic, which says what is wrong with it; the tests have pydantic validate every file.
"""

from __future__ import annotations

import tomllib
from typing import Any, TypeVar

from wirecheck.model.kind import (
    AttributeSpec,
    BondSpec,
    GapSpec,
    Kind,
    LinkSpec,
    LoadSpec,
    NumberedSpec,
    SourceSpec,
    SwitchSpec,
    TerminalSpec,
    Wiring,
)

_Stated = TypeVar("_Stated")

_TABLES: dict[str, type] = {"terminals": TerminalSpec, "attributes": AttributeSpec}
_LISTS: dict[str, type] = {
    "links": LinkSpec,
    "switches": SwitchSpec,
    "loads": LoadSpec,
    "sources": SourceSpec,
    "bonds": BondSpec,
    "gaps": GapSpec,
}


class LibraryError(ValueError):
    """A file of the library does not say what it should: the installation is at fault."""


def kind_from(text: str, file: str) -> Kind:
    """What the file of a kind states.

    Raises:
        LibraryError: it is not TOML, or a field is missing or unknown; the message names file
            and field.
    """
    data = _toml(text, file)
    try:
        return _stated(Kind, {key: _field(key, value) for key, value in data.items()})
    except (TypeError, AttributeError):
        return validated(Kind, text, file)


def wiring_from(text: str, file: str) -> Wiring:
    """What the file on leads, splices and cables states; it raises what `kind_from` raises."""
    data = _toml(text, file)
    try:
        return Wiring(**{key: _table(AttributeSpec, value) for key, value in data.items()})
    except (TypeError, AttributeError):
        return validated(Wiring, text, file)


def validated(model: type[_Stated], text: str, file: str) -> _Stated:
    """What a file states, every type and word of it checked.

    Raises:
        LibraryError: something is wrong; the message names file and field.
    """
    from pydantic import TypeAdapter, ValidationError  # slow to start, and seldom needed

    try:
        return TypeAdapter(model).validate_python(_toml(text, file))
    except ValidationError as error:
        faults = (
            f"{file}: {'.'.join(map(str, fault['loc']))}: {fault['msg']}"
            for fault in error.errors()
        )
        raise LibraryError("\n".join(faults)) from None


def _toml(text: str, file: str) -> dict[str, Any]:
    try:
        return tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        raise LibraryError(f"{file}: {error}") from None


def _field(key: str, value: Any) -> object:  # noqa: ANN401  # whatever TOML holds
    """One field of a kind, as the class of a kind has it."""
    if key in _TABLES:
        return _table(_TABLES[key], value)
    if key in _LISTS:
        return tuple(_stated(_LISTS[key], each) for each in value)
    return _stated(NumberedSpec, value) if key == "numbered" else value


def _table(model: type, table: dict[str, dict[str, Any]]) -> dict[str, Any]:
    return {name: _stated(model, each) for name, each in table.items()}


def _stated(model: type[_Stated], fields: dict[str, Any]) -> _Stated:
    return model(**{name: _frozen(value) for name, value in fields.items()})


def _frozen(value: object) -> object:
    """Lists as tuples, however deep."""
    if isinstance(value, list):
        return tuple(_frozen(each) for each in value)
    if isinstance(value, dict):
        return {key: _frozen(each) for key, each in value.items()}
    return value
