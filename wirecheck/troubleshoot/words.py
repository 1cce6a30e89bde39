"""Values of readings in words: "about 24 V", "open", "the pilot lights"."""

from __future__ import annotations

from collections.abc import Sequence

from wirecheck.circuit.instrument import OPEN_OHM
from wirecheck.troubleshoot.reading import Observation, Reading

#: Volts and microamps below which a meter shows nothing to speak of.
_NOTHING = {"V": 0.5, "uA": 0.05, "ohm": 0.5}
#: From so much on a flame signal is good at most controls, in microamps (common practice, no
#: source).
GOOD_UA = 2.0
#: Values that differ by so small a share are told as one.
CLOSE = 0.1


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
    """Values that count as one outcome, as it is said: no meter reads a computed value."""
    if reading.unit == "uA":
        return _signal_words(max(values))
    low, high = value_words(reading, min(values)), value_words(reading, max(values))
    is_close = max(values) - min(values) <= CLOSE * max(values)
    if reading.unit == "V" and min(values) > _NOTHING["V"] and is_close:
        return f"about {high}"
    if low == high:
        return low
    bare = low.removesuffix(f" {reading.unit}")
    return f"{bare} to {high}" if reading.unit in low else f"{low} to {high}"


def _signal_words(microamps: float) -> str:
    if microamps <= _NOTHING["uA"]:
        return "0 uA"
    steady = microamps >= GOOD_UA
    return f"{GOOD_UA:g} uA or more, steady" if steady else f"under {GOOD_UA:g} uA, or unsteady"


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
