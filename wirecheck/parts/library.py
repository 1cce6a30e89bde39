"""Reading the part library: one file for each kind, read when a diagram names it."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from wirecheck.model.diagram import key_of
from wirecheck.model.kind import AttributeSpec, Kind, Wiring
from wirecheck.parts.library_file import LibraryError, kind_from, wiring_from
from wirecheck.resources import part_kind_names, part_kind_text, shared_text

Specs = Mapping[str, AttributeSpec]


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
    return _wiring().leads


def splice_attributes() -> Specs:
    """The attributes of splices, likewise."""
    return _wiring().splices


def cable_attributes() -> Specs:
    """The attributes of cables, likewise."""
    return _wiring().cables


@cache
def _wiring() -> Wiring:
    return wiring_from(shared_text("leads.toml"), "leads.toml")


@cache
def _kind(key: str) -> Kind:
    file = f"parts/{key}.toml"
    found = kind_from(part_kind_text(key), file)
    if found.name != key:
        raise LibraryError(f"{file}: name: it says {found.name}, the file is {key}.toml")
    return found
