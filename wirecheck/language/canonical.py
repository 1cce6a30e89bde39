"""The one way in which each statement is written.

A statement becomes pieces, one up to each ``,`` and each ``to``: behind those it may go on in the
next line, and only there can a comment stand inside it.
"""

from __future__ import annotations

from collections.abc import Sequence
from functools import singledispatch
from typing import NamedTuple

from wirecheck.language import statements as st
from wirecheck.language.canonical_words import Specs, amount_text, attribute_text
from wirecheck.language.known_kinds import KnownKinds
from wirecheck.language.spelling import quoted, spell_first, spell_name, spell_terminal
from wirecheck.language.statements import Name, Place, Statement, Words, end_of
from wirecheck.parts.library import cable_attributes, lead_attributes, splice_attributes

#: Names that would begin an amount or a continuity where a claim begins.
_BEGIN_CLAIMS = ("at", "between", "continuity", "no-continuity")


class Piece(NamedTuple):
    """Text up to a comma or a ``to``, and where what it says ended in the source."""

    text: str
    end: int


class Line:
    """Collects the words of a statement into pieces."""

    def __init__(self) -> None:
        """Start with nothing."""
        self._pieces: list[Piece] = []
        self._text = ""
        self._end = 0

    def word(self, text: str, end: int | None = None) -> None:
        """A word, with a blank before it unless a bracket has just opened."""
        blank = " " if self._text and self._text[-1] != "(" else ""
        self._text += blank + text
        self._end = self._end if end is None else end

    def name(self, name: Name) -> None:
        """A name."""
        self.word(spell_name(name.text), name.end)

    def quote(self, name: Name) -> None:
        """A text that always stands in quotes."""
        self.word(quoted(name.text), name.end)

    def place(self, place: Place) -> None:
        """A place, as far as it is named."""
        text = spell_name(place.name.text)
        if place.terminal is not None:
            text += f".{spell_terminal(place.terminal.text)}"
        if place.through is not None:
            text += f"..{spell_terminal(place.through.text)}"
        self.word(text, place.end)

    def glue(self, mark: str) -> None:
        """A mark behind the last word, with no blank."""
        self._text += mark

    def may_break(self) -> None:
        """The statement may go on in the next line here."""
        self._pieces.append(Piece(self._text, self._end))
        self._text = ""

    def pieces(self) -> list[Piece]:
        """All of it."""
        return [*self._pieces, Piece(self._text, self._end)]


@singledispatch
def write(statement: Statement, line: Line, known: KnownKinds) -> None:
    """Write a statement; ``known`` tells which of its attributes are quantities."""
    raise NotImplementedError(type(statement).__name__)


# ---- what is there -----------------------------------------------------------------------------


@write.register
def _(statement: st.DiagramStatement, line: Line, _known: KnownKinds) -> None:
    line.word("diagram")
    line.quote(statement.title)


@write.register
def _(statement: st.IncludeStatement, line: Line, _known: KnownKinds) -> None:
    line.word("include")
    line.quote(statement.path)


@write.register
def _(statement: st.NoteStatement, line: Line, _known: KnownKinds) -> None:
    line.word("note")
    line.quote(statement.text)


@write.register
def _(statement: st.PartStatement, line: Line, known: KnownKinds) -> None:
    line.word("part")
    _of_a_kind(statement, line, known)


@write.register
def _(statement: st.KindStatement, line: Line, known: KnownKinds) -> None:
    line.word("kind")
    _of_a_kind(statement, line, known)


def _of_a_kind(
    statement: st.PartStatement | st.KindStatement, line: Line, known: KnownKinds
) -> None:
    line.name(statement.name)
    line.word("is")
    line.name(statement.kind)
    _attributes(line, statement.attributes, known.of_kind(statement.kind.text))


@write.register
def _(statement: st.LabelsStatement, line: Line, _known: KnownKinds) -> None:
    line.word("labels")
    line.name(statement.name)
    line.glue(":")
    for number, labelling in enumerate(statement.labels):
        _comma(line, number)
        line.word(spell_first(labelling.terminal.text), labelling.terminal.end)
        line.word("as")
        line.quote(labelling.label)


@write.register
def _(statement: st.SpliceStatement, line: Line, _known: KnownKinds) -> None:
    line.word("splice")
    line.name(statement.name)
    _attributes(line, statement.attributes, splice_attributes())


@write.register
def _(statement: st.CableStatement, line: Line, _known: KnownKinds) -> None:
    line.word("cable")
    line.name(statement.name)
    _attributes(line, statement.attributes, cable_attributes())


# ---- what runs where ---------------------------------------------------------------------------


@write.register
def _(statement: st.WireStatement, line: Line, _known: KnownKinds) -> None:
    line.word("wire")
    _run(line, statement.stops)
    _attributes(line, statement.attributes, lead_attributes())


@write.register
def _(statement: st.JumperStatement, line: Line, _known: KnownKinds) -> None:
    line.word("jumper")
    _run(line, statement.stops)
    _attributes(line, statement.attributes, lead_attributes())


def _run(line: Line, stops: Sequence[st.Stop]) -> None:
    for number, stop in enumerate(stops):
        _to(line, number)
        line.place(stop.place)
        if stop.own:
            line.word("(")
            _listed(line, stop.own, lead_attributes())
            line.glue(")")


@write.register
def _(statement: st.PlugStatement, line: Line, _known: KnownKinds) -> None:
    line.word("plug")
    line.name(statement.part)
    _to(line, 1)
    line.name(statement.to)
    line.glue(":")
    for number, pin in enumerate(statement.pins):
        _comma(line, number)
        line.word(spell_first(pin.terminal.text), pin.terminal.end)
        if pin.to is not None:
            _to(line, 1)
            line.word(spell_first(pin.to.text), pin.to.end)


# ---- options -----------------------------------------------------------------------------------


@write.register
def _(statement: st.VariantStatement, line: Line, _known: KnownKinds) -> None:
    line.word("variant")
    line.name(statement.name)


@write.register
def _(_statement: st.EndStatement, line: Line, _known: KnownKinds) -> None:
    line.word("end")


@write.register
def _(statement: st.RemoveLeadStatement, line: Line, _known: KnownKinds) -> None:
    line.word("remove")
    line.word(statement.role)
    for number, place in enumerate(statement.places):
        _to(line, number)
        line.place(place)


@write.register
def _(statement: st.RemovePartStatement, line: Line, _known: KnownKinds) -> None:
    line.word("remove part")
    line.name(statement.name)


@write.register
def _(statement: st.SetStatement, line: Line, known: KnownKinds) -> None:
    line.word("set")
    line.name(statement.name)
    _attributes(line, statement.attributes, known.of_part(statement.name.text))


# ---- claims and observations -------------------------------------------------------------------


@write.register
def _(statement: st.ExpectStatement, line: Line, _known: KnownKinds) -> None:
    line.word("expect")
    _claims(line, statement)


@write.register
def _(statement: st.ObserveStatement, line: Line, _known: KnownKinds) -> None:
    line.word("observe")
    _claims(line, statement)


def _claims(line: Line, statement: st.ExpectStatement | st.ObserveStatement) -> None:
    for number, predicate in enumerate(statement.predicates):
        _comma(line, number)
        _predicate(line, predicate)
    for number, condition in enumerate(statement.conditions):
        line.word("and" if number else "when")
        line.place(condition.place)
        _lower(line, condition.state)
    if statement.phase is not None:
        line.word("during")
        _lower(line, statement.phase)


def _predicate(line: Line, predicate: st.Predicate) -> None:
    if predicate.about == "state":
        _subject(line, predicate.places[0])
        _lower(line, predicate.state)
        return
    if predicate.amount is not None:
        if predicate.amount.sense != "about":
            line.word(predicate.amount.sense)
        for number, quantity in enumerate(predicate.amount.quantities):
            if number:
                line.word("and")
            line.word(amount_text(quantity.text), quantity.end)
    else:
        _lower(line, predicate.state)
    line.word("through" if predicate.about == "through" else "across")
    for number, place in enumerate(predicate.places):
        if number:
            line.word("and")
        line.place(place)


def _subject(line: Line, place: Place) -> None:
    """A place where a claim begins: quoted if its name would begin an amount there."""
    name = place.name.text
    if name[:1].isdecimal() or name.lower() in _BEGIN_CLAIMS:
        terminal = "" if place.terminal is None else f".{spell_terminal(place.terminal.text)}"
        line.word(quoted(name) + terminal, place.end)
    else:
        line.place(place)


def _lower(line: Line, word: Name | None) -> None:
    if word is not None:
        line.word(word.text.lower(), word.end)


# ---- lists -------------------------------------------------------------------------------------


def _attributes(line: Line, attributes: list[Words], specs: Specs | None) -> None:
    if attributes:
        line.glue(":")
        _listed(line, attributes, specs)


def _listed(line: Line, attributes: list[Words], specs: Specs | None) -> None:
    for number, words in enumerate(attributes):
        _comma(line, number)
        line.word(attribute_text(words, specs), end_of(words[-1]))


def _comma(line: Line, number: int) -> None:
    if number:
        line.glue(",")
        line.may_break()


def _to(line: Line, number: int) -> None:
    if number:
        line.word("to")
        line.may_break()
