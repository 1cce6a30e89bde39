"""Attributes in which two matched parts differ: what changes their inside, and the rest."""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from wirecheck.compare.wired import Wired
from wirecheck.model.diagram import Part, Value
from wirecheck.model.quantity import Quantity
from wirecheck.parts.structure import structure_of


class Other(NamedTuple):
    """An attribute of a matched part that has another value.

    Attributes:
        part: the part of the first diagram; ``there`` the same of the second.
        attribute: its name.
        here: the value in the first.
        changes_inside: whether a link, a contact or a terminal comes or goes with it.
        typed: whether it is typed in the second; else it follows from what is drawn.
    """

    part: Part
    there: Part
    attribute: str
    here: Value | None
    changes_inside: bool
    typed: bool


def others(first: Wired, second: Wired) -> Iterator[Other]:
    """The attributes of matched parts that differ; both diagrams in the same names."""
    landed: dict[str, set[str]] = {}
    for lead in second.diagram.leads:
        for end in (lead.a, lead.b):
            landed.setdefault(end.part, set()).add(end.name)
    for part in first.parts():
        there = second.diagram.parts.get(part.key)
        if there is None or there.kind.family != part.kind.family:
            continue
        for name in part.kind.attributes:
            if name not in there.kind.attributes:
                continue
            here = part.values.get(name)
            if same_value(here, there.values.get(name)):
                continue
            inside = _changes_inside(there, name, here, landed.get(part.key, set()))
            yield Other(part, there, name, here, inside, name in there.given)


def same_value(one: Value | None, other: Value | None) -> bool:
    """Whether two values are the same in whatever units they were typed."""
    if isinstance(one, Quantity) and isinstance(other, Quantity):
        return one.dimension == other.dimension and all(
            abs(a - b) <= 1e-6 * max(abs(a), abs(b))
            for a, b in ((one.low_base, other.low_base), (one.high_base, other.high_base))
        )
    return one == other


def _changes_inside(part: Part, name: str, value: Value | None, landed: set[str]) -> bool:
    """Whether the part would be another one inside; False where a lead would then hang on air."""
    if part.kind.numbered is not None:
        return False
    values = {key: each for key, each in part.values.items() if key != name}
    if value is not None:
        values[name] = value
    structure = structure_of(part.kind, values)
    return structure is not part.structure and landed <= structure.terminals.keys()
