"""Printed labels: those of a kind hold for its parts and for kinds made from it, own ones first."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from wirecheck.language.read import Parsed
from wirecheck.language.scope import Scope, UserKind
from wirecheck.language.statements import LabelsStatement
from wirecheck.model.diagram import Label, Part, key_of
from wirecheck.model.text import Span
from wirecheck.parts.defaults import values_of
from wirecheck.parts.structure import numbered_terminal, structure_of

Labels = dict[str, Label]
Stated = tuple[Parsed, LabelsStatement]


def add_labels(scope: Scope, stated: list[Stated]) -> None:
    """Put every label on its part; those of kinds first, so that a part's own ones replace them."""
    of_parts, of_kinds = _sorted_out(scope, stated)
    by_kind: dict[int, Labels] = {}
    for key, user in scope.kinds.items():  # a kind stands behind the one it is made from
        if user.base:
            user.labels.update(scope.kinds[user.base].labels)
        user.labels.update(_read(scope, _pattern(user), of_kinds.get(key, [])))
        by_kind[id(user.kind)] = user.labels
    for key, part in scope.parts.items():
        labels = _that_exist(part, by_kind.get(id(part.kind), {}))
        if key in of_parts:
            labels |= _read(scope, replace(part, labels=labels), of_parts[key])
        if labels:
            scope.parts[key] = replace(part, labels=labels)


def _sorted_out(
    scope: Scope, stated: list[Stated]
) -> tuple[dict[str, list[Stated]], dict[str, list[Stated]]]:
    """The statements by the part, or by the kind, they speak of."""
    of_parts: dict[str, list[Stated]] = {}
    of_kinds: dict[str, list[Stated]] = {}
    for parsed, statement in stated:
        key = key_of(statement.name.text)
        if key in scope.parts:
            of_parts.setdefault(key, []).append((parsed, statement))
        elif key in scope.kinds:
            of_kinds.setdefault(key, []).append((parsed, statement))
        elif key not in scope.spoiled:
            _names_nothing(scope, parsed, statement)
    return of_parts, of_kinds


def _names_nothing(scope: Scope, parsed: Parsed, statement: LabelsStatement) -> None:
    name = statement.name
    near = scope.nearest_name(name.text, *(user.kind.name for user in scope.kinds.values()))
    hint = f"; did you mean {near}?" if near else ""
    message = f"no part or kind of yours is called “{name.text}”{hint}"
    scope.problem(message, parsed.at(name), near)


def _pattern(user: UserKind) -> Part:
    """A part of the kind, as labels of the kind see it."""
    values = values_of(user.kind, user.given)
    structure = structure_of(user.kind, values)
    return Part(
        name=user.kind.name,
        key=key_of(user.kind.name),
        kind=user.kind,
        given=user.given,
        values=values,
        structure=structure,
        labels=dict(user.labels),
        span=user.span,
        name_span=user.span,
        kind_span=user.span,
    )


def _that_exist(part: Part, labels: Labels) -> Labels:
    return {name: label for name, label in labels.items() if _own_terminal(part, name)}


def _read(scope: Scope, part: Part, stated: list[Stated]) -> Labels:
    """The labels stated for one part; it has those of its kind already."""
    fresh: Labels = {}
    for parsed, statement in stated:
        for labelling in statement.labels:
            own = _own_terminal(part, labelling.terminal.text)
            span = Span(parsed.source, labelling.terminal.start, labelling.label.end)
            if own is None:
                scope.no_such_terminal(part, labelling.terminal, None, parsed.source)
            elif own in fresh:
                scope.problem(f"{own} of {part.name} is labelled twice", span)
            elif not labelling.label.text.strip():
                scope.problem("a label cannot be empty", span)
            else:
                fresh[own] = Label(own, labelling.label.text, span)
    _refuse_clashes(scope, part, fresh)
    return fresh


def _own_terminal(part: Part, text: str) -> str | None:
    """A terminal by its own name, whatever it is labelled."""
    own = part.structure.lookup.get(key_of(text))
    return own or numbered_terminal(part.structure, part.kind, part.values, text)


def _refuse_clashes(scope: Scope, part: Part, fresh: Labels) -> None:
    """A label must not equal another terminal's label, or its name where that still shows."""
    labels = {**part.labels, **fresh}
    terminals_of: dict[str, list[str]] = {}
    for terminal, label in labels.items():
        terminals_of.setdefault(key_of(label.text), []).append(terminal)
    for own, label in fresh.items():
        key = key_of(label.text)
        named = _name_that_shows(part, key, labels)
        if named is not None and named != own:
            message = f"“{label.text}” is another terminal of {part.name}; label that one too"
            scope.problem(message, label.span)
        first = terminals_of[key][0]
        if first != own:
            message = f"{first} and {own} of {part.name} cannot both be labelled “{label.text}”"
            scope.problem(message, label.span)


def _name_that_shows(part: Part, key: str, labels: Mapping[str, Label]) -> str | None:
    """The terminal that this text names by its own name, unless a label hides it."""
    named = part.structure.lookup.get(key)
    if named is None and part.kind.numbered is not None:
        scratch = structure_of(part.kind, part.values)  # the part itself gets no new terminal
        named = numbered_terminal(scratch, part.kind, part.values, key)
    return None if named in labels else named
