"""What a check says: problems of the text, findings in the wiring, and the edits that mend them."""

from __future__ import annotations

from enum import IntEnum
from typing import Literal, NamedTuple

from wirecheck.model.diagram import Terminal
from wirecheck.model.text import Span


class Breaks(IntEnum):
    """What a mistake breaks; the greater, the worse.

    SAFETY: somebody can be hurt or a protection is defeated.  OPERATION: it does not run as it
    should.  WORKMANSHIP: it works and misleads, wears or fails early.
    """

    WORKMANSHIP = 1
    OPERATION = 2
    SAFETY = 3

    def __str__(self) -> str:
        """The word as printed: ``safety``."""
        return self.name.lower()


class Problem(NamedTuple):
    """Something in the text that could not be used, with the nearest thing that would be right."""

    message: str
    span: Span
    nearest: str | None = None


class Edit(NamedTuple):
    """A change of the text that mends something: replace ``span`` by ``new_text``.

    ``words`` says it for the person with the screwdriver ("move the white lead from … to …").
    """

    action: Literal["add", "remove", "move", "set"]
    words: str
    span: Span
    new_text: str


class Related(NamedTuple):
    """Another place that belongs to a finding, and why."""

    span: Span
    label: str


class Finding(NamedTuple):
    """A mistake in the wiring, at its cause.

    Attributes:
        rule: name of the rule; ``fault``: which of its faults.
        breaks: the worst of what it breaks; ``also_breaks`` the rest.
        message: the mistake in the trade's words, naming lead and terminal, and what to do.
        span: the place of the cause.
        seen_at_unit: what the unit does because of it.
        leads: the leads concerned as people read them; ``lead_numbers`` their index in the diagram.
        terminals: the terminals concerned as people read them; ``at_terminals`` which they are.
        caution: the usual caution if somebody can be hurt, else "".
        source: where the requirement comes from.
        edits: the changes that mend it, where they are clear.
        related: other places that belong to it.
    """

    rule: str
    fault: str
    breaks: Breaks
    also_breaks: tuple[Breaks, ...]
    message: str
    span: Span
    seen_at_unit: str
    leads: tuple[str, ...]
    lead_numbers: tuple[int, ...]
    terminals: tuple[str, ...]
    at_terminals: tuple[Terminal, ...]
    caution: str
    source: str
    edits: tuple[Edit, ...] = ()
    related: tuple[Related, ...] = ()


class NotChecked(NamedTuple):
    """Something that was not looked at, and why."""

    what: str
    reason: str
    span: Span | None = None


class Assumed(NamedTuple):
    """Something taken as given because the text does not say it."""

    what: str
    source: str
    span: Span | None = None
