"""Kinds of the user's own, each made from a kind of the part library or from another of them."""

from __future__ import annotations

from dataclasses import replace

from wirecheck.language.read import Parsed
from wirecheck.language.scope import Scope, UserKind
from wirecheck.language.statements import KindStatement, Name
from wirecheck.language.words import read_attributes
from wirecheck.model.diagram import key_of
from wirecheck.parts.library import kind, kind_names
from wirecheck.parts.trade_names import kind_meant


def add_kinds(scope: Scope, stated: list[tuple[Parsed, KindStatement]]) -> None:
    """Settle every kind of the user's own, the kind it is made from first."""
    waiting: dict[str, tuple[Parsed, KindStatement]] = {}
    for parsed, statement in stated:
        name, key = statement.name.text, key_of(statement.name.text)
        if key in waiting:
            line = waiting[key][0].span.line
            scope.problem(f"kind {name} is stated twice, first in line {line}", parsed.span)
        elif key in kind_names():
            message = f"{name} is a kind of the part library; choose another name"
            scope.problem(message, parsed.at(statement.name))
        else:
            waiting[key] = parsed, statement
    for start in waiting:
        for key in _way_to_base(scope, start, waiting):
            _settle(scope, key, *waiting[key])


def _way_to_base(
    scope: Scope, start: str, waiting: dict[str, tuple[Parsed, KindStatement]]
) -> list[str]:
    """The kinds not settled yet, from the base up to ``start``; none if they run in a ring."""
    way: dict[str, None] = {}
    key = start
    while key in waiting and key not in scope.kinds and key not in scope.spoiled:
        if key in way:
            parsed, statement = waiting[key]
            message = f"kind {statement.name.text} is made from itself"
            scope.problem(message, parsed.at(statement.kind))
            scope.spoiled.update(way)
            return []
        way[key] = None
        key = key_of(waiting[key][1].kind.text)
    return list(reversed(way))


def _settle(scope: Scope, key: str, parsed: Parsed, statement: KindStatement) -> None:
    """Add one kind; in words it is what it is made from, its own name in brackets."""
    base = find_kind(scope, statement.kind, parsed)
    if base is None:
        scope.spoiled.add(key)
        return
    attributes = read_attributes(
        scope, parsed, statement.attributes, base.kind.attributes, f"a {base.kind.name}"
    )
    base_key, name = key_of(statement.kind.text), statement.name.text
    of_library = base.kind.title.removesuffix(f" ({base.kind.name})")
    scope.kinds[key] = UserKind(
        kind=replace(base.kind, name=name, title=f"{of_library} ({name})"),
        given=base.given | attributes,
        labels={},
        span=parsed.span,
        base=base_key if base_key in scope.kinds else None,
    )


def find_kind(scope: Scope, name: Name, parsed: Parsed) -> UserKind | None:
    """The kind of that name, the user's own first; a problem if there is none."""
    key = key_of(name.text)
    if key in scope.kinds:
        return scope.kinds[key]
    if key in kind_names():
        return UserKind(kind(key), {}, {}, parsed.span, None)
    if key in scope.spoiled:
        return None
    meant = kind_meant(name.text, scope.kinds)
    hint = f"did you mean {meant.words}?" if meant else "wirecheck kinds lists them"
    near = meant.nearest if meant else None
    scope.problem(f"no kind of part is called “{name.text}”; {hint}", parsed.at(name), near)
    return None
