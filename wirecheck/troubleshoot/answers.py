"""An answer as somebody types it at the unit: ``24``, ``0 V``, ``open``, ``yes``, ``2``, ``?``."""

from __future__ import annotations

import math
import re
from typing import Final

from wirecheck.model.diagram import key_of
from wirecheck.parts.attributes import parse_quantity
from wirecheck.troubleshoot.reading import Reading
from wirecheck.troubleshoot.words import joined

_UNKNOWN: Final = ("?", "-", "skip", "unknown", "not known", "do not know", "don't know", "cannot")
_OPEN: Final = ("open", "ol", "o.l.", "inf", "infinite", "no continuity", "no-continuity")
_CLOSED: Final = ("closed", "continuity", "short", "shorted", "a good path", "beeps")
_DIMENSION: Final = {"V": "volts", "ohm": "ohms", "uA": "amps"}
_FACTOR: Final = {"V": 1.0, "ohm": 1.0, "uA": 1e6}
_EXAMPLES: Final = {"V": "24 V", "ohm": "60 ohm or open", "uA": "2.5 uA"}


class NotAnAnswerError(ValueError):
    """It cannot be read as an answer; says in words what can."""


def read_answer(reading: Reading, text: str) -> float | None:
    """An answer: a value in the reading's unit, the number of a choice, or None for not known.

    Choices are answered by their number from 1, by their words or the beginning of them, or by yes
    and no where there are two of which the second is the odd one.

    Raises:
        NotAnAnswerError: it is none.
    """
    said = key_of(" ".join(text.split()))
    if said in _UNKNOWN:
        return None
    return _value(reading, said) if reading.unit else float(_choice(reading, said))


def _choice(reading: Reading, said: str) -> int:
    if said.isdigit() and 1 <= int(said) <= len(reading.choices):
        return int(said) - 1
    keys = [key_of(choice) for choice in reading.choices]
    if said in keys:
        return keys.index(said)
    found = [number for number, key in enumerate(keys) if said and key.startswith(said)]
    if len(found) == 1:
        return found[0]
    if len(keys) == 2 and said in ("yes", "y", "no", "n") and reading.kind == "trial":
        return int(said.startswith("y"))
    listed = [f"{number} {choice}" for number, choice in enumerate(reading.choices, 1)]
    plain = "yes or no, or with " if len(keys) == 2 and reading.kind == "trial" else ""
    raise NotAnAnswerError(
        f"answer with {plain}a number: {joined(listed, 'or')}; ? if it is not known"
    )


def _value(reading: Reading, said: str) -> float:
    if reading.unit == "ohm" and said in _OPEN:
        return math.inf
    if reading.unit == "ohm" and said in _CLOSED:
        return 0.0
    bare = re.fullmatch(r"[0-9]*\.?[0-9]+", said)
    quantity = parse_quantity(f"{said} {reading.unit}" if bare else said)
    if quantity is None or quantity.dimension != _DIMENSION[reading.unit]:
        example = _EXAMPLES[reading.unit]
        raise NotAnAnswerError(f"“{said}” is no reading in {reading.unit}; write it like {example}")
    return (quantity.low_base + quantity.high_base) / 2 * _FACTOR[reading.unit]
