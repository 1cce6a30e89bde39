"""A mistake in the key's terms, so that the same one is told alike whoever makes it."""

from __future__ import annotations

from typing import Final

from wirecheck.compare.losses import Apart, Joined, OffMetal
from wirecheck.compare.misses import Displaced, Extra, Fitted
from wirecheck.compare.pattern import what_it_is
from wirecheck.compare.result import Difference
from wirecheck.model.diagram import Diagram

SET_OTHERWISE: Final = "parts set otherwise"


def mistake_in_words(difference: Difference, key: Diagram) -> str:
    """A difference in few words: ``box.GND to pilot.HOOD not joined``."""
    match difference.miss:
        case Apart() | OffMetal():
            ends = sorted(map(key.show, difference.terminals))
            return f"{' to '.join(ends)} not joined"
        case Joined():
            ends = sorted(key.show(end) for end in difference.terminals)
            return f"{' and '.join(ends)} joined"
        case Displaced(contact):
            return f"{contact.part.name} {contact.name}".strip() + " out of its place"
        case Extra(part):
            return f"{what_it_is(part)} too many"
        case Fitted(part, attribute):
            return f"{part.name}: {attribute}"
