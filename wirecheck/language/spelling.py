"""How names are written so that they read back as the same name: quotes only where needed."""

from __future__ import annotations

import re
from typing import Final

from wirecheck.language.statements import STATEMENT_WORDS
from wirecheck.model.diagram import EARTH, OPEN_END, UNKNOWN_END, Diagram, Terminal

#: The characters of a name outside quotes: those of NAME in the grammar (a test compares them).
NAME_CHARACTERS: Final = (
    r"\w\-\/\u0300-\u036F\u0483-\u0487\u0591-\u05C7\u0610-\u061A\u064B-\u065F\u0670\u06D6-\u06ED"
    r"\u0711-\u074A\u07A6-\u07B0\u0900-\u0DFF\u0E31-\u0E4E\u0EB1-\u0ECD\u0F18-\u0FC6"
    r"\u102B-\u109D\u17B4-\u17DD\u1DC0-\u1DFF\u3099\u309A"
)
_PLAIN_NAME = re.compile(f"[{NAME_CHARACTERS}]+")
_PLAIN_TERMINAL = re.compile(rf"[{NAME_CHARACTERS}]+(?:\.[{NAME_CHARACTERS}]+)*")
_PLAIN_WORD = re.compile(r"[^\s,:()\"'`#\u00B4\u2018\u2019\u201A\u201B\u2032\u2033]+")
#: Names that could be taken for a keyword at the end or at the beginning of a line.
_LOOK_LIKE_KEYWORDS: Final = frozenset({"to", *STATEMENT_WORDS})


def quoted(text: str) -> str:
    """The text in double quotes, a quote inside doubled."""
    doubled = text.replace('"', '""')
    return f'"{doubled}"'


def spell_name(name: str) -> str:
    """A name that stands alone: a part, a splice, a kind."""
    if _PLAIN_NAME.fullmatch(name) and name.lower() not in _LOOK_LIKE_KEYWORDS:
        return name
    return quoted(name)


def spell_terminal(name: str) -> str:
    """The name of a terminal, or its label, as it stands behind the part's name and a dot."""
    return name if _PLAIN_TERMINAL.fullmatch(name) else quoted(name)


def spell_first(name: str) -> str:
    """The name of a terminal where no part's name stands before it."""
    return quoted(name) if name.lower() in _LOOK_LIKE_KEYWORDS else spell_terminal(name)


def spell_word(word: str, *, first: bool) -> str:
    """A word of an attribute; the ``first`` one may come to stand at the beginning of a line."""
    keyword = word.lower() in _LOOK_LIKE_KEYWORDS if first else word.lower() == "to"
    return word if _PLAIN_WORD.fullmatch(word) and not keyword else quoted(word)


def spell(diagram: Diagram, terminal: Terminal) -> str:
    """A terminal as a lead's end is typed: by the label printed there, if there is one."""
    if terminal == EARTH:
        return "earth"
    if terminal.part == OPEN_END:
        return "open"
    if terminal.part == UNKNOWN_END:
        return "unknown"
    splice = diagram.splices.get(terminal.part)
    if splice is not None:
        return spell_name(splice.name)
    return f"{spell_name(diagram.parts[terminal.part].name)}.{spell_in_part(diagram, terminal)}"


def spell_in_part(diagram: Diagram, terminal: Terminal) -> str:
    """A part's terminal as it is typed where the part is named already."""
    label = diagram.parts[terminal.part].labels.get(terminal.name)
    return spell_terminal(label.text if label else terminal.name)
