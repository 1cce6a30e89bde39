"""Parts, splices and cables, as a diagram declares them."""

from __future__ import annotations

import re

from wirecheck.language import statements as st
from wirecheck.language.kinds import find_kind
from wirecheck.language.read import Parsed
from wirecheck.language.scope import Scope
from wirecheck.language.statements import Name
from wirecheck.language.words import read_attributes
from wirecheck.model.diagram import EARTH, Cable, Part, Splice, key_of
from wirecheck.model.text import Span
from wirecheck.parts.defaults import values_of
from wirecheck.parts.library import cable_attributes, splice_attributes
from wirecheck.parts.structure import structure_of

_CONDUCTORS = re.compile(r"(\d{1,2})/([1-9]\d{0,2})", re.ASCII)


def add_part(scope: Scope, parsed: Parsed, statement: st.PartStatement) -> None:
    """Declare a part."""
    name, key = statement.name, key_of(statement.name.text)
    found = find_kind(scope, statement.kind, parsed)
    if not _is_free(scope, name, parsed):
        return
    if found is None:
        scope.spoiled.add(key)
        return
    typed = read_attributes(
        scope, parsed, statement.attributes, found.kind.attributes, f"a {found.kind.name}"
    )
    given = found.given | typed
    values = values_of(found.kind, given)
    scope.parts[key] = Part(
        name=name.text,
        key=key,
        kind=found.kind,
        given=given,
        values=values,
        structure=structure_of(found.kind, values),
        labels={},
        span=parsed.span,
        name_span=parsed.at(name),
        kind_span=parsed.at(statement.kind),
    )


def add_splice(scope: Scope, parsed: Parsed, statement: st.SpliceStatement) -> None:
    """Declare a splice."""
    if not _is_free(scope, statement.name, parsed):
        return
    given = read_attributes(scope, parsed, statement.attributes, splice_attributes(), "a splice")
    name = statement.name
    splice = Splice(name.text, key_of(name.text), given, parsed.span, parsed.at(name))
    scope.splices[splice.key] = splice


def add_cable(scope: Scope, parsed: Parsed, statement: st.CableStatement) -> None:
    """Declare a cable: its gauge and conductors (``18/5``) and what else is known of it."""
    name = statement.name
    key = key_of(name.text)
    if key in scope.cables:
        line = scope.cables[key].span.line
        scope.problem(f"a cable is called {name.text} already, in line {line}", parsed.at(name))
        return
    first, *rest = statement.attributes
    match = _CONDUCTORS.fullmatch(str(first[0])) if len(first) == 1 else None
    if match is None:
        _refuse_conductors(scope, parsed, name, first)
        scope.spoiled.add(key)
        return
    given = read_attributes(scope, parsed, rest, cable_attributes(), "a cable")
    scope.cables[key] = Cable(
        name.text, key, int(match[1]), int(match[2]), given, parsed.span, parsed.at(name)
    )


def _refuse_conductors(scope: Scope, parsed: Parsed, name: Name, first: st.Words) -> None:
    """Say what is wrong with the attribute a cable begins with: ``18-5``, ``18/5 40 ft``."""
    typed = str(first[0])
    span = Span(parsed.source, st.start_of(first[0]), st.end_of(first[-1]))
    meant = _CONDUCTORS.fullmatch(re.sub(r"[-xX\N{MULTIPLICATION SIGN}]", "/", typed))
    if meant is None:
        message = "a cable begins with its gauge and number of conductors, as in 18/5"
        scope.problem(message, parsed.at(name), "18/5")
    elif typed != meant[0]:
        message = f"gauge and number of conductors are written with a slash: {meant[0]}"
        scope.problem(message, span, meant[0])
    else:
        near = f"{typed}, {' '.join(str(word) for word in first[1:])}"
        scope.problem(f"a comma is missing after {typed}", span, near)


def _is_free(scope: Scope, name: Name, parsed: Parsed) -> bool:
    """Whether a part or splice may take this name; parts and splices share one namespace."""
    key = key_of(name.text)
    first = scope.parts.get(key) or scope.splices.get(key)
    if not key.strip():
        scope.problem("a name cannot be empty", parsed.at(name))
    elif key == EARTH.part:
        scope.problem("earth is the unit's earth everywhere; choose another name", parsed.at(name))
    elif first is not None:
        same_file = first.name_span.source is parsed.source
        where = "" if same_file else f"{first.name_span.file} "
        message = f"“{name.text}” is declared twice, first in {where}line {first.name_span.line}"
        scope.problem(message, parsed.at(name))
    else:
        return True
    return False
