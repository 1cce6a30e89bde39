"""Values of readings in words: "about 24 V", "open", "the pilot lights"."""

from __future__ import annotations

from collections.abc import Sequence

from wirecheck.circuit.instrument import OPEN_OHM
from wirecheck.troubleshoot.reading import Observation, Reading

#: Volts and microamps below which a meter shows nothing to speak of.
_NOTHING = {"V": 0.5, "uA": 0.05, "ohm": 0.5}


def value_words(reading: Reading, value: float) -> str:
    """A value as it is said."""
    if not reading.unit:
        return reading.choices[round(value)]
    if reading.unit == "ohm" and value >= OPEN_OHM:
        return "open"
    if reading.unit == "ohm" and value <= _NOTHING["ohm"]:
        return "0 ohm, a good path"
    if value <= _NOTHING[reading.unit]:
        return f"0 {reading.unit}"
    figures = f"{value:.1f}" if value < 10 else f"{value:.0f}"
    return f"{figures} {reading.unit}"


def range_words(reading: Reading, values: Sequence[float]) -> str:
    """Values that count as one outcome, as it is said."""
    low, high = value_words(reading, min(values)), value_words(reading, max(values))
    if low == high:
        return low
    bare = low.removesuffix(f" {reading.unit}")
    return f"{bare} to {high}" if reading.unit in low else f"{low} to {high}"


def told_words(observation: Observation) -> str:
    """An observation as it is spoken of: what was seen, or what was asked and what it came to."""
    if observation.reading.kind in ("watch", "told"):
        return f"“{observation.words}”"
    return f"“{observation.reading.ask}”: {observation.words}"


def joined(words: Sequence[str], last: str = "and") -> str:
    """Words in a row: "a, b and c"."""
    if len(words) < 2:
        return "".join(words)
    return f"{', '.join(words[:-1])} {last} {words[-1]}"
