"""Where a text names its parts, splices and cables: each declaration and each use."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.language import statements as st
from wirecheck.language.build import Built
from wirecheck.language.read import Parsed
from wirecheck.model.diagram import key_of
from wirecheck.model.text import SourceFile, Span


class Mention(NamedTuple):
    """A name in the text.

    Attributes:
        key: of the part, splice or cable, as names are compared.
        span: the name itself, with its quotes if it has them.
        declares: it is declared here.
        terminal: the name of the terminal behind it, and its place; None where there is none.
    """

    key: str
    span: Span
    declares: bool = False
    terminal: tuple[str, Span] | None = None


def mentions(built: Built) -> list[Mention]:
    """Every name of a part, splice or cable, in the order of the text."""
    found = [each for parsed in built.reading.statements for each in _of(parsed)]
    order = {source: number for number, source in enumerate(built.reading.sources)}
    return sorted(found, key=lambda each: (order[each.span.source], each.span.start))


def mention_at(built: Built, source: SourceFile, offset: int) -> Mention | None:
    """The name that stands at an offset, or ends there; its terminal counts as part of it."""
    for each in mentions(built):
        end = each.terminal[1].end if each.terminal else each.span.end
        if each.span.source is source and each.span.start <= offset <= end:
            return each
    return None


def _of(parsed: Parsed) -> Iterator[Mention]:
    """The names of one statement."""
    match parsed.statement:
        case st.PartStatement(name) | st.SpliceStatement(name) | st.CableStatement(name):
            yield _mention(parsed, name, declares=True)
        case st.LabelsStatement(name) | st.RemovePartStatement(name) | st.SetStatement(name):
            yield _mention(parsed, name)
        case st.PlugStatement(part, to):
            yield from (_mention(parsed, part), _mention(parsed, to))
        case st.KindStatement():
            return
    yield from (_place(parsed, place) for place in _places(parsed.statement))
    yield from (_mention(parsed, name) for name in _cables(parsed.statement))


def _places(statement: st.Statement) -> Iterator[st.Place]:
    match statement:
        case st.WireStatement(stops) | st.JumperStatement(stops):
            yield from (stop.place for stop in stops)
        case st.RemoveLeadStatement(_, places) | st.LostLeads(_, places):
            yield from places
        case st.ExpectStatement(predicates, conditions) | st.ObserveStatement(
            predicates, conditions
        ):
            yield from (place for predicate in predicates for place in predicate.places)
            yield from (condition.place for condition in conditions)


def _cables(statement: st.Statement) -> Iterator[st.Name]:
    """The cables that leads run in: the word behind ``in``."""
    if not isinstance(statement, st.WireStatement | st.JumperStatement):
        return
    own = (words for stop in statement.stops for words in stop.own or [])
    for words in (*statement.attributes, *own):
        if len(words) == 2 and _text(words[0]).lower() == "in":
            yield st.Name(_text(words[1]), st.start_of(words[1]), st.end_of(words[1]))


def _text(word: st.OneWord) -> str:
    return word.text if isinstance(word, st.Name) else str(word)


def _place(parsed: Parsed, place: st.Place) -> Mention:
    terminal = place.terminal
    named = (terminal.text, parsed.at(terminal)) if terminal else None
    return _mention(parsed, place.name)._replace(terminal=named)


def _mention(parsed: Parsed, name: st.Name, *, declares: bool = False) -> Mention:
    return Mention(key_of(name.text), parsed.at(name), declares)
