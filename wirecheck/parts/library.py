"""Reading the part library: one file for each kind, read when a diagram names it."""

from __future__ import annotations

import tomllib
from collections.abc import Mapping
from functools import cache
from typing import TypeVar

from pydantic import BaseModel, ConfigDict, ValidationError

from wirecheck.model.diagram import key_of
from wirecheck.model.kind import AttributeSpec, Kind
from wirecheck.resources import part_kind_names, part_kind_text, shared_text


class LibraryError(ValueError):
    """A file of the library does not say what it should: the installation is at fault."""


Specs = Mapping[str, AttributeSpec]


class _Leads(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True)

    leads: dict[str, AttributeSpec]
    splices: dict[str, AttributeSpec]
    cables: dict[str, AttributeSpec]


_Model = TypeVar("_Model", bound=BaseModel)


def kind_names() -> tuple[str, ...]:
    """The kinds of the library, in alphabetical order."""
    return part_kind_names()


def kind(name: str) -> Kind:
    """The kind of that name, in any case; the same object each time.

    Raises:
        KeyError: the library has no such kind.
        LibraryError: its file is at fault; the message names file and field.
    """
    return _kind(key_of(name))


def lead_attributes() -> Specs:
    """The attributes of leads, by name; a `LibraryError` names what is wrong with their file."""
    return _leads().leads


def splice_attributes() -> Specs:
    """The attributes of splices, likewise."""
    return _leads().splices


def cable_attributes() -> Specs:
    """The attributes of cables, likewise."""
    return _leads().cables


@cache
def _leads() -> _Leads:
    return read(_Leads, shared_text("leads.toml"), "leads.toml")


@cache
def _kind(key: str) -> Kind:
    file = f"parts/{key}.toml"
    found = read(Kind, part_kind_text(key), file)
    if found.name != key:
        raise LibraryError(f"{file}: name: it says {found.name}, the file is {key}.toml")
    return found


def read(model: type[_Model], text: str, file: str) -> _Model:
    """Validate the text of a library file.

    Raises:
        LibraryError: it is not TOML, or a field is wrong or missing.
    """
    try:
        return model.model_validate(tomllib.loads(text))
    except tomllib.TOMLDecodeError as error:
        raise LibraryError(f"{file}: {error}") from None
    except ValidationError as error:
        faults = (
            f"{file}: {'.'.join(map(str, fault['loc']))}: {fault['msg']}"
            for fault in error.errors()
        )
        raise LibraryError("\n".join(faults)) from None
