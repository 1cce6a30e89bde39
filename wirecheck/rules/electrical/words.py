"""Numbers and lists of loads, as the messages of this chapter write them."""

from __future__ import annotations

from collections.abc import Sequence

from wirecheck.model.nearest import both
from wirecheck.rules.electrical.loads import Taker


def volts(amount: float) -> str:
    """``20.8 V``, ``24 V``."""
    return f"{amount:.1f}".removesuffix(".0") + " V"


def amps(amount: float) -> str:
    """``0.75 A``, ``12 A``."""
    text = f"{amount:.0f}" if amount >= 10 else f"{amount:.2f}".rstrip("0").rstrip(".")
    return f"{text} A"


def volt_amperes(amount: float) -> str:
    """``52 VA``."""
    return f"{amount:.0f} VA"


def takers_words(takers: Sequence[Taker]) -> str:
    """What takes current, the greatest first: ``valve (main operator) 0.4 A and box 0.15 A``."""
    largest_first = sorted(takers, key=lambda taker: -taker.amps)
    return both([f"{taker.name} {amps(taker.amps)}" for taker in largest_first])
