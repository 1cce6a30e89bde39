"""The statements of the language as the grammar reads them, before names are resolved.

One class a statement, named as its rule in ``grammar/wiring.lark``.  Positions are character
offsets into the source the statement stands in.
"""

from __future__ import annotations

from typing import NamedTuple, cast

from lark import Token


class Name(NamedTuple):
    """A name or a quoted text, quotes taken off."""

    text: str
    start: int
    end: int


class Place(NamedTuple):
    """``part``, ``part.terminal`` or ``part.terminal..terminal``."""

    name: Name
    terminal: Name | None
    through: Name | None

    @property
    def start(self) -> int:
        """Offset of the first character."""
        return self.name.start

    @property
    def end(self) -> int:
        """Offset behind the last character."""
        return (self.through or self.terminal or self.name).end


#: One word of an attribute as it stands; a quoted one is a name.
OneWord = Token | Name
#: One attribute.
Words = list[OneWord]


def start_of(word: OneWord) -> int:
    """Offset of the first character of a word."""
    return word.start if isinstance(word, Name) else cast(int, word.start_pos)


def end_of(word: OneWord) -> int:
    """Offset behind the last character of a word."""
    return word.end if isinstance(word, Name) else cast(int, word.end_pos)


class Stop(NamedTuple):
    """A place on a lead's way, with the attributes of the lead that arrives there."""

    place: Place
    own: list[Words] | None


class DiagramStatement(NamedTuple):
    """``diagram "title"``."""

    title: Name


class PartStatement(NamedTuple):
    """``part NAME is KIND: attributes``."""

    name: Name
    kind: Name
    attributes: list[Words]


class KindStatement(NamedTuple):
    """``kind NAME is KIND: attributes``."""

    name: Name
    kind: Name
    attributes: list[Words]


class Labelling(NamedTuple):
    """``TERMINAL as "label"``."""

    terminal: Name
    label: Name


class LabelsStatement(NamedTuple):
    """``labels NAME: TERMINAL as "label", …``."""

    name: Name
    labels: list[Labelling]


class SpliceStatement(NamedTuple):
    """``splice NAME: attributes``."""

    name: Name
    attributes: list[Words]


class CableStatement(NamedTuple):
    """``cable NAME: 18/5, 40 ft``."""

    name: Name
    attributes: list[Words]


class IncludeStatement(NamedTuple):
    """``include "file"``."""

    path: Name


class NoteStatement(NamedTuple):
    """``note "text"``."""

    text: Name


class WireStatement(NamedTuple):
    """``wire END to END …``."""

    stops: list[Stop]
    attributes: list[Words]


class JumperStatement(NamedTuple):
    """``jumper END to END …``."""

    stops: list[Stop]
    attributes: list[Words]


class Pin(NamedTuple):
    """One conductor of a harness; ``to`` is None where both ends bear the same name."""

    terminal: Name
    to: Name | None


class PlugStatement(NamedTuple):
    """``plug PART to PART: TERMINAL to TERMINAL, …``."""

    part: Name
    to: Name
    pins: list[Pin]


class VariantStatement(NamedTuple):
    """``variant NAME``."""

    name: Name


class EndStatement(NamedTuple):
    """``end``."""


class RemoveLeadStatement(NamedTuple):
    """``remove wire END to END …`` or ``remove jumper …``."""

    role: str
    places: list[Place]


class RemovePartStatement(NamedTuple):
    """``remove part NAME``."""

    name: Name


class SetStatement(NamedTuple):
    """``set NAME: attributes``."""

    name: Name
    attributes: list[Words]


class Bound(NamedTuple):
    """The amount of a claim: its sense, and one quantity or two."""

    sense: str
    quantities: list[Name]


class Predicate(NamedTuple):
    """One claim: what it is about, the places named, and the amount or the state claimed."""

    about: str
    places: list[Place]
    amount: Bound | None
    state: Name | None


class Condition(NamedTuple):
    """``A open``."""

    place: Place
    state: Name


class ExpectStatement(NamedTuple):
    """``expect …``."""

    predicates: list[Predicate]
    conditions: list[Condition]
    phase: Name | None


class ObserveStatement(NamedTuple):
    """``observe …``."""

    predicates: list[Predicate]
    conditions: list[Condition]
    phase: Name | None


class LostLeads(NamedTuple):
    """A wire, jumper or plug that the grammar refuses: the places it names are known all the same.

    ``role`` is its first word.
    """

    role: str
    places: list[Place]


class FileEnd(NamedTuple):
    """The end of a file: no statement of the grammar, but a variant cannot go on behind it."""


Statement = (
    DiagramStatement
    | PartStatement
    | KindStatement
    | LabelsStatement
    | SpliceStatement
    | CableStatement
    | IncludeStatement
    | NoteStatement
    | WireStatement
    | JumperStatement
    | PlugStatement
    | VariantStatement
    | EndStatement
    | RemoveLeadStatement
    | RemovePartStatement
    | SetStatement
    | ExpectStatement
    | ObserveStatement
    | LostLeads
    | FileEnd
)

#: The word each statement begins with.
STATEMENT_WORDS = (
    "diagram", "part", "kind", "labels", "wire", "jumper", "plug", "cable", "splice", "include",
    "variant", "end", "remove", "set", "expect", "observe", "note",
)  # fmt: skip
