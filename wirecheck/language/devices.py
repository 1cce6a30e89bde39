"""Kinds of the user's own, parts, splices, cables and printed labels."""

from __future__ import annotations

import re

from wirecheck.language import statements as st
from wirecheck.language.read import Parsed
from wirecheck.language.scope import Scope, UserKind
from wirecheck.language.statements import Name
from wirecheck.language.words import read_attributes
from wirecheck.model.diagram import Cable, Label, Part, Splice, Terminal, key_of
from wirecheck.model.nearest import nearest
from wirecheck.model.text import Span
from wirecheck.parts.defaults import values_of
from wirecheck.parts.library import cable_attributes, kind, kind_names, splice_attributes
from wirecheck.parts.structure import numbered_terminal, structure_of

_CONDUCTORS = re.compile(r"(\d+)/(\d+)")


def add_kinds(scope: Scope, stated: list[Parsed]) -> None:
    """Kinds of the user's own, each from a library kind or another of the user's."""
    waiting = {}
    for parsed in stated:
        statement = parsed.statement
        assert isinstance(statement, st.KindStatement)
        key = key_of(statement.name.text)
        name = statement.name.text
        if key in waiting:
            first = waiting[key].span
            scope.problem(f"kind {name} is stated twice, first in line {first.line}", parsed.span)
        elif key in kind_names():
            scope.problem(f"{name} is a kind of the part library; choose another name", parsed.span)
        else:
            waiting[key] = parsed
    for key in waiting:
        _settle(scope, key, waiting, [])


def _settle(scope: Scope, key: str, waiting: dict[str, Parsed], ring: list[str]) -> None:
    """Add one kind, the kind it is made from first."""
    if key in scope.kinds:
        return
    parsed = waiting[key]
    statement = parsed.statement
    assert isinstance(statement, st.KindStatement)
    if key in ring:
        scope.problem(f"kind {statement.name.text} is made from itself", parsed.at(statement.kind))
        return
    base_key = key_of(statement.kind.text)
    if base_key in waiting:
        _settle(scope, base_key, waiting, [*ring, key])
    base = _find_kind(scope, statement.kind, parsed)
    if base is None or key in scope.kinds:
        return
    attributes = read_attributes(
        scope, parsed, statement.attributes, base.kind.attributes, f"a {base.kind.name}"
    )
    own = base.kind._replace(name=statement.name.text, title=statement.name.text)
    scope.kinds[key] = UserKind(own, base.given | attributes, dict(base.labels), parsed.span)


def _find_kind(scope: Scope, name: Name, parsed: Parsed) -> UserKind | None:
    key = key_of(name.text)
    if key in scope.kinds:
        return scope.kinds[key]
    if key in kind_names():
        return UserKind(kind(key), {}, {}, parsed.span)
    known = [*kind_names(), *(user.kind.name for user in scope.kinds.values())]
    near = nearest(name.text, known)
    hint = f"did you mean {near}?" if near else "wirecheck kinds lists them"
    scope.problem(f"no kind of part is called “{name.text}”; {hint}", parsed.at(name), near)
    return None


def add_part(scope: Scope, parsed: Parsed, statement: st.PartStatement) -> None:
    """Declare a part."""
    found = _find_kind(scope, statement.kind, parsed)
    if not _is_free(scope, statement.name, parsed) or found is None:
        return
    typed = read_attributes(
        scope, parsed, statement.attributes, found.kind.attributes, f"a {found.kind.name}"
    )
    given = found.given | typed
    values = values_of(found.kind, given)
    key = key_of(statement.name.text)
    scope.parts[key] = Part(
        statement.name.text,
        key,
        found.kind,
        given,
        values,
        structure_of(found.kind, values),
        dict(found.labels),
        parsed.span,
        parsed.at(statement.name),
        parsed.at(statement.kind),
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
        scope.problem(f"a cable is called {name.text} already", parsed.at(name))
        return
    first, *rest = statement.attributes
    match = _CONDUCTORS.fullmatch(str(first[0])) if len(first) == 1 else None
    if match is None:
        message = "a cable begins with its gauge and number of conductors, as in 18/5"
        scope.problem(message, parsed.at(name), "18/5")
        rest = statement.attributes
    given = read_attributes(scope, parsed, rest, cable_attributes(), "a cable")
    gauge, conductors = (int(match[1]), int(match[2])) if match else (18, 0)
    scope.cables[key] = Cable(
        name.text, key, gauge, conductors, given, parsed.span, parsed.at(name)
    )


def _is_free(scope: Scope, name: Name, parsed: Parsed) -> bool:
    """Whether a part or splice may take this name; parts and splices share one namespace."""
    key = key_of(name.text)
    if not key:
        scope.problem("a name cannot be empty", parsed.at(name))
        return False
    if key == "earth":
        scope.problem("earth is the unit's earth everywhere; choose another name", parsed.at(name))
        return False
    if any(ord(character) < 32 for character in key):
        scope.problem("a name cannot hold control characters", parsed.at(name))
        return False
    first = scope.parts.get(key) or scope.splices.get(key)
    if first is not None:
        where = f"{first.name_span.file} line {first.name_span.line}"
        scope.problem(f"“{name.text}” is declared twice, first in {where}", parsed.at(name))
        return False
    return True


def add_labels(scope: Scope, stated: list[Parsed]) -> None:
    """Printed labels, of kinds first: a part inherits them unless it has its own."""
    for parsed in stated:
        statement = parsed.statement
        assert isinstance(statement, st.LabelsStatement)
        key = key_of(statement.name.text)
        part, user = scope.parts.get(key), scope.kinds.get(key)
        if part is not None:
            _label(scope, parsed, statement, part)
        elif user is not None:
            _label_kind(scope, parsed, statement, user)
        else:
            known = [p.name for p in scope.parts.values()]
            known += [k.kind.name for k in scope.kinds.values()]
            near = nearest(statement.name.text, known)
            hint = f"; did you mean {near}?" if near else ""
            message = f"no part or kind of yours is called “{statement.name.text}”{hint}"
            scope.problem(message, parsed.at(statement.name), near)


def _label_kind(
    scope: Scope, parsed: Parsed, statement: st.LabelsStatement, user: UserKind
) -> None:
    """Label every part of the kind; a part that shows the labels of its kind reads the same."""
    values = values_of(user.kind, user.given)
    pattern = Part(
        user.kind.name, f"\x00{key_of(user.kind.name)}", user.kind, user.given, values,
        structure_of(user.kind, values), user.labels, user.span, user.span, user.span,
    )  # fmt: skip
    _label(scope, parsed, statement, pattern)
    for part in scope.parts.values():
        if part.kind is user.kind:
            for terminal, label in user.labels.items():
                if terminal in part.structure.terminals:
                    part.labels.setdefault(terminal, label)  # type: ignore[attr-defined]


def _label(scope: Scope, parsed: Parsed, statement: st.LabelsStatement, part: Part) -> None:
    fresh: dict[str, Label] = {}
    for labelling in statement.labels:
        own = _own_terminal(part, labelling.terminal.text)
        span = Span(parsed.source, labelling.terminal.start, labelling.label.end)
        if own is None:
            scope.terminal(part, labelling.terminal, parsed.source)  # keeps the problem
        elif own.name in fresh:
            scope.problem(f"{own.name} is labelled twice", span)
        elif not labelling.label.text.strip():
            scope.problem("a label cannot be empty", span)
        else:
            fresh[own.name] = Label(own.name, labelling.label.text, span)
    labels: dict[str, Label] = part.labels  # type: ignore[assignment]  # still being built
    labels.update(fresh)
    _refuse_clashes(scope, part, fresh)


def _own_terminal(part: Part, text: str) -> Terminal | None:
    """A terminal by its own name, whatever it is labelled."""
    own = part.structure.lookup.get(key_of(text)) or numbered_terminal(
        part.structure, part.kind, part.values, text
    )
    return Terminal(part.key, own) if own else None


def _refuse_clashes(scope: Scope, part: Part, fresh: dict[str, Label]) -> None:
    """A label must not equal another terminal's label, or its name where that still shows."""
    for own, label in list(fresh.items()):
        key = key_of(label.text)
        named = part.structure.lookup.get(key)
        if named is not None and named != own and named not in part.labels:
            message = f"“{label.text}” is another terminal of {part.name}; label that one too"
            scope.problem(message, label.span)
        for other, second in part.labels.items():
            if other < own and key_of(second.text) == key:
                message = f"{other} and {own} of {part.name} cannot both be labelled “{label.text}”"
                scope.problem(message, label.span)
