"""A fault: what is broken, how likely before anything is known, and what mends it."""

from __future__ import annotations

from dataclasses import dataclass, field

from wirecheck.model.text import Span
from wirecheck.troubleshoot.alteration import Alteration


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing that can be wrong with a unit that is wired as drawn.

    Attributes:
        key: its name for programs, the same each time: ``lead-open:12``, ``stuck-open:limit``.
        mode: the fault mode of ``shared/fault-modes.toml`` it is one of.
        what: a sentence for people: "the lead box.GND to pilot.HOOD is broken or off".
        repair: what mends it, as advice.
        site: where the work is; faults of one site are mended by the same work there.
        weight: how likely it is beside the others; no share of one.
        span: the part or lead in the text.
        alters: what it alters, for the run and for the meter.
        seems: what it alters in the run alone: a gap too wide measures like a good one.
    """

    key: str
    mode: str
    what: str
    repair: str
    site: str
    weight: float
    span: Span
    alters: Alteration = field(default_factory=Alteration)
    seems: Alteration = field(default_factory=Alteration)
