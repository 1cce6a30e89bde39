"""Which statements are the base diagram's, and which belong to a variant of it.

``variant`` and ``end`` are flat statements; they are nested here.  A missing ``end`` closes at the
next ``variant`` or at the end of the file the variant began in.
"""

from __future__ import annotations

from typing import NamedTuple

from wirecheck.language.read import Parsed
from wirecheck.language.statements import (
    EndStatement,
    FileEnd,
    RemoveLeadStatement,
    RemovePartStatement,
    SetStatement,
    VariantStatement,
)
from wirecheck.model.diagram import key_of
from wirecheck.model.finding import Problem


class Variant(NamedTuple):
    """A variant: its name, the statement that opens it, and those inside."""

    name: str
    opening: Parsed
    statements: list[Parsed]


class Nested(NamedTuple):
    """The statements of a reading, sorted out."""

    base: list[Parsed]
    variants: list[Variant]
    problems: list[Problem]


def nest(statements: list[Parsed]) -> Nested:
    """Sort out base and variants; linear in the statements."""
    nested = Nested([], [], [])
    names: dict[str, Variant] = {}
    inside: list[Variant] = []  # more than one only where a file with variants is included in one
    for parsed in statements:
        statement = parsed.statement
        ours = bool(inside) and inside[-1].opening.source is parsed.source
        if isinstance(statement, VariantStatement):
            if ours:
                inside.pop()
            inside.append(Variant(statement.name.text, parsed, []))
            nested.variants.append(inside[-1])
            first = names.setdefault(key_of(statement.name.text), inside[-1])
            if first is not inside[-1]:
                nested.problems.append(_named_twice(first, parsed))
        elif isinstance(statement, EndStatement | FileEnd):
            if ours:
                inside.pop()
            elif isinstance(statement, EndStatement):
                message = "this end closes nothing: no variant is open here"
                nested.problems.append(Problem(message, parsed.span))
        elif inside:
            inside[-1].statements.append(parsed)
        elif isinstance(statement, RemoveLeadStatement | RemovePartStatement | SetStatement):
            word = "set" if isinstance(statement, SetStatement) else "remove"
            message = f"{word} belongs inside a variant (variant NAME … end)"
            nested.problems.append(Problem(message, parsed.span))
        else:
            nested.base.append(parsed)
    return nested


def _named_twice(first: Variant, second: Parsed) -> Problem:
    line = first.opening.span.line
    return Problem(f"a variant is called {first.name} already, in line {line}", second.span)
