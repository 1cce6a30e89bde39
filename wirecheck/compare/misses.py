"""The mistakes that lie between two diagrams: each change of the second that makes it the first.

Most are leads.  A switch that stands somewhere else than in the first, or nowhere, is one mistake
of its own: its two leads and the gap that it left are not counted again.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import NamedTuple

from wirecheck.circuit.nets import Element
from wirecheck.compare.blocks import Blocks, blocks_like, blocks_of
from wirecheck.compare.losses import Apart, Joined, Loss, OffMetal, losses
from wirecheck.compare.ranks import ranks
from wirecheck.compare.rows import rows
from wirecheck.compare.wired import Wired
from wirecheck.model.diagram import Part, Terminal, Value


class Displaced(NamedTuple):
    """A switch stands in another place, or in none."""

    contact: Element


class Extra(NamedTuple):
    """A part that the first diagram does not have."""

    part: Part


class Fitted(NamedTuple):
    """A link, a plug or what else decides what a part has inside is not as in the first.

    ``part`` is the part of the first; ``here`` the value there, ``there`` that of the second.  If
    it is not ``typed`` it follows from the leads: the damper's plug is out where a lead lands on a
    terminal of the damper.
    """

    part: Part
    attribute: str
    here: Value | None
    there: Value | None
    typed: bool = True


Miss = Apart | OffMetal | Joined | Displaced | Extra | Fitted


class _Standing(NamedTuple):
    """Both diagrams with some switches left out, and what is lost then."""

    here: Blocks
    there: Blocks
    left: tuple[Loss, ...]


def misses(first: Wired, second: Wired) -> tuple[Miss, ...]:
    """What has to change in the second, in the names of the first, to make it the first."""
    rank = ranks(first)
    here, there = blocks_of(first, rank), blocks_like(second, first, rank)
    extra = [
        part
        for part in second.parts()
        if part.key not in first.diagram.parts and second.is_drawn(part)
    ]
    there = _without_extra(here, there, second, extra, rank)
    displaced: list[Displaced] = []
    standing = _Standing(here, there, losses(here, there, rank))
    while (found := _best(first, second, standing, rank)) is not None:
        contact, standing = found
        displaced.append(Displaced(contact))
    return (*displaced, *standing.left, *(Extra(part) for part in extra))


def _without_extra(
    here: Blocks, there: Blocks, second: Wired, extra: list[Part], rank: Mapping[Terminal, int]
) -> Blocks:
    """The blocks with contacts of further parts taken for leads, where they stand in the way."""
    count = len(losses(here, there, rank))
    for part in extra:
        for contact in second.nets.elements_of[part.key]:
            ends = [second.net_of.get(end) for end in (contact.a, contact.b)]
            if contact.type != "switch" or None in ends or not second.is_live(contact):
                continue
            joined = there.joining(*(end for end in ends if end is not None))
            fewer = len(losses(here, joined, rank))
            if fewer < count:
                there, count = joined, fewer
    return there


def _best(
    first: Wired, second: Wired, standing: _Standing, rank: Mapping[Terminal, int]
) -> tuple[Element, _Standing] | None:
    """The switch that is best told as standing in another place, and what is left then."""
    here, there, left = standing
    places = frozenset(_places(left))
    found = None
    fewest = len(left)
    plain = (placed.contact for row in rows(first) for placed in row.contacts)
    for contact in plain:
        ends = first.lead(contact.a), first.lead(contact.b)
        if not places.intersection(ends) or any(end not in here.of for end in ends):
            continue
        if here.of[ends[0]] == here.of[ends[1]]:
            continue
        without = here.without(*ends), there.without(*ends)
        after = losses(*without, rank)
        # One that is wired nowhere is told as that; another only if fewer leads are to be told.
        stands_somewhere = any(end in second.net_of and second.is_wired(end) for end in ends)
        count = len(after) + 1 + stands_somewhere
        if count <= fewest and (found is None or count < fewest):
            fewest = count
            found = contact, _Standing(*without, after)
    return found


def _places(left: tuple[Loss, ...]) -> Iterator[Terminal]:
    for loss in left:
        match loss:
            case Apart(unit, mate, piece):
                yield from (unit, mate, *piece)
            case OffMetal(_metal, pins):
                yield from pins
            case Joined(some, others):
                yield from (*some, *others)
