"""What can be typed at a place: kinds, terminals, names, attributes, the words of statements."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final, Literal, NamedTuple

from wirecheck.language.build import Built
from wirecheck.language.spelling import spell_name, spell_terminal
from wirecheck.language.statements import STATEMENT_WORDS
from wirecheck.model.diagram import key_of
from wirecheck.parts.library import kind, kind_names, lead_attributes

_NAME: Final = r'(?:"(?:[^"]|"")*"|[^\s:,."]+)'
_AFTER_IS: Final = re.compile(rf"^\s*(?:part|kind)\s+{_NAME}\s+is\s+\S*$", re.IGNORECASE)
_AFTER_DOT: Final = re.compile(rf"({_NAME})\.(?:{_NAME}\.\.)?\S*$")
_PART_ATTRIBUTES: Final = re.compile(
    rf"^\s*part\s+{_NAME}\s+is\s+({_NAME})\s*:(?:.*,)?[^,]*$", re.IGNORECASE
)
_LEAD_ATTRIBUTES: Final = re.compile(r"^\s*(?:wire|jumper)\s.*:[^:]*$", re.IGNORECASE)
_FIRST_WORD: Final = re.compile(r"^\s*\w*$")


class Choice(NamedTuple):
    """Something that can be typed.

    Attributes:
        text: as it is typed.
        what: the class of it.
        about: a few words on it; "" if none.
    """

    text: str
    what: Literal["kind", "terminal", "part", "attribute", "statement"]
    about: str = ""


def completions(built: Built, line: str) -> list[Choice]:
    """What can follow the beginning of a line.

    Args:
        built: the text as it is read now, however unfinished.
        line: up to the place where something is typed.
    """
    if _AFTER_IS.match(line):
        return list(_kinds(built))
    if of_part := _PART_ATTRIBUTES.match(line):
        return list(_attributes(built, of_part[1]))
    if dotted := _AFTER_DOT.search(line):
        return list(_terminals(built, dotted[1]))
    if _LEAD_ATTRIBUTES.match(line):
        return [Choice(name, "attribute", spec.about) for name, spec in lead_attributes().items()]
    if _FIRST_WORD.match(line):
        return [Choice(word, "statement") for word in STATEMENT_WORDS]
    return list(_names(built))


def _kinds(built: Built) -> Iterator[Choice]:
    yield from (Choice(name, "kind", kind(name).title) for name in kind_names())
    yield from (Choice(spell_name(each.name), "kind") for each in built.diagram.kinds.values())


def _terminals(built: Built, typed: str) -> Iterator[Choice]:
    part = built.diagram.parts.get(key_of(_bare(typed)))
    for name, spec in part.structure.terminals.items() if part else ():
        if part is not None and not spec.inner:
            label = part.labels.get(name)
            shown = spell_terminal(label.text if label else name)
            yield Choice(shown, "terminal", spec.about)


def _attributes(built: Built, typed: str) -> Iterator[Choice]:
    name = key_of(_bare(typed))
    of_kind = built.diagram.kinds.get(name)
    if of_kind is None and name in kind_names():
        of_kind = kind(name)
    for attribute, spec in of_kind.attributes.items() if of_kind else ():
        yield Choice(attribute, "attribute", spec.about)
        yield from (Choice(f"{attribute} {value}", "attribute") for value in spec.choices)


def _names(built: Built) -> Iterator[Choice]:
    for part in built.diagram.parts.values():
        yield Choice(spell_name(part.name), "part", part.kind.title)
    for splice in built.diagram.splices.values():
        yield Choice(spell_name(splice.name), "part", "splice")
    yield Choice("earth", "part", "the unit's earth")


def _bare(typed: str) -> str:
    return typed[1:-1].replace('""', '"') if typed.startswith('"') else typed
