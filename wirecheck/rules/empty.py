"""Terminals that have to be wired and have no lead."""

from __future__ import annotations

from wirecheck.model.diagram import Part, Terminal
from wirecheck.rules.facts import Facts


def needed_and_empty(facts: Facts) -> tuple[Terminal, ...]:
    """Those of parts that are wired otherwise, in the order of the text.

    Use it as ``facts.once(needed_and_empty)``.
    """
    families = {part.family for part in facts.diagram.parts.values()}
    return tuple(
        terminal
        for part in facts.diagram.parts.values()
        if any_wired(facts, part)
        for terminal in needed(part, families)
        if not facts.is_wired(terminal)
    )


def needed(part: Part, families: set[str]) -> tuple[Terminal, ...]:
    """The terminals of a part that have to be wired, with parts of these families drawn."""
    return tuple(
        part.terminal(name)
        for name, spec in part.structure.terminals.items()
        if spec.must
        and not spec.inner
        and (not spec.must_beside or not families.isdisjoint(spec.must_beside))
    )


def any_wired(facts: Facts, part: Part) -> bool:
    """Whether any lead lands on a part."""
    return any(facts.is_wired(part.terminal(name)) for name in part.structure.terminals)
