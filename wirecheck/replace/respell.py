"""The terminals of a device named anew wherever a text names them.

Leads, claims, observations and what variants take away all name terminals. Each name gives way to
that of the counterpart on the new device; the rest of the text stays as it is.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import NamedTuple

from wirecheck.language import statements as st
from wirecheck.language.read import Parsed, read_text
from wirecheck.language.spelling import spell_first, spell_name, spell_terminal
from wirecheck.model.diagram import Part, key_of
from wirecheck.model.finding import Edit
from wirecheck.model.text import SourceFile, Span
from wirecheck.parts.structure import numbered_terminal


class Respelled(NamedTuple):
    """What naming the terminals anew comes to.

    Attributes:
        edits: of the text.
        lost: statements that name a terminal which the new device has not.
    """

    edits: tuple[Edit, ...]
    lost: tuple[Span, ...]


class _NoCounterpartError(Exception):
    """The new device has no such terminal."""


class Renaming(NamedTuple):
    """An old part, the part that takes its name, and the counterpart of each of its terminals."""

    old: Part
    new: Part
    terminals: Mapping[str, str | None]

    def shown(self, name: str) -> str:
        """What is to be typed for the counterpart of one of the old part's terminals."""
        new = self.terminals.get(name)
        if new is None:
            raise _NoCounterpartError(name)
        label = self.new.labels.get(new)
        return label.text if label else new

    def anew(self, text: str) -> str:
        """What is to be typed for a terminal that was typed so; the same where that still does.

        A device of another kind may take the old one's name for another spelling of its own
        terminal, such as hood for the frame of a burner; what was typed as it stands on the old
        device is then typed as it stands on the new one.
        """
        own = meant(self.old, text)
        if own is None:
            return text
        if (self.terminals.get(own) or "") != meant(self.new, text):
            return self.shown(own)
        if self.old.kind is self.new.kind or key_of(text) != key_of(own):
            return text
        return text if key_of(text) == key_of(self.shown(own)) else self.shown(own)


def meant(part: Part, text: str) -> str | None:
    """The terminal of a part that a text means there, by label or name."""
    key = key_of(text)
    for name, label in part.labels.items():
        if key_of(label.text) == key:
            return name
    own = part.structure.lookup.get(key)
    own = own or numbered_terminal(part.structure, part.kind, part.values, text)
    return None if own in part.labels else own


def respelled(source: SourceFile, renaming: Renaming) -> Respelled:
    """Name the terminals of a device anew in a text."""
    edits: list[Edit] = []
    lost: list[Span] = []
    reading = read_text(source.text, source.name)
    for parsed in reading.statements:
        if parsed.source is not reading.source:
            continue
        try:
            pieces = [
                Edit("set", "", Span(source, start, end), text)
                for start, end, text in _pieces(parsed, renaming)
                if source.text[start:end] != text
            ]
        except _NoCounterpartError:
            lost.append(Span(source, parsed.start, parsed.end))
        else:
            edits += pieces
    return Respelled(tuple(edits), tuple(lost))


_Piece = tuple[int, int, str]


def _pieces(parsed: Parsed, renaming: Renaming) -> Iterator[_Piece]:
    statement = parsed.statement
    place = _place(renaming)
    match statement:
        case st.WireStatement() | st.JumperStatement():
            for number, stop in enumerate(statement.stops):
                last = len(statement.stops) - 1
                yield from _stop(stop.place, renaming, is_first=not number, is_last=number == last)
        case st.PlugStatement():
            yield from _plug(statement, renaming)
        case st.RemoveLeadStatement():
            last = len(statement.places) - 1
            for number, named in enumerate(statement.places):
                yield from _stop(named, renaming, is_first=not number, is_last=number == last)
        case st.ExpectStatement() | st.ObserveStatement():
            for predicate in statement.predicates:
                for named in predicate.places if predicate.about != "state" else ():
                    yield from place(named)


def _place(renaming: Renaming) -> Callable[[st.Place], Iterator[_Piece]]:
    def pieces(place: st.Place) -> Iterator[_Piece]:
        if key_of(place.name.text) == renaming.old.key:
            for name in filter(None, (place.terminal, place.through)):
                yield name.start, name.end, spell_terminal(renaming.anew(name.text))

    return pieces


def _stop(
    place: st.Place, renaming: Renaming, *, is_first: bool, is_last: bool
) -> Iterator[_Piece]:
    """A stop of a lead; a part passed through or named alone may need its terminals named."""
    if place.terminal is not None or key_of(place.name.text) != renaming.old.key:
        yield from _place(renaming)(place)
        return
    through, new_through = renaming.old.structure.through, renaming.new.structure.through
    if through is None:
        return
    one, other = (renaming.terminals.get(name) for name in through)
    if new_through == (one, other):
        return
    name = spell_name(renaming.old.name)
    first, second = (spell_terminal(renaming.shown(each)) for each in through)
    if is_first or is_last:
        yield place.end, place.end, f".{second if is_first else first}"
    else:
        yield place.start, place.end, f"{name}.{first}..{second}"


def _plug(statement: st.PlugStatement, renaming: Renaming) -> Iterator[_Piece]:
    """A harness: each pin names the terminal of one part, and of the other where it differs."""
    ours = [key_of(name.text) == renaming.old.key for name in (statement.part, statement.to)]
    for pin in statement.pins if any(ours) else ():
        here, there = pin.terminal.text, (pin.to or pin.terminal).text
        if ours[0]:
            here = renaming.anew(here)
        if ours[1]:
            there = renaming.anew(there)
        same = key_of(here) == key_of(there)
        text = spell_first(here) if same else f"{spell_first(here)} to {spell_terminal(there)}"
        if (here, there) != (pin.terminal.text, (pin.to or pin.terminal).text):
            yield pin.terminal.start, (pin.to or pin.terminal).end, text
