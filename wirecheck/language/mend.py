"""What a statement that the grammar refuses still says.

An attribute with a slip in it is left out and the rest is read; of a lead that cannot be read at
all at least the places it names are known, so that nobody calls them empty.
"""

from __future__ import annotations

import re
from typing import Final, NamedTuple, TypeVar

from lark import Token, UnexpectedInput

from wirecheck.language.parser import parse_statement
from wirecheck.language.spelling import NAME_CHARACTERS
from wirecheck.language.statements import LostLeads, Name, Place, Statement
from wirecheck.language.syntax_faults import SyntaxFault, fault_of

#: So many slips are looked for in one statement.
_MOST_FAULTS: Final = 20
_WITH_ATTRIBUTES: Final = re.compile(
    r'(?:part|kind|wire|jumper|splice|cable|set)\s(?:[^":]++|"(?:[^"]|"")*+")*+:', re.IGNORECASE
)
_NAME: Final = rf'(?:[{NAME_CHARACTERS}]+|"(?:[^"\n]|"")*")'
_PLACE: Final = re.compile(rf"({_NAME})(?:\s*\.\s*({_NAME}(?:\.{_NAME})*))?(?:\.\.({_NAME}))?")
_LEADS: Final = re.compile(r"(wire|jumper|plug)\s", re.IGNORECASE)

_T = TypeVar("_T")


class Mended(NamedTuple):
    """What could be read of a statement, None if nothing, and everything that is wrong with it."""

    statement: Statement | None
    faults: list[SyntaxFault]


def mend(text: str) -> Mended:
    """Read a statement as far as it can be read; places count from its beginning."""
    faults: list[SyntaxFault] = []
    mended = text
    while len(faults) < _MOST_FAULTS:
        try:
            return Mended(parse_statement(mended, 0, len(mended)), faults)
        except UnexpectedInput as error:
            fault = fault_of(error, mended)
        faults.append(fault)
        damaged = _attribute_at(mended, fault.place)
        if damaged is None:
            break
        start, end = damaged
        mended = mended[:start] + " " * (end - start) + mended[end:]
    return Mended(_lost_leads(text), faults)


def _attribute_at(text: str, place: int) -> tuple[int, int] | None:
    """Where the attribute with the fault stands, one comma (or the only colon) with it."""
    head = _WITH_ATTRIBUTES.match(text)
    if head is None or place < head.end():
        return None
    if text[place : place + 1] == ",":
        return place, place + 1
    comma = _last_comma(text, head.end(), place)
    behind = text.find(",", place)
    never_closed = text[place : place + 1] == '"' and not text[place - 1].isdigit()
    if behind < 0 or never_closed:
        return (head.end() - 1 if comma < 0 else comma), len(text)
    return (head.end(), behind + 1) if comma < 0 else (comma, behind)


def _last_comma(text: str, start: int, end: int) -> int:
    """The last comma outside quotes; -1 if there is none."""
    plain = re.sub(r'"(?:[^"]|"")*"', lambda quoted: "x" * len(quoted[0]), text[start:end])
    found = plain.rfind(",")
    return -1 if found < 0 else start + found


def _lost_leads(text: str) -> LostLeads | None:
    """The places that a lead's statement names, whatever is wrong with it."""
    begins = _LEADS.match(text)
    if begins is None:
        return None
    colon = text.find(":", begins.end())
    wires = begins[1].lower() != "plug"
    end = colon if wires and colon >= 0 else len(text)
    places = [_place(match) for match in _PLACE.finditer(text, begins.end(), end)]
    return LostLeads(begins[1].lower(), places)


def _place(match: re.Match[str]) -> Place:
    name, terminal, through = (
        None if match[group] is None else Name(_unquoted(match[group]), *match.span(group))
        for group in (1, 2, 3)
    )
    return Place(name or Name("", 0, 0), terminal, through)


def _unquoted(typed: str) -> str:
    return re.sub(r'"((?:[^"]|"")*)"', lambda quoted: quoted[1].replace('""', '"'), typed)


def shifted(node: _T, by: int) -> _T:
    """A statement read from its own text, its places counted in the whole of it."""
    moved: object = node
    if isinstance(node, Name):
        moved = Name(node.text, node.start + by, node.end + by)
    elif isinstance(node, Token):
        moved = Token(node.type, str(node), (node.start_pos or 0) + by)
        moved.end_pos = (node.end_pos or 0) + by
    elif isinstance(node, list):
        moved = [shifted(each, by) for each in node]
    elif isinstance(node, tuple):
        moved = type(node)(*(shifted(each, by) for each in node))
    return moved  # type: ignore[return-value]  # it is of the same type
